package org.flitchbook.plan;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import org.flitchbook.json.Fields;

/** Takes lists of things with names of their own out of JSON. */
final class Named {

  private Named() {}

  /** Items of a list, each with a name of its own under {@code nameKey}. */
  static <T> List<T> each(
      Fields plan,
      String key,
      String nameKey,
      Function<Fields, Optional<T>> reader,
      Function<T, String> name) {
    List<T> found = new ArrayList<>();
    Set<String> names = new HashSet<>();
    for (Fields fields : Lists.objects(plan, key)) {
      Optional<T> item = reader.apply(fields);
      fields.end();
      item.map(name).ifPresent(word -> checkName(fields, nameKey, word, names.add(word)));
      item.ifPresent(found::add);
    }
    return found;
  }

  private static void checkName(Fields fields, String key, String name, boolean first) {
    if (!fields.has(key)) {
      return;
    }
    if (name.isBlank()) {
      fields.fault(key, "\"" + name + "\"", "at least one letter");
    } else if (!first) {
      fields.fault(key, "\"" + name + "\" twice", "each once");
    }
  }
}

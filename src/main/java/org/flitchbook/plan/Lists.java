package org.flitchbook.plan;

import java.util.List;
import org.flitchbook.input.Fault;
import org.flitchbook.json.Fields;

/** Takes lists that must be there out of JSON; a missing one is a fault, an empty one is not. */
final class Lists {

  private Lists() {}

  static List<String> texts(Fields fields, String key) {
    ask(fields, key);
    return fields.texts(key);
  }

  static List<Fields> objects(Fields fields, String key) {
    ask(fields, key);
    return fields.objects(key);
  }

  private static void ask(Fields fields, String key) {
    if (!fields.has(key)) {
      fields
          .faults()
          .add(
              Fault.broken("missing key", fields.place(key), "no \"" + key + "\"", "a list there"));
    }
  }
}

package org.flitchbook.plan;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.flitchbook.json.Fields;

/** The exemptions of all rule sets of a plan, and those of them that a product names. */
record Exemptions(List<Exemption> known) {

  private static final String KEY = "exemptions";

  Exemptions {
    known = List.copyOf(known);
  }

  static Exemptions of(Catalogue catalogue) {
    return new Exemptions(
        catalogue.ruleSets().stream().flatMap(set -> set.exemptions().stream()).toList());
  }

  /** Those that a file of limits lists, each name once. */
  static List<Exemption> listed(Fields file) {
    List<Exemption> listed = new ArrayList<>();
    Set<String> names = new HashSet<>();
    for (Fields each : file.objects(KEY)) {
      exemption(each)
          .filter(found -> isNew(each, "name", found.name(), names))
          .ifPresent(listed::add);
      each.end();
    }
    return listed;
  }

  private static Optional<Exemption> exemption(Fields fields) {
    String name = fields.text("name");
    String covers = fields.text("covers");
    String because = fields.text("because");
    return fields
        .object("source")
        .flatMap(LimitReader::source)
        .map(source -> new Exemption(name, covers, because, source));
  }

  /** Those that a product names, each with its support; no two may stand for one control. */
  List<Product.Exempt> named(Fields product) {
    List<Product.Exempt> named = new ArrayList<>();
    Set<String> covers = new HashSet<>();
    for (Fields each : product.objects(KEY)) {
      Optional<Exemption> found = find(each);
      String support = LimitReader.support(each);
      each.end();
      found
          .filter(exemption -> isNew(each, "name", exemption.covers(), covers))
          .ifPresent(exemption -> named.add(new Product.Exempt(exemption, support)));
    }
    return named;
  }

  private Optional<Exemption> find(Fields fields) {
    String name = fields.text("name");
    Optional<Exemption> found = known.stream().filter(each -> each.name().equals(name)).findFirst();
    if (found.isEmpty() && fields.has("name")) {
      fields.fault("name", "\"" + name + "\"", "an exemption of the rule sets" + nearest(name));
    }
    return found;
  }

  private String nearest(String name) {
    return known.stream()
        .map(Exemption::name)
        .min(Comparator.comparingInt(other -> Spelling.distance(other, name)))
        .map(best -> ", perhaps " + best)
        .orElse(", which list none");
  }

  private static boolean isNew(Fields fields, String key, String word, Set<String> seen) {
    boolean first = seen.add(word);
    if (!first) {
      fields.fault(key, "a second exemption for \"" + word + "\"", "each once");
    }
    return first;
  }
}

package org.flitchbook.words;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** The closed sets of words that are shown by a wording of each. */
final class Families {

  static final Map<String, List<String>> ALL = all();

  private Families() {}

  private static Map<String, List<String>> all() {
    Map<String, List<String>> all = new TreeMap<>();
    all.put("sum", List.of("rind", "pickle", "packed", "ends", "waste", "samples"));
    return all;
  }
}

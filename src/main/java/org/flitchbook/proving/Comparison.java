package org.flitchbook.proving;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.flitchbook.evidence.EnclosedEvidence;
import org.flitchbook.input.Place;
import org.flitchbook.json.Json;
import org.flitchbook.json.Node;
import org.flitchbook.record.DayJudged;
import org.flitchbook.record.Records;
import org.jspecify.annotations.Nullable;

/** What a record says was found, held against what is found again from what it carries. */
final class Comparison {

  private static final String NOTHING = "nothing";
  private static final Node.Obj NONE = new Node.Obj(Place.of(""), Map.of());

  private final List<Difference> differences = new ArrayList<>();
  private int compared;

  /**
   * Something that no longer follows.
   *
   * @param limit the limit's id; empty where it is about the lot as a whole
   */
  record Difference(String lot, String limit, String printed, String again) {

    @Override
    public String toString() {
      return "lot "
          + lot
          + (limit.isEmpty() ? "" : ", " + limit)
          + ": the record says "
          + printed
          + ", and what it carries gives "
          + again;
    }

    Map<String, Object> json() {
      Map<String, Object> tree = new LinkedHashMap<>();
      tree.put("lot", lot);
      tree.put("limit", limit);
      tree.put("printed", printed);
      tree.put("again", again);
      return tree;
    }
  }

  private Comparison() {}

  static Comparison of(EnclosedEvidence record, DayJudged judged) {
    Node.Obj again = Json.read("again", Json.write(Records.json(judged))).object().orElseThrow();
    Comparison comparison = new Comparison();
    Map<String, Node.Obj> found = lots(again);
    lots(record.found())
        .forEach((code, lot) -> comparison.compareLot(code, lot, found.getOrDefault(code, NONE)));
    comparison.compareFaults(record, again);
    return comparison;
  }

  List<Difference> differences() {
    return differences;
  }

  /** The number of findings that were compared. */
  int compared() {
    return compared;
  }

  private static Map<String, Node.Obj> lots(Node.Obj tree) {
    Map<String, Node.Obj> lots = new LinkedHashMap<>();
    for (Node.Obj lot : objects(tree, "lots")) {
      lots.put(word(lot, "lot"), lot);
    }
    return lots;
  }

  private static List<Node.Obj> objects(Node.Obj tree, String key) {
    List<Node.Obj> objects = new ArrayList<>();
    if (tree.members().get(key) instanceof Node.Items items) {
      items.items().stream()
          .filter(Node.Obj.class::isInstance)
          .forEach(each -> objects.add((Node.Obj) each));
    }
    return objects;
  }

  private static String word(Node.Obj tree, String key) {
    return tree.members().get(key) instanceof Node.Text text ? text.value() : "";
  }

  private void compareLot(String code, Node.Obj printed, Node.Obj again) {
    if (again.equals(NONE)) {
      differences.add(new Difference(code, "", word(printed, "verdict"), "no such lot"));
      return;
    }
    List<Node.Obj> before = objects(printed, "findings");
    List<Node.Obj> now = objects(again, "findings");
    for (int i = 0; i < Math.max(before.size(), now.size()); i++) {
      compareFinding(
          code, i < before.size() ? before.get(i) : NONE, i < now.size() ? now.get(i) : NONE);
    }
    for (String key : keys(printed, again)) {
      String one = shown(printed.members().get(key));
      String other = shown(again.members().get(key));
      if (!key.equals("findings") && !one.equals(other)) {
        differences.add(new Difference(code, "", key + " " + one, other));
      }
    }
  }

  private void compareFinding(String lot, Node.Obj printed, Node.Obj again) {
    compared++;
    if (!shown(printed).equals(shown(again))) {
      String limit = word(printed.equals(NONE) ? again : printed, "limit");
      differences.add(new Difference(lot, limit, told(printed, again), told(again, printed)));
    }
  }

  /** The verdict with its value; where both are alike, the members that are not. */
  private static String told(Node.Obj finding, Node.Obj other) {
    String told = brief(finding);
    if (!told.equals(brief(other))) {
      return told;
    }
    List<String> unlike = new ArrayList<>();
    for (String key : keys(finding, other)) {
      String one = shown(finding.members().get(key));
      if (!one.equals(shown(other.members().get(key)))) {
        unlike.add(key + " " + one);
      }
    }
    return told + " (" + String.join(", ", unlike) + ")";
  }

  private static String brief(Node.Obj finding) {
    if (finding.equals(NONE)) {
      return NOTHING;
    }
    Node value = finding.members().get("value");
    String number = value == null ? "" : ", " + shown(value) + " " + word(finding, "unit");
    return word(finding, "verdict") + number;
  }

  /** What is in doubt about the lots; only the day sheet tells of what touches no lot. */
  private void compareFaults(EnclosedEvidence record, Node.Obj again) {
    Set<String> printed = faults(record, record.found());
    Set<String> now = faults(record, again);
    for (String each : printed) {
      if (!now.contains(each)) {
        differences.add(new Difference("", "", "in doubt: " + each, NOTHING));
      }
    }
    now.stream()
        .filter(each -> !printed.contains(each))
        .forEach(each -> differences.add(new Difference("", "", NOTHING, "in doubt: " + each)));
  }

  private static Set<String> faults(EnclosedEvidence record, Node.Obj tree) {
    Set<String> faults = new TreeSet<>();
    for (Node.Obj each : objects(tree, "faults")) {
      if (record.name().equals("day") || record.lots().contains(word(each, "lot"))) {
        faults.add(shown(each));
      }
    }
    return faults;
  }

  private static Set<String> keys(Node.Obj one, Node.Obj other) {
    Set<String> keys = new TreeSet<>(one.members().keySet());
    keys.addAll(other.members().keySet());
    return keys;
  }

  /** A value in one spelling, without its place. */
  private static String shown(@Nullable Node node) {
    if (node instanceof Node.Obj object) {
      Map<String, String> members = new TreeMap<>();
      object.members().forEach((key, value) -> members.put(key, shown(value)));
      return members.toString();
    }
    if (node instanceof Node.Items items) {
      return items.items().stream().map(Comparison::shown).toList().toString();
    }
    if (node instanceof Node.Num number) {
      return number.value().stripTrailingZeros().toPlainString();
    }
    if (node instanceof Node.Text text) {
      return '"' + text.value() + '"';
    }
    return node == null ? NOTHING : node.shown();
  }
}

package org.flitchbook.proving;

import static org.flitchbook.message.Message.say;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.flitchbook.evidence.EnclosedEvidence;
import org.flitchbook.input.Place;
import org.flitchbook.job.Session;
import org.flitchbook.json.Json;
import org.flitchbook.json.Node;
import org.flitchbook.message.Listing;
import org.flitchbook.message.Message;
import org.flitchbook.message.Word;
import org.flitchbook.record.DayJudged;
import org.flitchbook.record.Records;
import org.jspecify.annotations.Nullable;

/** What a record says was found, held against what is found again from what it carries. */
final class Comparison {

  private static final Message NOTHING = say("proving.nothing", "nothing");
  private static final Node.Obj NONE = new Node.Obj(Place.of(""), Map.of());

  private final List<Difference> differences = new ArrayList<>();
  private int compared;

  /**
   * Something that no longer follows.
   *
   * @param lot its code; empty where it is about no single lot
   * @param limit the limit's id; empty where it is about the lot as a whole
   * @param printed what the record says
   * @param again what is found again
   */
  record Difference(String lot, String limit, Message printed, Message again) {

    Message message() {
      if (lot.isEmpty()) {
        return say(
            "proving.differs",
            "No longer follows: the record says {0}, and what it carries gives {1}.",
            printed,
            again);
      }
      return limit.isEmpty()
          ? say(
              "proving.lot-differs",
              "No longer follows: lot {0}: the record says {1}, and what it carries gives {2}.",
              lot,
              printed,
              again)
          : say(
              "proving.limit-differs",
              "No longer follows: lot {0}, {1}: the record says {2}, and what it carries gives"
                  + " {3}.",
              lot,
              limit,
              printed,
              again);
    }

    Map<String, Object> json(Session session) {
      Map<String, Object> tree = new LinkedHashMap<>();
      tree.put("lot", lot);
      tree.put("limit", limit);
      tree.put("printed", session.say(printed));
      tree.put("again", session.say(again));
      return tree;
    }
  }

  private Comparison() {}

  static Comparison of(EnclosedEvidence record, DayJudged judged) {
    Node.Obj again = Json.read("again", Json.write(Records.json(judged))).object().orElseThrow();
    Comparison comparison = new Comparison();
    Map<String, Node.Obj> lots = lots(again);
    lots(record.found())
        .forEach((code, lot) -> comparison.compareLot(code, lot, lots.getOrDefault(code, NONE)));
    comparison.compareFaults(faults(record, record.found()), faults(record, again));
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
    objects(tree, "lots").forEach(lot -> lots.put(word(lot, "lot"), lot));
    return lots;
  }

  private static List<Node.Obj> objects(Node.Obj tree, String key) {
    return tree.members().get(key) instanceof Node.Items items
        ? items.items().stream()
            .filter(Node.Obj.class::isInstance)
            .map(Node.Obj.class::cast)
            .toList()
        : List.of();
  }

  private static String word(Node.Obj tree, String key) {
    return tree.members().get(key) instanceof Node.Text text ? text.value() : "";
  }

  private void differ(String lot, String limit, Message printed, Message again) {
    differences.add(new Difference(lot, limit, printed, again));
  }

  private void compareLot(String code, Node.Obj printed, Node.Obj again) {
    if (again.equals(NONE)) {
      Message gone = say("proving.no-such-lot", "no such lot");
      differ(code, "", verdict(printed), gone);
      return;
    }
    List<Node.Obj> before = objects(printed, "findings");
    List<Node.Obj> now = objects(again, "findings");
    for (int i = 0; i < Math.max(before.size(), now.size()); i++) {
      compareFinding(
          code, i < before.size() ? before.get(i) : NONE, i < now.size() ? now.get(i) : NONE);
    }
    for (String key : differing(printed, again)) {
      if (!key.equals("findings")) {
        Message one = say("proving.member", "{0} {1}", key, shown(printed.members().get(key)));
        differ(code, "", one, Message.of(shown(again.members().get(key))));
      }
    }
  }

  private void compareFinding(String lot, Node.Obj printed, Node.Obj again) {
    compared++;
    Set<String> keys = differing(printed, again);
    if (!keys.isEmpty()) {
      String limit = word(printed.equals(NONE) ? again : printed, "limit");
      boolean isBrief = !brief(printed).equals(brief(again));
      differ(
          lot,
          limit,
          isBrief ? brief(printed) : full(printed, keys),
          isBrief ? brief(again) : full(again, keys));
    }
  }

  /** The verdict with its value. */
  private static Message brief(Node.Obj finding) {
    if (finding.equals(NONE)) {
      return NOTHING;
    }
    Node value = finding.members().get("value");
    return value == null
        ? verdict(finding)
        : say(
            "proving.finding",
            "{0}, {1} {2}",
            verdict(finding),
            shown(value),
            word(finding, "unit"));
  }

  private static Message verdict(Node.Obj tree) {
    return Message.of(new Word("verdict", word(tree, "verdict")));
  }

  /** Where verdict and value are alike, the members that are not. */
  private static Message full(Node.Obj finding, Set<String> keys) {
    Listing members =
        Listing.commas(
            keys.stream().map(key -> key + " " + shown(finding.members().get(key))).toList());
    return say("proving.finding-with", "{0} ({1})", brief(finding), members);
  }

  /** What is in doubt about the lots; only the day sheet lists what touches no lot. */
  private void compareFaults(Set<String> printed, Set<String> again) {
    printed.stream()
        .filter(each -> !again.contains(each))
        .forEach(each -> differ("", "", doubt(each), NOTHING));
    again.stream()
        .filter(each -> !printed.contains(each))
        .forEach(each -> differ("", "", NOTHING, doubt(each)));
  }

  private static Message doubt(String fault) {
    return say("proving.doubt", "in doubt: {0}", fault);
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

  /** The members that are not alike. */
  private static Set<String> differing(Node.Obj one, Node.Obj other) {
    Set<String> keys = new TreeSet<>(one.members().keySet());
    keys.addAll(other.members().keySet());
    keys.removeIf(key -> shown(one.members().get(key)).equals(shown(other.members().get(key))));
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
    return node == null ? "nothing" : node.shown();
  }
}

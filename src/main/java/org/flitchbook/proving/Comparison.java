package org.flitchbook.proving;

import static org.flitchbook.message.Message.say;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.flitchbook.evidence.EnclosedEvidence;
import org.flitchbook.input.Place;
import org.flitchbook.json.Json;
import org.flitchbook.json.Node;
import org.flitchbook.message.Listing;
import org.flitchbook.message.Message;
import org.flitchbook.message.Word;
import org.flitchbook.record.DayJudged;
import org.flitchbook.record.Records;
import org.jspecify.annotations.Nullable;

/**
 * What a record says was found, compared with what is found again from what it carries: verdicts,
 * numbers, times, evidence and the ids of what is said, never a sentence. What the form of the
 * record does not have yet is not compared.
 */
final class Comparison {

  private static final Message NOTHING = say("proving.nothing", "nothing");
  private static final Node.Obj NONE = new Node.Obj(Place.of(""), Map.of());

  /** Keys whose values are worded for a person; the ids and arguments stand under "said". */
  private static final Set<String> WORDED =
      Set.of("quantity", "formula", "reason", "remark", "found", "expected", "lacks", "text");

  /** In a source that is the plan itself, what names the plan is worded too. */
  private static final Set<String> WORDED_OF_PLAN = Set.of("document", "edition");

  private static final String SAID = "said";

  /** What the forms of records have had since form 2; form 1 is that of version 0.1.0. */
  private static final Set<String> ADDED = Set.of("form", SAID, "lacksSaid", "account", "cureSums");

  private final List<Difference> differences = new ArrayList<>();
  private final Map<String, Set<String>> grounds = new TreeMap<>();
  private final Set<String> saidOtherwise = new TreeSet<>();
  private final boolean oldForm;
  private int compared;

  private Comparison(boolean oldForm) {
    this.oldForm = oldForm;
  }

  /**
   * Compares.
   *
   * @param isOlder whether an earlier version made the record, so that its form may lack what was
   *     added since
   */
  static Comparison of(EnclosedEvidence record, DayJudged judged, boolean isOlder) {
    Node.Obj again = Json.read("again", Json.write(Records.json(judged))).object().orElseThrow();
    boolean oldForm = isOlder && !record.found().members().containsKey(Records.FORM);
    Comparison comparison = new Comparison(oldForm);
    Map<String, Node.Obj> found = lots(again);
    comparison.lookAtExplanations(record, again);
    comparison.lookAtDoubts(record, again);
    lots(record.found())
        .forEach((code, lot) -> comparison.compareLot(code, lot, found.getOrDefault(code, NONE)));
    comparison.compareFaults(record, again);
    lots(record.found())
        .forEach((code, lot) -> comparison.compareWhole(code, lot, found.getOrDefault(code, NONE)));
    return comparison;
  }

  List<Difference> differences() {
    return differences;
  }

  /** The limits and rules about which the same was found and something else is said. */
  Set<String> saidOtherwise() {
    return saidOtherwise;
  }

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
    return tree.firstText(List.of(key)).orElse("");
  }

  private void compareLot(String code, Node.Obj printed, Node.Obj again) {
    if (again.equals(NONE)) {
      Message gone = say("proving.no-such-lot", "no such lot");
      add(code, "", Set.of(), verdict(printed), gone);
      return;
    }
    List<Node.Obj> before = objects(printed, "findings");
    List<Node.Obj> now = objects(again, "findings");
    for (int i = 0; i < Math.max(before.size(), now.size()); i++) {
      compareFinding(
          code, i < before.size() ? before.get(i) : NONE, i < now.size() ? now.get(i) : NONE);
    }
  }

  /** What is said of the lot as a whole follows from its findings and from what is in doubt. */
  private void compareWhole(String code, Node.Obj printed, Node.Obj again) {
    if (again.equals(NONE)) {
      return;
    }
    Set<String> all =
        differences.stream()
            .filter(each -> each.lot().equals(code))
            .flatMap(each -> each.grounds().stream())
            .collect(Collectors.toSet());
    unlike(printed, again).stream()
        .filter(key -> !key.equals("findings"))
        .forEach(key -> add(code, "", all, member(printed, key), member(again, key)));
  }

  private void add(String lot, String about, Set<String> own, Message printed, Message again) {
    Set<String> all = new TreeSet<>(own);
    all.addAll(grounds.getOrDefault(lot, Set.of()));
    if (!about.isEmpty()) {
      all.add(about);
    }
    differences.add(new Difference(lot, about, all, printed, again));
  }

  private void ground(Node.Obj fault, String ground) {
    grounds.computeIfAbsent(word(fault, "lot"), lot -> new TreeSet<>()).add(ground);
  }

  /** What is found of a lot follows from what is in doubt about it. */
  private void lookAtDoubts(EnclosedEvidence record, Node.Obj again) {
    Map<String, Node.Obj> printed = faults(record, record.found());
    Map<String, Node.Obj> now = faults(record, again);
    Stream.concat(
            printed.entrySet().stream().filter(each -> !now.containsKey(each.getKey())),
            now.entrySet().stream().filter(each -> !printed.containsKey(each.getKey())))
        .forEach(each -> ground(each.getValue(), word(each.getValue(), "rule")));
  }

  private void lookAtExplanations(EnclosedEvidence record, Node.Obj again) {
    Set<String> now = new TreeSet<>();
    borneOut(again).forEach(fault -> now.add(spot(fault)));
    borneOut(record.found())
        .filter(fault -> !now.contains(spot(fault)))
        .forEach(fault -> ground(fault, Difference.EXPLANATION));
  }

  private static Stream<Node.Obj> borneOut(Node.Obj tree) {
    return objects(tree, "faults").stream()
        .filter(
            fault ->
                fault.members().get("explained") instanceof Node.Obj said
                    && said.members().get("borneOut") instanceof Node.Bool borne
                    && borne.value());
  }

  private static String spot(Node.Obj fault) {
    return Stream.of("lot", "rule", "file", "line")
        .map(key -> spelled(fault.members().get(key), any -> true))
        .collect(Collectors.joining("|"));
  }

  private void compareFinding(String lot, Node.Obj printed, Node.Obj again) {
    compared++;
    Node.Obj either = printed.equals(NONE) ? again : printed;
    String limit = word(either, "limit");
    List<String> unlike = unlike(printed, again);
    if (!unlike.isEmpty()) {
      Set<String> own =
          Set.of(
              "kind " + word(either, "kind"),
              word(printed, "verdict") + " to " + word(again, "verdict"));
      add(lot, limit, own, brief(printed, unlike), brief(again, unlike));
    } else if (!said(printed).equals(said(again))) {
      saidOtherwise.add(limit);
    }
  }

  /** The keys whose values differ, wording aside. */
  private List<String> unlike(Node.Obj one, Node.Obj other) {
    Set<String> keys = new TreeSet<>(one.members().keySet());
    keys.addAll(other.members().keySet());
    return keys.stream()
        .filter(this::isCompared)
        .filter(key -> !shown(one.members().get(key)).equals(shown(other.members().get(key))))
        .toList();
  }

  private boolean isCompared(String key) {
    return !WORDED.contains(key) && !key.equals(SAID) && !(oldForm && ADDED.contains(key));
  }

  private Message member(Node.Obj tree, String key) {
    return say("proving.member", "{0} {1}", key, shown(tree.members().get(key)));
  }

  private static Message verdict(Node.Obj tree) {
    return Message.of(new Word("verdict", word(tree, "verdict")));
  }

  /** Verdict and value; where they are alike in both, the members that are not. */
  private Message brief(Node.Obj finding, List<String> unlike) {
    if (finding.equals(NONE)) {
      return NOTHING;
    }
    Node value = finding.members().get("value");
    Message verdict = verdict(finding);
    String unit = word(finding, "unit");
    Message brief =
        value == null
            ? verdict
            : say("proving.finding", "{0}, {1} {2}", verdict, shown(value), unit);
    List<Message> more =
        unlike.stream()
            .filter(key -> !Set.of("verdict", "value", "unit").contains(key))
            .map(key -> member(finding, key))
            .toList();
    return unlike.contains("verdict") || unlike.contains("value") || more.isEmpty()
        ? brief
        : say("proving.finding-with", "{0} ({1})", brief, Listing.commas(more));
  }

  /** What is said in a finding and its parts, where its form has that. */
  private String said(Node.Obj finding) {
    List<String> said = new ArrayList<>();
    Node own = finding.members().get(SAID);
    if (own != null && !oldForm) {
      said.add(spelled(own, key -> true));
    }
    objects(finding, "parts").forEach(part -> said.add(said(part)));
    return said.toString();
  }

  /** What is in doubt about the lots; only the day sheet lists what touches no lot. */
  private void compareFaults(EnclosedEvidence record, Node.Obj again) {
    Map<String, Node.Obj> printed = faults(record, record.found());
    Map<String, Node.Obj> now = faults(record, again);
    Map<String, Node.Obj> all = new LinkedHashMap<>(printed);
    all.putAll(now);
    all.forEach(
        (key, fault) -> {
          Node.Obj one = printed.getOrDefault(key, NONE);
          Node.Obj other = now.getOrDefault(key, NONE);
          String rule = word(fault, "rule");
          if (one.equals(NONE) || other.equals(NONE)) {
            add(word(fault, "lot"), rule, Set.of(), inDoubt(one), inDoubt(other));
          } else if (!said(one).equals(said(other))) {
            saidOtherwise.add(rule);
          }
        });
  }

  private Message inDoubt(Node.Obj fault) {
    return fault.equals(NONE) ? NOTHING : say("proving.doubt", "in doubt: {0}", shown(fault));
  }

  private Map<String, Node.Obj> faults(EnclosedEvidence record, Node.Obj tree) {
    Map<String, Node.Obj> faults = new TreeMap<>();
    for (Node.Obj each : objects(tree, "faults")) {
      if (record.name().equals("day") || record.lots().contains(word(each, "lot"))) {
        faults.put(shown(each), each);
      }
    }
    return faults;
  }

  /** A value in one spelling, without its place and its wording. */
  private String shown(@Nullable Node node) {
    return spelled(node, this::isCompared);
  }

  private static String spelled(@Nullable Node node, Predicate<String> wanted) {
    if (node instanceof Node.Obj object) {
      boolean ofPlan = word(object, "standing").equals("plan");
      Map<String, String> members = new TreeMap<>();
      object.members().forEach((key, value) -> members.put(key, spelled(value, wanted)));
      members
          .keySet()
          .removeIf(key -> !wanted.test(key) || (ofPlan && WORDED_OF_PLAN.contains(key)));
      return members.toString();
    }
    if (node instanceof Node.Items items) {
      return items.items().stream().map(each -> spelled(each, wanted)).toList().toString();
    }
    if (node instanceof Node.Num number) {
      return number.plain();
    }
    if (node instanceof Node.Text text) {
      return '"' + text.value() + '"';
    }
    return node == null ? "–" : node.shown();
  }
}

package org.flitchbook.proving;

import static java.text.Normalizer.Form.NFC;
import static org.flitchbook.message.Message.say;
import static org.flitchbook.proving.Statement.Standing.BROKEN;

import java.text.Normalizer;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import org.flitchbook.archive.Bundle;
import org.flitchbook.archive.DayLedger;
import org.flitchbook.archive.RecordList;
import org.flitchbook.input.SourceFile;
import org.flitchbook.json.Json;
import org.flitchbook.json.Node;
import org.flitchbook.judging.Judging;
import org.flitchbook.ledger.Event;
import org.flitchbook.ledger.LedgerLine;
import org.flitchbook.message.Message;

/**
 * A close as its line in the ledger states it, held against the revision that it filed.
 *
 * @param files of the revision, by their names in its folder
 * @param bundle of the revision; empty where it can't be read
 */
record CloseProof(LedgerLine line, SortedMap<String, SourceFile> files, Optional<Bundle> bundle) {

  private static final String DAY = "day.json";

  /** What contradicts the line, and what the files of the revision contradict in each other. */
  List<Statement> statements() {
    List<Statement> statements = new ArrayList<>();
    findings()
        .filter(found -> !isToldAlike(found))
        .ifPresent(
            other ->
                statements.add(
                    broken(
                        say(
                            "proving.close.other",
                            "Line {0} of the ledger states this close otherwise than {1}: the"
                                + " moment, the verdicts, who and why, the version of the program"
                                + " or the line before.",
                            line.sequence(),
                            DAY))));
    bundle
        .filter(
            found ->
                !Event.composed(DayLedger.hashes(found.evidence().values()))
                    .equals(line.event().inputs()))
        .ifPresent(
            other ->
                statements.add(
                    broken(
                        say(
                            "proving.close.inputs",
                            "Line {0} of the ledger lists other inputs than the bundle of its"
                                + " revision holds.",
                            line.sequence()))));
    statements.addAll(new DayFiles(folder(), files, bundle).statements());
    return statements;
  }

  private String folder() {
    String path = line.event().outputs().firstKey();
    return path.substring(0, path.lastIndexOf('/') + 1);
  }

  private Statement broken(Message message) {
    return new Statement(BROKEN, folder(), message);
  }

  private Optional<Node.Obj> findings() {
    return Optional.ofNullable(files.get(DAY))
        .flatMap(file -> Json.read(file.name(), file.bytes()).object());
  }

  /** A line for a revision that was found has no verdicts, and was written later. */
  private boolean isToldAlike(Node.Obj found) {
    Event event = line.event();
    Node.Obj filing = found.object("filing").orElse(found);
    boolean isFound = event.facts().containsKey(RecordList.FOUND);
    return found.text("day").equals(event.day().map(Object::toString))
        && number(filing, "revision") == event.revision()
        && composed(filing, "by").equals(event.by())
        && composed(filing, "reason").equals(event.reason())
        && moment(found).equals(DayLedger.judgedAt(event))
        && (isFound || isWrittenAlike(found, filing));
  }

  private boolean isWrittenAlike(Node.Obj found, Node.Obj filing) {
    Optional<Node.Obj> before = filing.object("ledger");
    return found.text(Judging.TOOL).equals(Optional.of(line.event().tool()))
        && before.map(head -> number(head, "sequence")).equals(Optional.of(line.sequence() - 1))
        && before.flatMap(head -> head.text("hash")).equals(Optional.of(line.previous()))
        && verdicts(found).equals(toldVerdicts());
  }

  private static long number(Node.Obj object, String key) {
    return object.members().get(key) instanceof Node.Num number ? number.value().longValue() : -1;
  }

  private static String composed(Node.Obj object, String key) {
    return Normalizer.normalize(object.text(key).orElse(""), NFC);
  }

  private static Optional<Instant> moment(Node.Obj found) {
    try {
      return found.text("judgedAt").map(text -> OffsetDateTime.parse(text).toInstant());
    } catch (DateTimeException noTime) {
      return Optional.empty();
    }
  }

  private static SortedMap<String, String> verdicts(Node.Obj found) {
    SortedMap<String, String> verdicts = new TreeMap<>();
    found
        .objects("lots")
        .forEach(
            lot ->
                verdicts.put(
                    DayLedger.VERDICT_OF + lot.text("lot").orElse(""),
                    lot.text("verdict").orElse("")));
    return Event.composed(verdicts);
  }

  private Map<String, String> toldVerdicts() {
    Map<String, String> told = new TreeMap<>(line.event().facts());
    told.keySet().removeIf(fact -> !fact.startsWith(DayLedger.VERDICT_OF));
    return told;
  }
}

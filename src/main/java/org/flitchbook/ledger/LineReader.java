package org.flitchbook.ledger;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.flitchbook.message.Message.say;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.time.format.ResolverStyle;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.SortedMap;
import org.flitchbook.input.Fault;
import org.flitchbook.input.Place;
import org.flitchbook.json.Json;
import org.flitchbook.json.Node;
import org.flitchbook.json.Parsed;
import org.flitchbook.message.Message;

/** Reads one line and holds it to its form, to its own hash, and to the line before. */
final class LineReader {

  /** Years of four digits only. */
  private static final DateTimeFormatter DATE =
      DateTimeFormatter.ofPattern("uuuu-MM-dd", Locale.ROOT)
          .withResolverStyle(ResolverStyle.STRICT);

  private final int number;
  private final Optional<String> previous;
  private final List<Fault> faults = new ArrayList<>();

  /**
   * @param number the physical line, from 1
   * @param previous the hash that the line before states; empty where that one can't be read
   */
  LineReader(int number, Optional<String> previous) {
    this.number = number;
    this.previous = previous;
  }

  /** What is wrong with the line. */
  List<Fault> faults() {
    return faults;
  }

  /** The line; empty where it can't be read as one. */
  Optional<LedgerLine> read(byte[] bytes) {
    Parsed parsed = Json.read(Ledger.FILE, bytes);
    Place place = Place.of(Ledger.FILE, number);
    Message expected = say("ledger.object", "a JSON object");
    parsed.faults().forEach(each -> faults.add(Ledger.fault(place, each.found(), expected)));
    return parsed.object().flatMap(object -> read(bytes, object));
  }

  private Optional<LedgerLine> read(byte[] bytes, Node.Obj object) {
    LineMembers members = new LineMembers(number, object);
    Optional<LedgerLine> line = members.faults().isEmpty() ? line(members) : Optional.empty();
    line.ifPresent(read -> hold(bytes, members, read));
    faults.addAll(members.faults());
    return line;
  }

  private static Optional<LedgerLine> line(LineMembers members) {
    long sequence = members.whole("sequence", CanonicalJson.LARGEST);
    String previous = members.hash("previous");
    String hash = members.hash("hash");
    Optional<Event> event = event(members);
    return members.faults().isEmpty()
        ? event.map(told -> new LedgerLine(sequence, previous, told, hash))
        : Optional.empty();
  }

  private static Optional<Event> event(LineMembers members) {
    String what = members.text("event");
    Optional<Instant> at = moment(members);
    Optional<LocalDate> day = day(members);
    long revision = members.whole("revision", Integer.MAX_VALUE);
    String by = members.text("by");
    String reason = members.text("reason");
    String about = members.text("about");
    String tool = members.text("tool");
    SortedMap<String, String> inputs = members.texts("inputs");
    SortedMap<String, String> outputs = members.texts("outputs");
    SortedMap<String, String> facts = members.texts("facts");
    if (what.isBlank() || facts.containsKey("hash")) {
      members.fault("event", quoted(what), say("ledger.word", "a word, and no fact called hash"));
    }
    return members.faults().isEmpty()
        ? at.map(
            time ->
                new Event(
                    what,
                    time,
                    tool,
                    day,
                    (int) revision,
                    about,
                    by,
                    reason,
                    inputs,
                    outputs,
                    facts))
        : Optional.empty();
  }

  private void hold(byte[] bytes, LineMembers members, LedgerLine line) {
    if (!Arrays.equals(bytes, CanonicalJson.text(members.tree()).getBytes(UTF_8))) {
      members.fault(
          "",
          say("ledger.spelling", "another spelling of the line"),
          say("ledger.canonical", "its canonical form (RFC 8785)"));
    }
    String hash = LedgerLine.hash(members.tree());
    if (!hash.equals(line.hash())) {
      members.fault(
          "hash",
          Message.of(line.hash()),
          say("ledger.hash", "{0}, the SHA-256 of what the line says", hash));
    }
    if (line.sequence() != number) {
      members.fault("sequence", Message.of(line.sequence()), Message.of(number));
    }
    previous
        .filter(before -> !before.equals(line.previous()))
        .ifPresent(
            before ->
                members.fault(
                    "previous",
                    Message.of(line.previous()),
                    say("ledger.previous", "{0}, the line before's hash", before)));
  }

  static Message quoted(String text) {
    return Message.of("\"" + text + "\"");
  }

  private static Optional<Instant> moment(LineMembers members) {
    String text = members.text("at");
    try {
      return Optional.of(Instant.parse(text));
    } catch (DateTimeException noTime) {
      members.fault("at", quoted(text), say("ledger.time", "a time such as 2026-02-24T22:13:05Z"));
      return Optional.empty();
    }
  }

  private static Optional<LocalDate> day(LineMembers members) {
    String text = members.text("day");
    try {
      return text.isEmpty() ? Optional.empty() : Optional.of(LocalDate.parse(text, DATE));
    } catch (DateTimeException noDate) {
      members.fault("day", quoted(text), say("ledger.date", "a date such as 2026-02-24, or \"\""));
      return Optional.empty();
    }
  }
}

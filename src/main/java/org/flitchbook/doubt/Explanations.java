package org.flitchbook.doubt;

import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.flitchbook.input.Explained;
import org.flitchbook.input.Fault;
import org.flitchbook.input.Place;
import org.flitchbook.input.Severity;
import org.flitchbook.input.Stretch;
import org.flitchbook.message.Message;
import org.flitchbook.reading.Entry;
import org.flitchbook.sheet.What;

/**
 * What people said of the faults of one lot. An explanation is of the fault that it names, and of
 * every other ask whose readings lie inside that one's, as far as its evidence bears them out too:
 * what happened once is told once.
 */
final class Explanations {

  private final Rule rule;
  private final Subject subject;
  private final Evidence evidence;
  private final Set<Entry> answering = new LinkedHashSet<>();
  private final Map<Entry, Fault> refused = new LinkedHashMap<>();

  /**
   * @param subject the lot with all its readings
   */
  Explanations(Rule rule, Subject subject) {
    this.rule = rule;
    this.subject = subject;
    this.evidence = new Evidence(rule, subject);
  }

  /** The faults, each with what was said of it. */
  List<Fault> applied(List<Fault> faults) {
    evidence.doubt(faults);
    List<Fault> heard = faults.stream().map(this::directly).toList();
    return heard.stream().map(fault -> inside(fault, heard)).toList();
  }

  private Fault directly(Fault fault) {
    Fault heard = fault;
    for (Entry entry : subject.lot().all(What.EXPLAINED)) {
      Answer answer = Answer.of(entry);
      if (answer.isOf(fault, subject.plan().words())) {
        answering.add(entry);
        Optional<Fault> wrong = wrong(answer, fault);
        wrong.ifPresent(why -> refused.putIfAbsent(entry, why));
        heard = wrong.isPresent() ? heard : heard.explained(explained(answer, fault));
      }
    }
    return heard;
  }

  private Explained explained(Answer answer, Fault fault) {
    Entry entry = answer.entry();
    return new Explained(
        entry.place(),
        entry.by(),
        entry.note(),
        answer.choice(),
        answer.evidence(),
        Optional.of(evidence.lacks(fault, answer.choice(), answer.evidence()))
            .filter(why -> !why.isEmpty())
            .map(Message::of));
  }

  /** A fault that nobody named, within the readings of one that somebody did. */
  private Fault inside(Fault fault, List<Fault> heard) {
    if (fault.explained().isPresent() || !fault.is(Severity.ASK) || fault.stretch().isEmpty()) {
      return fault;
    }
    Stretch own = fault.stretch().get();
    return heard.stream()
        .filter(other -> other.stretch().filter(wide -> wide.covers(own)).isPresent())
        .flatMap(other -> other.explained().stream())
        .filter(said -> isOfAll(said, fault))
        .findFirst()
        .map(fault::explained)
        .orElse(fault);
  }

  /** What was excluded is gone; what was confirmed must be so for each doubt. */
  private boolean isOfAll(Explained said, Fault fault) {
    return !said.choice().equals(Optional.of(Explained.Choice.CONFIRMED))
        || evidence.lacks(fault, said.choice(), said.evidence()).isEmpty();
  }

  private Optional<Fault> wrong(Answer answer, Fault fault) {
    Entry entry = answer.entry();
    if (fault.is(Severity.NOTE)) {
      return Optional.empty();
    }
    if (fault.is(Severity.STOP)) {
      String found =
          subject.say(
              "doubt.explained.a-stop", "{0}, a stop, which no word explains away", entry.item());
      return Optional.of(
          fault(entry, "item", found, subject.say("doubt.explained.an-ask", "an ask")));
    }
    if (subject.plan().person(entry.by()).isEmpty()) {
      return Optional.of(
          fault(
              entry,
              "by",
              entry.by(),
              subject.say("doubt.explained.a-person", "a person of the plan")));
    }
    if (answer.unread().isPresent()) {
      String expected =
          subject.say(
              "doubt.explained.choice", "confirmed or excluded, and file:line of other evidence");
      return Optional.of(fault(entry, "value", answer.unread().get(), expected));
    }
    if (entry.note().isEmpty()) {
      return Optional.of(
          fault(
              entry,
              "note",
              subject.say("doubt.explained.no-reason", "no reason"),
              subject.say("doubt.explained.why", "why, in words")));
    }
    return time(fault)
        .filter(time -> entry.time().latest().isBefore(time))
        .map(
            time ->
                fault(
                    entry,
                    "time",
                    subject.say("doubt.explained.before", "a time before the fault's"),
                    subject.say("doubt.explained.after", "a time after it")));
  }

  private String unknown(Entry entry) {
    return entry.item().isEmpty()
        ? subject.say("doubt.explained.no-fault", "no fault")
        : subject.say("doubt.explained.unknown", "{0}, no fault on file", entry.item());
  }

  private Fault fault(Entry entry, String column, String found, String expected) {
    return rule.fault(subject, entry.place().column(column), found, expected);
  }

  /** When it was that a fault is about; empty where it is about no time. */
  private Optional<Instant> time(Fault fault) {
    return fault
        .stretch()
        .map(Stretch::from)
        .or(
            () ->
                subject.lot().entries().stream()
                    .filter(entry -> isAt(entry, fault.place()))
                    .findFirst()
                    .map(entry -> entry.time().earliest()));
  }

  private static boolean isAt(Entry entry, Place place) {
    return entry.place().file().equals(place.file()) && entry.place().line() == place.line();
  }

  /** What is wrong with the explanations, once all faults were heard. */
  List<Fault> faults() {
    List<Fault> faults = new ArrayList<>(refused.values());
    for (Entry entry : subject.lot().all(What.EXPLAINED)) {
      if (!answering.contains(entry)) {
        faults.add(
            fault(
                entry,
                "item",
                unknown(entry),
                subject.say("doubt.explained.as-printed", "a fault's rule and place, as printed")));
      }
    }
    return faults;
  }
}

package org.flitchbook.doubt;

import static org.flitchbook.message.Message.say;

import java.time.Duration;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.flitchbook.input.Explained;
import org.flitchbook.input.Fault;
import org.flitchbook.input.Place;
import org.flitchbook.input.Severity;
import org.flitchbook.input.Stretch;
import org.flitchbook.json.Choice;
import org.flitchbook.lot.Lot;
import org.flitchbook.message.Language;
import org.flitchbook.message.Message;
import org.flitchbook.reading.Entry;
import org.flitchbook.sheet.What;

/**
 * What people said of the faults of one lot. An explanation is of the fault that it names, and of
 * every other ask whose readings lie inside that one's, as far as its evidence bears them out too:
 * what happened once is told once.
 */
final class Explanations {

  /**
   * What a person says of a fault, with what else it rests on. It names a fault that is on file,
   * was written after what it is about, and does not explain a stop away.
   *
   * @param near how far a reading may lie in time from those that it is compared with
   * @param within how soon after they began readings must be confirmed: later on, a core is like
   *     its air
   */
  @Choice("explanation")
  record Explanation(Duration near, Duration within) implements Rule.Numbers {}

  private final Rule rule;
  private final Subject subject;
  private final Language language;
  private final List<ExplainedEntry> entries;
  private final Evidence evidence;
  private final Set<Entry> answering = new LinkedHashSet<>();
  private final Map<Entry, Fault> refused = new LinkedHashMap<>();

  /**
   * @param subject the lot with all its readings
   */
  Explanations(Rule rule, Subject subject, Language language) {
    this.rule = rule;
    this.subject = subject;
    this.language = language;
    this.entries =
        subject.lot().all(What.EXPLAINED).stream()
            .filter(entry -> !ExplainedEntry.isWithdrawal(entry))
            .map(ExplainedEntry::of)
            .toList();
    this.evidence = new Evidence((Explanation) rule.numbers(), subject);
  }

  /** The faults, each with what was said of it. */
  List<Fault> applied(List<Fault> faults) {
    evidence.doubt(faults);
    List<Fault> heard = faults.stream().map(this::directly).toList();
    return heard.stream().map(fault -> inside(fault, heard)).toList();
  }

  private Fault directly(Fault fault) {
    Fault heard = fault;
    for (ExplainedEntry each : entries) {
      if (each.isOf(fault, language)) {
        answering.add(each.entry());
        Optional<Fault> wrong = wrong(each, fault);
        wrong.ifPresent(why -> refused.putIfAbsent(each.entry(), why));
        heard = wrong.isPresent() ? heard : heard.explained(explained(each, fault));
      }
    }
    return heard;
  }

  private Explained explained(ExplainedEntry said, Fault fault) {
    return new Explained(
        said.entry().place(),
        said.entry().by(),
        said.entry().note(),
        said.choice(),
        said.evidence(),
        evidence.lacks(fault, said.choice(), said.evidence()));
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

  private Optional<Fault> wrong(ExplainedEntry said, Fault fault) {
    Entry entry = said.entry();
    if (fault.is(Severity.NOTE)) {
      return Optional.empty();
    }
    if (fault.is(Severity.STOP)) {
      return wrong(
          entry,
          "item",
          say("doubt.explained.a-stop", "{0}, a stop, which no word explains away", entry.item()),
          say("doubt.explained.an-ask", "an ask"));
    }
    if (subject.plan().person(entry.by()).isEmpty()) {
      Message person = say("doubt.explained.a-person", "a person of the plan");
      return wrong(entry, "by", Message.of(entry.by()), person);
    }
    if (entry.note().isEmpty() && said.unread().isEmpty()) {
      return wrong(
          entry,
          "note",
          say("doubt.explained.no-reason", "no reason"),
          say("doubt.explained.why", "why, in words"));
    }
    if (said.unread().isPresent()) {
      return wrong(
          entry,
          "value",
          Message.of(said.unread().get()),
          say("doubt.explained.choice", "confirmed or excluded, and file:line of other evidence"));
    }
    return time(fault)
        .filter(time -> entry.time().latest().isBefore(time))
        .flatMap(
            time ->
                wrong(
                    entry,
                    "time",
                    say("doubt.explained.before", "a time before the fault's"),
                    say("doubt.explained.after", "a time after it")));
  }

  private Optional<Fault> wrong(Entry entry, String column, Message found, Message expected) {
    Message remedy =
        say(
            "do.explanation",
            "Name one ask as it is printed, say confirmed or excluded and by what other reading,"
                + " and why.");
    Doubt doubt = new Doubt(entry.place().column(column), found, expected, remedy);
    return Optional.of(rule.fault(subject.lot().code(), doubt));
  }

  /** When it was that a fault is about; empty where it is about no time. */
  private Optional<Instant> time(Fault fault) {
    return fault
        .stretch()
        .map(Stretch::from)
        .or(
            () ->
                subject.lot().entries().stream()
                    .filter(entry -> entry.place().isSameLine(fault.place()))
                    .findFirst()
                    .map(entry -> entry.time().earliest()));
  }

  /** What is wrong with the explanations, once all faults were heard. */
  List<Fault> faults() {
    Stream<Fault> idle =
        entries.stream()
            .filter(said -> !answering.contains(said.entry()))
            .map(said -> lapsed(said).orElseGet(() -> idle(said.entry())));
    return Stream.concat(refused.values().stream(), idle).toList();
  }

  private Fault idle(Entry entry) {
    return wrong(
            entry,
            "item",
            unknown(entry),
            say("doubt.explained.as-printed", "a fault's rule and place, as printed"))
        .orElseThrow();
  }

  /**
   * Once a row was corrected, what was asked of it or of what lies beside it may be asked no more:
   * what was said of that lapses, and is asked about no more either.
   */
  private Optional<Fault> lapsed(ExplainedEntry said) {
    Stream<String> rules =
        subject.rules().stream()
            .map(Rule::name)
            .flatMap(name -> Stream.of(name, language.word("rule", name)));
    return said.of(rules)
        .filter(this::isOnFile)
        .flatMap(place -> lastCorrection())
        .map(
            correction ->
                Fault.note(
                    rule.name(),
                    subject.lot().code(),
                    said.entry().place().column("item"),
                    say(
                        "doubt.explained.lapsed",
                        "{0}, which is asked no more since {1} was corrected",
                        said.entry().item(),
                        correction.replaced().place()),
                    say("doubt.explained.as-printed", "a fault's rule and place, as printed")));
  }

  /** The last row of the lot that was corrected, other than what was said. */
  private Optional<Lot.Correction> lastCorrection() {
    return subject.lot().corrections().stream()
        .filter(each -> !each.replaced().is(What.EXPLAINED))
        .reduce((first, last) -> last);
  }

  /** Whether a line was read: of a row in force or corrected, or of a log. */
  private boolean isOnFile(Place place) {
    return Stream.of(
            subject.lot().entries().stream().map(Entry::place),
            subject.lot().corrections().stream().map(each -> each.replaced().place()),
            subject.lot().tracks().stream()
                .map(Lot.StepTrack::track)
                .flatMap(track -> IntStream.range(0, track.size()).mapToObj(track::place)))
        .flatMap(places -> places)
        .anyMatch(each -> each.isSameLine(place));
  }

  private static Message unknown(Entry entry) {
    return entry.item().isEmpty()
        ? say("doubt.explained.no-fault", "no fault")
        : say("doubt.explained.unknown", "{0}, no fault on file", entry.item());
  }
}

package org.flitchbook.doubt;

import static org.flitchbook.message.Message.say;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.flitchbook.input.Explained;
import org.flitchbook.input.Fault;
import org.flitchbook.input.Place;
import org.flitchbook.input.Severity;
import org.flitchbook.input.Stretch;
import org.flitchbook.json.Choice;
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
    this.entries = subject.lot().all(What.EXPLAINED).stream().map(ExplainedEntry::of).toList();
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
            .map(ExplainedEntry::entry)
            .filter(entry -> !answering.contains(entry))
            .flatMap(
                entry ->
                    wrong(
                        entry,
                        "item",
                        unknown(entry),
                        say("doubt.explained.as-printed", "a fault's rule and place, as printed"))
                        .stream());
    return Stream.concat(refused.values().stream(), idle).toList();
  }

  private static Message unknown(Entry entry) {
    return entry.item().isEmpty()
        ? say("doubt.explained.no-fault", "no fault")
        : say("doubt.explained.unknown", "{0}, no fault on file", entry.item());
  }

  /**
   * An {@code explained} entry, read. Its item is a fault's rule and place as printed; its value
   * says {@code confirmed} or {@code excluded} where it is about readings, and then the {@code
   * file:line} of each reading or check that bears it out. A file of the same day needs no folder.
   *
   * @param unread the first word of the value that is neither; empty where there is none
   */
  private record ExplainedEntry(
      Entry entry,
      Optional<Explained.Choice> choice,
      List<Place> evidence,
      Optional<String> unread) {

    private static final Pattern PLACE = Pattern.compile("([^:]+\\.csv):([1-9]\\d{0,8})(?::(.+))?");

    static ExplainedEntry of(Entry entry) {
      Optional<Explained.Choice> choice = Optional.empty();
      List<Place> evidence = new ArrayList<>();
      for (String word : entry.value().strip().split("[\\s,;]+", -1)) {
        Optional<Explained.Choice> chosen = choice(word);
        Optional<Place> place = place(word, folder(entry));
        if (!word.isEmpty() && place.isEmpty() && (chosen.isEmpty() || choice.isPresent())) {
          return new ExplainedEntry(entry, choice, evidence, Optional.of(word));
        }
        choice = choice.or(() -> chosen);
        place.ifPresent(evidence::add);
      }
      return new ExplainedEntry(entry, choice, evidence, Optional.empty());
    }

    private static Optional<Explained.Choice> choice(String word) {
      return Arrays.stream(Explained.Choice.values())
          .filter(each -> each.name().equals(word.toUpperCase(Locale.ROOT)))
          .findFirst();
    }

    private static Optional<Place> place(String word, String folder) {
      Matcher found = PLACE.matcher(word);
      if (!found.matches()) {
        return Optional.empty();
      }
      String file = found.group(1).contains("/") ? found.group(1) : folder + found.group(1);
      String column = Optional.ofNullable(found.group(3)).orElse("");
      return Optional.of(new Place(file, Integer.parseInt(found.group(2)), column));
    }

    private static String folder(Entry entry) {
      String file = entry.place().file();
      return file.substring(0, file.lastIndexOf('/') + 1);
    }

    /**
     * Whether it names a fault: with its column or without, with its folder or in the same one; a
     * note by its rule alone. The rule may stand as the record prints it.
     */
    boolean isOf(Fault fault, Language language) {
      List<String> rules = List.of(fault.rule(), language.word("rule", fault.rule()));
      String written = entry.item().strip();
      Place place = fault.place();
      if (fault.is(Severity.NOTE) && rules.contains(written)) {
        return true;
      }
      return Stream.of(place, Place.of(place.file(), place.line()))
          .map(Place::toString)
          .flatMap(at -> Stream.of(at, at.replaceFirst("^" + Pattern.quote(folder(entry)), "")))
          .anyMatch(at -> rules.stream().anyMatch(rule -> written.equals(rule + " " + at)));
    }
  }
}

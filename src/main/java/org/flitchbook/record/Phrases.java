package org.flitchbook.record;

import java.math.RoundingMode;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.flitchbook.check.Finding;
import org.flitchbook.check.Measured;
import org.flitchbook.check.Verdict;
import org.flitchbook.document.Cell;
import org.flitchbook.document.Heading;
import org.flitchbook.document.Paragraph;
import org.flitchbook.document.Tone;
import org.flitchbook.input.Fault;
import org.flitchbook.input.Severity;
import org.flitchbook.lot.Track;
import org.flitchbook.measure.Level;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Unit;
import org.flitchbook.message.Message;
import org.flitchbook.plan.Limit;
import org.flitchbook.plan.Plan;
import org.flitchbook.reading.Entry;
import org.flitchbook.sheet.Step;
import org.flitchbook.sums.Shift;
import org.flitchbook.words.Words;

/** How values, times and verdicts are put into words, in the language of the plan. */
final class Phrases {

  private static final DateTimeFormatter CLOCK = DateTimeFormatter.ofPattern("HH:mm", Locale.ROOT);

  private static final DateTimeFormatter DAY_TIME =
      DateTimeFormatter.ofPattern("MM-dd HH:mm", Locale.ROOT);

  private static final DateTimeFormatter DATE_TIME =
      DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm", Locale.ROOT);

  private final Words words;
  private final ZoneId zone;
  private final Bound bound;

  Phrases(Plan plan) {
    this.words = plan.words();
    this.zone = plan.establishment().zone();
    this.bound = new Bound(words);
  }

  ZoneId zone() {
    return zone;
  }

  String say(String id, String english, Object... values) {
    return words.say(id, english, values);
  }

  String say(Message message) {
    return message.in(words);
  }

  String count(String id, long number, String one, String many, Object... more) {
    return words.count(id, number, one, many, more);
  }

  /** A word of a closed set. */
  String word(String family, String word) {
    return words.word(family, word);
  }

  String sum(String formula) {
    return words.sum(formula);
  }

  /** Words of a closed set, with "or" before the last. */
  String either(String family, List<String> choices) {
    return words.either(choices.stream().map(each -> words.word(family, each)).toList());
  }

  /** Text in which a number is never parted from its unit. */
  Bound bound() {
    return bound;
  }

  Paragraph paragraph(String text) {
    return new Paragraph(bound.of(text));
  }

  Heading heading(String id, String english, Object... values) {
    return new Heading(2, say(id, english, values));
  }

  Grid grid(String id, String english, Object... values) {
    return new Grid(this, say(id, english, values));
  }

  /** An empty field is never left blank. */
  String orNotRecorded(String text) {
    return text.isEmpty() ? notRecorded() : text;
  }

  String notRecorded() {
    return say("record.not-recorded", "NOT RECORDED");
  }

  Paragraph nothingOf(String caption) {
    return paragraph(say("record.nothing-of", "{0}: NOT RECORDED", caption));
  }

  String verdict(Verdict verdict) {
    return word("verdict", verdict.words());
  }

  Cell cell(Verdict verdict) {
    return new Cell(bound.of(verdict(verdict)), tone(verdict));
  }

  /** The limit's name with its rank. */
  String ranked(Limit limit) {
    return limit.name() + ", " + word("rank", limit.rank().word());
  }

  String step(Step step) {
    return word("step", step.word());
  }

  /** What an entry is about, and of which piece. */
  String what(Entry entry) {
    return ofPiece(word("what", entry.what().word()), entry);
  }

  String ofPiece(String name, Entry entry) {
    return entry.piece().isEmpty()
        ? name
        : say("record.of-piece", "{0}, piece {1}", name, entry.piece());
  }

  /** The probe, or that it was read by hand. */
  String probe(Track track) {
    return word("probe", track.called());
  }

  static Tone tone(Verdict verdict) {
    return switch (verdict) {
      case MET -> Tone.PASS;
      case NOT_MET -> Tone.FAIL;
      case NOT_SHOWN -> Tone.DOUBT;
      case PENDING -> Tone.WAIT;
    };
  }

  /** What a fault in the data asks of people. */
  String follows(Fault fault) {
    if (fault.explained().isPresent() && !fault.isInDoubt()) {
      return say("follows.explained", "explained: judged as was said");
    }
    if (fault.is(Severity.ASK) && !fault.isOpen()) {
      return say(
          "follows.not-borne-out",
          "explained, but nothing bears it out: what rests on it is not met");
    }
    return switch (fault.severity()) {
      case STOP -> say("follows.stop", "stop: no verdict");
      case ASK -> say("follows.ask", "ask: explain it before release");
      default -> say("follows.note", "note: no verdict changes");
    };
  }

  String time(Instant time) {
    return DATE_TIME.format(time.atZone(zone));
  }

  String clock(Instant time) {
    return CLOCK.format(time.atZone(zone));
  }

  String date(Instant time) {
    return time.atZone(zone).toLocalDate().toString();
  }

  /** Without the year, for a table whose caption has it. */
  String shortTime(Instant time) {
    return DAY_TIME.format(time.atZone(zone));
  }

  /** {@code EST, UTC-05:00}. */
  String zone(Instant time) {
    ZonedDateTime local = time.atZone(zone);
    return DateTimeFormatter.ofPattern("zzz", Locale.ENGLISH).format(local)
        + ", UTC"
        + local.getOffset().getId().replace("Z", "");
  }

  /** A temperature to a tenth of a degree, a share to a tenth of a per cent. */
  static String level(Track track, int index, Unit unit) {
    Quantity level = Level.quantity(track.level(index, Shift.AS_WRITTEN), unit);
    return level.value().rounded(1).setScale(1, RoundingMode.UNNECESSARY).toPlainString()
        + " "
        + unit;
  }

  /** {@code at most 200 ppm}. */
  String bound(Measured measured) {
    String limit = quantity(measured.limit());
    return measured.atMost()
        ? say("words.at-most", "at most {0}", limit)
        : say("words.at-least", "at least {0}", limit);
  }

  /** {@code ≤ 200 ppm}, where the column says that it is the limit. */
  static String sign(Measured measured) {
    return (measured.atMost() ? "≤\u00a0" : "≥\u00a0") + quantity(measured.limit());
  }

  /** {@code 130 °F to 80 °F}. */
  String band(Quantity from, Quantity to) {
    return say("record.band", "{0} to {1}", from, to);
  }

  /** Times of more than an hour as {@code 1 h 14 min}; everything else as it is. */
  static String quantity(Quantity quantity) {
    boolean clock = quantity.unit() == Unit.MINUTE || quantity.unit() == Unit.HOUR;
    boolean whole = quantity.shown().equals(quantity + "");
    return clock && !(quantity.unit() == Unit.HOUR && whole)
        ? hoursAndMinutes(quantity)
        : quantity.shown();
  }

  private static String hoursAndMinutes(Quantity time) {
    Quantity minutes = time.in(Unit.MINUTE);
    if (minutes.isBelow(Quantity.of(60, Unit.MINUTE))) {
      return minutes.shown();
    }
    long hours = minutes.in(Unit.HOUR).value().floor().longValueExact();
    Quantity rest = minutes.minus(Quantity.of(hours * 60, Unit.MINUTE));
    return hours + " h" + (rest.value().signum() == 0 ? "" : " " + rest.shown());
  }

  static String worst(Finding finding) {
    return finding.measured().map(measured -> quantity(measured.value())).orElse("–");
  }

  /** While a limit is pending there is nothing to spare or to lack yet. */
  static String margin(Finding finding) {
    return finding
        .measured()
        .filter(m -> finding.verdict() != Verdict.PENDING)
        .map(measured -> signed(measured.margin()))
        .orElse("–");
  }

  private static String signed(Quantity margin) {
    return margin.value().signum() < 0
        ? "−" + quantity(new Quantity(margin.value().abs(), margin.unit()))
        : quantity(margin);
  }

  /** What the plan says to do where the limit is missed. */
  static Optional<String> planned(Limit limit) {
    return Optional.of(limit.monitoring().ifMissed()).filter(text -> !text.isEmpty());
  }

  static String capital(String text) {
    return text.isEmpty()
        ? text
        : text.substring(0, 1).toUpperCase(Locale.ROOT) + text.substring(1);
  }
}

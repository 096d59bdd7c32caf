package org.flitchbook.record;

import java.time.Instant;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.flitchbook.account.ProbeReadings;
import org.flitchbook.account.ProbeReadings.Reading;
import org.flitchbook.check.Finding;
import org.flitchbook.check.Measured;
import org.flitchbook.check.Verdict;
import org.flitchbook.document.Text;
import org.flitchbook.document.Tone;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Unit;
import org.flitchbook.message.Argument;
import org.flitchbook.message.Listing;
import org.flitchbook.message.Message;
import org.flitchbook.plan.Limit;
import org.flitchbook.plan.Plan;
import org.flitchbook.reading.Entry;
import org.flitchbook.words.Words;

/** How values, times and verdicts are put into words, in the language of the plan. */
class Phrases {

  static final Text.Style PLAIN = Text.Style.PLAIN;

  private static final DateTimeFormatter CLOCK = DateTimeFormatter.ofPattern("HH:mm", Locale.ROOT);

  private static final DateTimeFormatter DAY_TIME =
      DateTimeFormatter.ofPattern("MM-dd HH:mm", Locale.ROOT);

  private static final DateTimeFormatter DATE_TIME =
      DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm", Locale.ROOT);

  private static final DateTimeFormatter ZONE = DateTimeFormatter.ofPattern("zzz", Locale.ENGLISH);

  private static final Pattern NUMBER_AND_UNIT =
      Pattern.compile("(\\d) (?=(?:°F|°C|ppm|%|mm|min|kg|g|oz|lb|h|d|s)(?![\\p{L}\\p{N}]))");

  private static final Quantity AN_HOUR = Quantity.of(60, Unit.MINUTE);

  private final Words words;
  private final ZoneId zone;
  private final Pattern atMostOrLeast;

  Phrases(Plan plan) {
    this.words = plan.words();
    this.zone = plan.establishment().zone();
    String atMost = Pattern.quote(atMost("").stripTrailing());
    String atLeast = Pattern.quote(atLeast("").stripTrailing());
    this.atMostOrLeast = Pattern.compile("(" + atMost + "|" + atLeast + ") (?=\\d)");
  }

  ZoneId zone() {
    return zone;
  }

  String say(String id, String english, Object... values) {
    return words.say(id, english, values);
  }

  String say(Argument value) {
    return value.in(words);
  }

  String count(String id, long number, String one, String many, Object... more) {
    return words.count(id, number, one, many, more);
  }

  /** A word of a closed set. */
  String word(String family, String word) {
    return words.word(family, word);
  }

  /**
   * The same text, in which a number is never parted from its unit at a line's end, nor a limit's
   * number from the words before it.
   */
  String unbroken(String text) {
    String units = NUMBER_AND_UNIT.matcher(text).replaceAll("$1\u00a0");
    return atMostOrLeast.matcher(units).replaceAll("$1\u00a0");
  }

  /** Text in which a number is never parted from its unit. */
  Text text(String text, Text.Style style) {
    return text.isEmpty() ? Text.of("") : Text.of(span(text, style));
  }

  Text.Span span(String text, Text.Style style) {
    return new Text.Span(unbroken(text), style);
  }

  /** The texts one after the other, without those that are empty. */
  static String joined(String between, String... texts) {
    return Stream.of(texts).filter(text -> !text.isEmpty()).collect(Collectors.joining(between));
  }

  /** An empty field is never left blank. */
  String orNotRecorded(String text) {
    return text.isEmpty() ? notRecorded() : text;
  }

  static String orDash(String text) {
    return text.isEmpty() ? "–" : text;
  }

  String notRecorded() {
    return say("record.not-recorded", "NOT RECORDED");
  }

  String name(Limit limit) {
    return limit.name().in(words);
  }

  /** The limit's name with its rank. */
  String ranked(Limit limit) {
    return name(limit) + ", " + word("rank", limit.rank().word());
  }

  /** What is said of a finding: its reasons, remarks, formulas. */
  String say(List<Message> messages) {
    return say(Listing.semicolons(messages));
  }

  /** What the plan says to do where the limit is missed. */
  static Optional<String> planned(Limit limit) {
    return Optional.of(limit.monitoring().ifMissed()).filter(text -> !text.isEmpty());
  }

  /** What the plan says to do; a person decides where it says nothing. */
  String toDo(Limit limit) {
    return planned(limit).orElse(say("record.report.hold", "hold; a person decides"));
  }

  /** What an entry is about, and of which piece. */
  String what(Entry entry) {
    return ofPiece(say(entry.what()), entry);
  }

  String ofPiece(String name, Entry entry) {
    return entry.piece().isEmpty()
        ? name
        : say("record.of-piece", "{0}, piece {1}", name, entry.piece());
  }

  /** The probe, or that it was read by hand. */
  String probe(String called) {
    return word("probe", called);
  }

  static Tone tone(Verdict verdict) {
    return switch (verdict) {
      case MET -> Tone.PASS;
      case NOT_MET -> Tone.FAIL;
      case NOT_SHOWN -> Tone.DOUBT;
      case PENDING -> Tone.WAIT;
    };
  }

  String time(Instant time) {
    return DATE_TIME.format(time.atZone(zone));
  }

  String time(Entry entry) {
    return time(entry.time().written());
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
    return ZONE.format(local) + ", UTC" + local.getOffset().getId().replace("Z", "");
  }

  /** {@code 130 °F to 80 °F}, or from one time to another. */
  String range(Object from, Object to) {
    return say("record.band", "{0} to {1}", from, to);
  }

  /** A temperature to a tenth of a degree, a share to a tenth of a per cent. */
  static String level(Reading reading) {
    Quantity level = reading.level();
    return level.value().rounded(1).toPlainString() + " " + level.unit();
  }

  /** {@code 35.2 °F to 39.4 °F}. */
  String levels(ProbeReadings readings) {
    return range(level(readings.lowest()), level(readings.highest()));
  }

  /** The error of a check, and whether it failed. */
  String error(Quantity error, boolean passed) {
    return passed ? say(error) : say("record.instruments.failed", "{0}, FAILED", error);
  }

  /** {@code at most 200 ppm}. */
  String bound(Measured measured) {
    String limit = quantity(measured.limit());
    return measured.atMost() ? atMost(limit) : atLeast(limit);
  }

  private String atMost(String limit) {
    return say("words.at-most", "at most {0}", limit);
  }

  private String atLeast(String limit) {
    return say("words.at-least", "at least {0}", limit);
  }

  /** {@code ≤ 200 ppm}, where the column says that it is the limit. */
  static String sign(Measured measured) {
    return (measured.atMost() ? "≤\u00a0" : "≥\u00a0") + quantity(measured.limit());
  }

  /** Times of more than an hour as {@code 1 h 14 min}; everything else as it is. */
  static String quantity(Quantity quantity) {
    boolean clock = quantity.unit() == Unit.MINUTE || quantity.unit() == Unit.HOUR;
    boolean whole = quantity.shown().equals(quantity.toString());
    return clock && !(quantity.unit() == Unit.HOUR && whole)
        ? hoursAndMinutes(quantity.in(Unit.MINUTE))
        : quantity.shown();
  }

  private static String hoursAndMinutes(Quantity minutes) {
    if (minutes.isBelow(AN_HOUR)) {
      return minutes.shown();
    }
    long hours = minutes.in(Unit.HOUR).value().floor().longValueExact();
    Quantity rest = minutes.minus(Quantity.of(hours, Unit.HOUR));
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
        .map(Measured::margin)
        .map(margin -> (margin.value().signum() < 0 ? "−" : "") + size(margin))
        .orElse("–");
  }

  /** Without its sign. */
  static String size(Quantity margin) {
    return quantity(new Quantity(margin.value().abs(), margin.unit()));
  }

  static String capital(String text) {
    return text.isEmpty()
        ? text
        : text.substring(0, 1).toUpperCase(Locale.ROOT) + text.substring(1);
  }
}

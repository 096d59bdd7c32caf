package org.flitchbook.reading;

import static org.flitchbook.message.Message.say;

import java.time.DateTimeException;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.flitchbook.json.Fields;
import org.flitchbook.message.Message;

/** Reads the {@code time} of an entry of {@code logs.json}: where a log's times stand, and how. */
final class ClockReader {

  private static final String EXAMPLE = "a date and time such as yyyy-MM-dd HH:mm:ss";
  private static final String NEWEST_FIRST = "newest first";
  private static final String AN_OFFSET = "a time with its sign, such as +37 min or -1 h";

  private static final Pattern OFFSET = Pattern.compile("([+-])(\\d{1,6}) ?(s|min|h)");

  private final Fields time;
  private final char decimalMark;

  ClockReader(Fields time, char decimalMark) {
    this.time = time;
    this.decimalMark = decimalMark;
  }

  Optional<LogLayout.Time> read() {
    List<String> columns =
        time.has("columns") ? time.texts("columns") : List.of(time.text("column"));
    if (columns.isEmpty()) {
      time.fault("columns", "no column", "the column of the time, or its columns");
    }
    Optional<ZoneId> zone =
        time.parsed("zone", "a zone such as America/New_York", ClockReader::zone);
    Optional<LogClock> clock = clock(zone.orElse(ZoneOffset.UTC));
    boolean newestFirst =
        time.optionalParsed("order", "\"" + NEWEST_FIRST + "\"", ClockReader::order).isPresent();
    Optional<LogLayout.Correction> correction = correction();
    time.end();
    return clock
        .filter(known -> zone.isPresent())
        .map(known -> new LogLayout.Time(columns, known, newestFirst, correction));
  }

  private static Optional<ZoneId> zone(String text) {
    try {
      return Optional.of(ZoneId.of(text));
    } catch (DateTimeException noZone) {
      return Optional.empty();
    }
  }

  private static Optional<String> order(String text) {
    return Optional.of(text).filter(NEWEST_FIRST::equals);
  }

  /** Exactly one of the keys says what a cell of the time holds. */
  private Optional<LogClock> clock(ZoneId zone) {
    List<String> stated =
        Stream.of("pattern", "elapsed", "epoch", "serial").filter(time::has).toList();
    if (stated.size() > 1) {
      time.fault(stated.get(1), String.join(" and ", stated), "one of them");
    }
    boolean run = stated.contains("elapsed");
    Optional<Instant> start = run ? start(zone) : Optional.<Instant>empty();
    if (!run && time.has("start")) {
      time.fault("start", "a start", "none; only \"elapsed\" counts from one");
    }
    return switch (stated.size() > 1 ? "" : stated.isEmpty() ? "pattern" : stated.get(0)) {
      case "" -> Optional.empty();
      case "elapsed" ->
          stated("elapsed", "seconds, minutes, h:mm:ss, h:mm or mm:ss", zone, start)
              .filter(known -> start.isPresent());
      case "epoch" -> stated("epoch", "seconds or milliseconds", zone, start);
      case "serial" -> stated("serial", "the day 0, such as 1899-12-30", zone, start);
      default -> pattern(zone);
    };
  }

  private Optional<LogClock> stated(
      String key, String expected, ZoneId zone, Optional<Instant> start) {
    Instant from = start.orElse(Instant.EPOCH);
    return time.optionalParsed(key, expected, text -> clock(key, text, zone, from, decimalMark));
  }

  private Optional<LogClock> pattern(ZoneId zone) {
    String pattern = time.text("pattern");
    Optional<LogClock> clock = clock("pattern", pattern, zone, Instant.EPOCH, decimalMark);
    if (clock.isEmpty()) {
      time.fault("pattern", "\"" + pattern + "\"", EXAMPLE + open(pattern));
    }
    return clock;
  }

  private static String open(String pattern) {
    boolean half = pattern.matches(".*[hK].*") && pattern.indexOf('a') < 0;
    return half ? "; a clock of 12 hours needs an \"a\" for AM and PM" : "";
  }

  private Optional<Instant> start(ZoneId zone) {
    String text = time.text("start");
    Times.Result result = Times.read(text, zone);
    if (result instanceof Times.Result.Read read) {
      return Optional.of(read.moment().written());
    }
    if (!text.isEmpty()) {
      Times.Result.Wrong wrong = (Times.Result.Wrong) result;
      time.fault("start", wrong.found(), wrong.expected());
    }
    return Optional.empty();
  }

  /**
   * The clock that one key of the entry states.
   *
   * @param start what {@code elapsed} counts from
   * @return empty where the value is none that the key can have
   */
  static Optional<LogClock> clock(
      String key, String value, ZoneId zone, Instant start, char decimalMark) {
    long from = start.toEpochMilli();
    return switch (key + " " + value) {
      case "elapsed h:mm:ss", "elapsed h:mm", "elapsed mm:ss" ->
          Optional.of(
              new RunClock(
                  value,
                  say("reading.clock.since-start", "{0} since the start", value),
                  zone,
                  from));
      case "elapsed seconds" ->
          Optional.of(
              new CountedClock(
                  say("reading.clock.seconds", "seconds since the start"),
                  zone,
                  from,
                  1000,
                  false,
                  false,
                  decimalMark));
      case "elapsed minutes" ->
          Optional.of(
              new CountedClock(
                  say("reading.clock.minutes", "minutes since the start"),
                  zone,
                  from,
                  60_000,
                  false,
                  true,
                  decimalMark));
      case "epoch seconds" ->
          Optional.of(
              new CountedClock(
                  say("reading.clock.unix-seconds", "Unix seconds of a time from 2000 to 2099"),
                  zone,
                  0,
                  1000,
                  false,
                  false,
                  decimalMark));
      case "epoch milliseconds" ->
          Optional.of(
              new CountedClock(
                  say(
                      "reading.clock.unix-milliseconds",
                      "Unix milliseconds of a time from 2000 to 2099"),
                  zone,
                  0,
                  1,
                  false,
                  false,
                  decimalMark));
      default ->
          key.equals("pattern")
              ? WrittenClock.of(value, zone).map(LogClock.class::cast)
              : key.equals("serial") ? serial(value, zone, decimalMark) : Optional.empty();
    };
  }

  private static Optional<LogClock> serial(String dayZero, ZoneId zone, char decimalMark) {
    try {
      LocalDate zero = LocalDate.parse(dayZero);
      long millis = zero.atStartOfDay().toInstant(ZoneOffset.UTC).toEpochMilli();
      Message days = say("reading.clock.days", "days since {0}, of a time from 2000 to 2099", zero);
      return Optional.of(
          new CountedClock(
              days, zone, millis, Duration.ofDays(1).toMillis(), true, true, decimalMark));
    } catch (DateTimeException noDay) {
      return Optional.empty();
    }
  }

  /** A clock is put right by a person who says why, never by the program. */
  private Optional<LogLayout.Correction> correction() {
    Optional<Duration> offset = time.optionalParsed("offset", AN_OFFSET, ClockReader::offset);
    Optional<String> because = time.optionalText("because").filter(text -> !text.isBlank());
    if (offset.isPresent() && because.isEmpty()) {
      time.fault("because", "no reason", "how the clock was found to be off, and by whom");
    } else if (offset.isEmpty() && because.isPresent() && !time.has("offset")) {
      time.fault("because", "a reason without an \"offset\"", "both, or neither");
    }
    return offset.flatMap(
        by -> because.map(why -> new LogLayout.Correction(time.place("offset"), by, why)));
  }

  private static Optional<Duration> offset(String text) {
    Matcher match = OFFSET.matcher(text);
    if (!match.matches()) {
      return Optional.empty();
    }
    long count = Long.parseLong(match.group(1) + match.group(2));
    return Optional.of(
        switch (match.group(3)) {
          case "s" -> Duration.ofSeconds(count);
          case "min" -> Duration.ofMinutes(count);
          default -> Duration.ofHours(count);
        });
  }
}

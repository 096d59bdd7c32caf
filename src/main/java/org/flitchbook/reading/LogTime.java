package org.flitchbook.reading;

import static org.flitchbook.message.Message.say;

import java.time.DateTimeException;
import java.time.Duration;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.flitchbook.json.Checked;
import org.flitchbook.json.Fields;
import org.flitchbook.json.Format;
import org.flitchbook.json.Key;
import org.flitchbook.message.Message;

/**
 * The {@code time} of an entry of {@code logs.json}: where a log's times stand, and how.
 *
 * @param order "newest first", where the rows are
 * @param offset added to each time, because the logger's clock was off
 * @param because how the clock was found to be off, and by whom
 */
record LogTime(
    Fields object,
    @Key(inline = true) Columns columns,
    ZoneId zone,
    @Key(inline = true) Clock clock,
    @Key(format = "order") Optional<String> order,
    @Key(format = "offset") Optional<Duration> offset,
    Optional<String> because)
    implements Checked {

  /** How a time that is counted from a start is written. */
  static final List<String> ELAPSED =
      List.of("milliseconds", "seconds", "minutes", "h:mm:ss", "h:mm", "mm:ss");

  private static final Pattern OFFSET = Pattern.compile("([+-])(\\d{1,6}) ?(s|min|h)");

  /** One column, or several that are joined by a space before they are read. */
  sealed interface Columns permits One, Several {
    List<String> all();
  }

  record One(String column) implements Columns {
    @Override
    public List<String> all() {
      return List.of(column);
    }
  }

  record Several(@Key(name = "columns", least = 1) List<String> all) implements Columns {}

  /** What a cell of the time holds. */
  sealed interface Clock permits Written, Elapsed, Epoch, Serial {

    /** Empty beside a complaint about one of the keys. */
    Optional<LogClock> in(Setting setting);
  }

  /** What else of the entry a clock needs, and where to say by its key what is wrong. */
  record Setting(ZoneId zone, char decimalMark, Times.Complaint complaint) {

    private Optional<LogClock> counted(Message words, long zero, long unitMillis, boolean coarse) {
      return Optional.of(
          new CountedClock(words, zone, zero, unitMillis, false, coarse, decimalMark));
    }
  }

  /**
   * Times written out.
   *
   * @param pattern such as yyyy-MM-dd HH:mm:ss, or M/d/yyyy h:mm:ss a
   */
  record Written(String pattern) implements Clock {

    @Override
    public Optional<LogClock> in(Setting setting) {
      Optional<LogClock> clock = WrittenClock.of(pattern, setting.zone);
      if (clock.isEmpty()) {
        Message found = say("json.text", "\"{0}\"", pattern);
        setting.complaint.about("pattern", found, expected());
      }
      return clock;
    }

    private Message expected() {
      Message example =
          say("reading.pattern.such-as", "a date and time such as yyyy-MM-dd HH:mm:ss");
      return pattern.matches(".*[hK].*") && pattern.indexOf('a') < 0
          ? say(
              "reading.pattern.half-day",
              "{0}; a clock of 12 hours needs an \"a\" for AM and PM",
              example)
          : example;
    }
  }

  /** Counted from the start. */
  record Elapsed(@Key(format = "elapsed") String elapsed, String start) implements Clock {

    @Override
    public Optional<LogClock> in(Setting setting) {
      Times.Complaint complaint =
          (rule, found, expected) -> setting.complaint.about("start", found, expected);
      return Optional.of(start)
          .filter(text -> !text.isEmpty())
          .flatMap(text -> Times.read(text, setting.zone, complaint))
          .flatMap(from -> since(from.written().toEpochMilli(), setting));
    }

    private Optional<LogClock> since(long start, Setting setting) {
      return switch (elapsed) {
        case "" -> Optional.empty();
        case "milliseconds" ->
            setting.counted(
                say("reading.clock.milliseconds", "milliseconds since the start"), start, 1, false);
        case "seconds" ->
            setting.counted(
                say("reading.clock.seconds", "seconds since the start"), start, 1000, false);
        case "minutes" ->
            setting.counted(
                say("reading.clock.minutes", "minutes since the start"), start, 60_000, true);
        default -> Optional.of(new CountedClock.Run(elapsed, setting.zone, start));
      };
    }
  }

  /** Unix time. */
  record Epoch(@Key(format = "epoch") String epoch) implements Clock {

    @Override
    public Optional<LogClock> in(Setting setting) {
      return switch (epoch) {
        case "" -> Optional.empty();
        case "seconds" ->
            setting.counted(
                say("reading.clock.unix-seconds", "Unix seconds of a time from 2000 to 2099"),
                0,
                1000,
                false);
        default ->
            setting.counted(
                say(
                    "reading.clock.unix-milliseconds",
                    "Unix milliseconds of a time from 2000 to 2099"),
                0,
                1,
                false);
      };
    }
  }

  /**
   * The days of a spreadsheet.
   *
   * @param serial the day 0 of a spreadsheet's days: 1899-12-30 or 1904-01-01
   */
  record Serial(LocalDate serial) implements Clock {

    @Override
    public Optional<LogClock> in(Setting setting) {
      return Optional.of(
          new CountedClock(
              say("reading.clock.days", "days since {0}, of a time from 2000 to 2099", serial),
              setting.zone,
              serial.atStartOfDay().toInstant(ZoneOffset.UTC).toEpochMilli(),
              Duration.ofDays(1).toMillis(),
              true,
              true,
              setting.decimalMark));
    }
  }

  /** A clock is put right by a person who says why, never by the program. */
  @Override
  public void check(Fields time) {
    boolean reason = because.filter(text -> !text.isBlank()).isPresent();
    if (offset.isPresent() && !reason) {
      time.fault(
          "because",
          say("reading.offset.no-reason", "no reason"),
          say("reading.offset.reason", "how the clock was found to be off, and by whom"));
    } else if (reason && !time.has("offset")) {
      time.fault(
          "because",
          say("reading.offset.none", "a reason without an \"offset\""),
          say("reading.offset.both", "both, or neither"));
    }
  }

  /** See {@link Readings#clock}. */
  static Optional<LogClock> clock(String key, String value, String start) {
    Clock clock =
        switch (key) {
          case "pattern" -> new Written(value);
          case "epoch" -> new Epoch(value);
          case "serial" -> new Serial(LocalDate.parse(value));
          default -> new Elapsed(value, start);
        };
    return clock.in(new Setting(ZoneOffset.UTC, '.', (faulty, found, expected) -> {}));
  }

  Optional<LogClock> clock(char decimalMark) {
    Times.Complaint complaint =
        (key, found, expected) -> {
          if (object.has(key)) {
            object.fault(key, found, expected);
          }
        };
    return clock.in(new Setting(zone, decimalMark, complaint));
  }

  /** For a diagnostic: the heading's words. */
  String column() {
    return String.join(" ", columns.all());
  }

  static Format<Duration> anOffset() {
    return Format.of(
        say("reading.offset.such-as", "a time with its sign, such as +37 min or -1 h"),
        LogTime::offset);
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

  static Format<LocalDate> dayZero() {
    return Format.of(
        say("reading.day-zero", "the day 0, such as 1899-12-30"),
        text -> {
          try {
            return Optional.of(LocalDate.parse(text));
          } catch (DateTimeException noDay) {
            return Optional.empty();
          }
        });
  }
}

package org.flitchbook.reading;

import static org.flitchbook.message.Message.say;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.flitchbook.message.Message;

/**
 * Times that are one number: seconds or minutes since a stated start, Unix time, or the days of a
 * spreadsheet.
 *
 * @param expected what is counted
 * @param zero the time at 0, in milliseconds since 1970
 * @param unitMillis milliseconds of one
 * @param isLocal whether days on the clock of the wall are counted
 * @param coarse whether the last digit stands for what went by in it, as in a log that counts
 *     minutes; whole seconds count as exact, like seconds that are written out
 */
record CountedClock(
    Message expected,
    ZoneId zone,
    long zero,
    long unitMillis,
    boolean isLocal,
    boolean coarse,
    char decimalMark)
    implements LogClock {

  private static final BigDecimal EARLIEST = startOf(2000);
  private static final BigDecimal LATEST = startOf(2100);

  private static BigDecimal startOf(int year) {
    return BigDecimal.valueOf(
        LocalDate.of(year, 1, 1).atStartOfDay().toInstant(ZoneOffset.UTC).toEpochMilli());
  }

  /** Outside of this century a number counts something else than what was stated. */
  @Override
  public OptionalLong read(String text) {
    return Numbers.read(text, decimalMark)
        .map(count -> count.multiply(BigDecimal.valueOf(unitMillis)).add(BigDecimal.valueOf(zero)))
        .filter(time -> time.compareTo(EARLIEST) >= 0 && time.compareTo(LATEST) < 0)
        .map(time -> OptionalLong.of(time.setScale(0, RoundingMode.HALF_UP).longValueExact()))
        .orElse(OptionalLong.empty());
  }

  @Override
  public String shown(long time) {
    return isLocal
        ? LocalDateTime.ofInstant(Instant.ofEpochMilli(time), ZoneOffset.UTC).toString()
        : LogClock.super.shown(time);
  }

  @Override
  public Optional<Message> hint(String text) {
    return text.matches("\\d{10}(\\d{3})?")
        ? Optional.of(
            say("reading.hint.unix", "Unix time has 10 digits in seconds, 13 in milliseconds"))
        : Optional.empty();
  }

  @Override
  public long precisionMillis(int places) {
    return coarse ? BigDecimal.valueOf(unitMillis).movePointLeft(places).longValue() : 0;
  }

  /**
   * Times as hours and minutes run since a stated start, such as {@code 0:07:30}.
   *
   * @param form {@code h:mm:ss}, {@code h:mm} or {@code mm:ss}
   * @param start milliseconds since 1970
   */
  record Run(String form, ZoneId zone, long start) implements LogClock {

    private static final Pattern WRITTEN = Pattern.compile("(\\d{1,5}):([0-5]\\d)(?::([0-5]\\d))?");

    @Override
    public Message expected() {
      return say("reading.clock.since-start", "{0} since the start", form);
    }

    @Override
    public OptionalLong read(String text) {
      Matcher run = WRITTEN.matcher(text);
      boolean three = form.equals("h:mm:ss");
      if (!run.matches() || three != (run.group(3) != null)) {
        return OptionalLong.empty();
      }
      long count = Long.parseLong(run.group(1)) * 60 + Long.parseLong(run.group(2));
      long seconds = three ? count * 60 + Long.parseLong(run.group(3)) : count;
      return OptionalLong.of(start + seconds * (form.equals("h:mm") ? 60_000 : 1000));
    }

    @Override
    public long precisionMillis(int places) {
      return form.equals("h:mm") ? 60_000 : 0;
    }
  }
}

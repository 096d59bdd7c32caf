package org.flitchbook.reading;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.Optional;
import java.util.OptionalLong;
import org.flitchbook.message.Message;

/**
 * Times that are one number: seconds or minutes since a stated start, Unix time, or the days of a
 * spreadsheet.
 *
 * @param words what is counted, for a diagnostic
 * @param zero the time at 0, in milliseconds since 1970
 * @param unitMillis milliseconds of one
 * @param isLocal whether days on the clock of the wall are counted
 * @param coarse whether the last digit stands for what went by in it, as in a log that counts
 *     minutes; whole seconds count as exact, like seconds that are written out
 */
record CountedClock(
    Message words,
    ZoneId zone,
    long zero,
    long unitMillis,
    boolean isLocal,
    boolean coarse,
    char decimalMark)
    implements LogClock {

  private static final long EARLIEST = at(2000);
  private static final long LATEST = at(2100);

  private static long at(int year) {
    return LocalDate.of(year, 1, 1).atStartOfDay().toInstant(ZoneOffset.UTC).toEpochMilli();
  }

  /** Outside of this century a number counts something else than what was stated. */
  @Override
  public OptionalLong read(String text) {
    Optional<BigDecimal> number = Numbers.read(text, decimalMark);
    return number
        .map(count -> count.multiply(BigDecimal.valueOf(unitMillis)).add(BigDecimal.valueOf(zero)))
        .filter(time -> time.compareTo(BigDecimal.valueOf(EARLIEST)) >= 0)
        .filter(time -> time.compareTo(BigDecimal.valueOf(LATEST)) < 0)
        .map(time -> OptionalLong.of(time.setScale(0, RoundingMode.HALF_UP).longValueExact()))
        .orElse(OptionalLong.empty());
  }

  @Override
  public String shown(long time) {
    Instant instant = Instant.ofEpochMilli(time);
    return isLocal
        ? LocalDateTime.ofInstant(instant, ZoneOffset.UTC).toString()
        : instant.atZone(zone).toOffsetDateTime().toString();
  }

  @Override
  public Message expected() {
    return words;
  }

  @Override
  public long precisionMillis(int places) {
    return coarse ? BigDecimal.valueOf(unitMillis).movePointLeft(places).longValue() : 0;
  }
}

package org.flitchbook.look;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A written time taken apart.
 *
 * @param date the three parts of the date as written, none where there is no date
 * @param between what stands between the parts of the date, twice; empty without a date
 * @param seconds of the day, of the time as it is written
 * @param clock the pattern of the time of day; empty without one
 * @param gap what stands between date and time
 */
record Stamp(List<String> date, List<String> between, long seconds, String clock, String gap) {

  private static final String TIME =
      "(\\d{1,2}):(\\d{2})(?::(\\d{2})([.,]\\d{1,9})?)?( ?[AaPp]\\.?[Mm]\\.?)?(Z|[+-]\\d{2}:\\d{2})?";
  private static final String DATE =
      "(\\d{1,4}|[A-Za-z]{3})([-/. ])(\\d{1,2}|[A-Za-z]{3})([-/. ]|, )(\\d{1,4})";
  private static final Pattern STAMP = Pattern.compile("(?:" + DATE + ")?([ T]?)(?:" + TIME + ")?");
  private static final List<String> MONTHS =
      List.of("jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec");

  static Optional<Stamp> of(String text) {
    Matcher match = STAMP.matcher(text);
    boolean known = match.matches() && !text.isEmpty();
    return known ? Optional.of(of(match)) : Optional.empty();
  }

  private static Stamp of(Matcher match) {
    boolean dated = match.group(1) != null;
    return new Stamp(
        dated ? List.of(match.group(1), match.group(3), match.group(5)) : List.of(),
        dated ? List.of(match.group(2), match.group(4)) : List.of(),
        match.group(7) == null ? 0 : seconds(match),
        match.group(7) == null ? "" : clock(match),
        match.group(6));
  }

  private static long seconds(Matcher match) {
    int hour = Integer.parseInt(match.group(7));
    String half = match.group(11) == null ? "" : match.group(11).strip().toLowerCase(Locale.ROOT);
    if (!half.isEmpty()) {
      hour = hour % 12 + (half.startsWith("p") ? 12 : 0);
    }
    int seconds = match.group(9) == null ? 0 : Integer.parseInt(match.group(9));
    return hour * 3600L + Integer.parseInt(match.group(8)) * 60L + seconds;
  }

  private static String clock(Matcher match) {
    String half = match.group(11);
    String hour = half == null ? "H" : "h";
    String fraction = match.group(10) == null ? "" : match.group(10);
    return hour.repeat(match.group(7).length())
        + ":mm"
        + (match.group(9) == null ? "" : ":ss")
        + (fraction.isEmpty() ? "" : fraction.charAt(0) + "S".repeat(fraction.length() - 1))
        + (half == null ? "" : half.startsWith(" ") ? " a" : "a")
        + (match.group(12) == null ? "" : "XXX");
  }

  boolean isDated() {
    return !date.isEmpty();
  }

  /** The number in that place of the date; of a month's name its number, 0 where it is none. */
  int number(int place) {
    String part = date.get(place);
    return Character.isDigit(part.charAt(0))
        ? Integer.parseInt(part)
        : MONTHS.indexOf(part.toLowerCase(Locale.ROOT)) + 1;
  }

  boolean isName(int place) {
    return !Character.isDigit(date.get(place).charAt(0));
  }

  /**
   * Seconds since 1970 on the clock that wrote it.
   *
   * @param order where year, month and day stand, such as {@code ymd}
   * @return empty where there is no such day
   */
  Optional<Long> at(String order) {
    try {
      int year = number(order.indexOf('y'));
      LocalDate day =
          LocalDate.of(
              year < 100 ? year + 2000 : year,
              number(order.indexOf('m')),
              number(order.indexOf('d')));
      return Optional.of(day.toEpochDay() * 86_400 + seconds);
    } catch (DateTimeException noSuchDay) {
      return Optional.empty();
    }
  }
}

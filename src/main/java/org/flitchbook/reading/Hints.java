package org.flitchbook.reading;

import java.math.BigDecimal;
import java.util.regex.Pattern;

/** What often lies behind a cell of a log that can't be read, as the end of a diagnostic. */
final class Hints {

  private static final String DAMAGED =
      "; a spreadsheet wrote this over what was there: export the log again";

  private static final Pattern HALF_OF_DAY = Pattern.compile("(?i)[ap]\\.?m");
  private static final Pattern SERIAL = Pattern.compile("[234]\\d{4}([.,]\\d+)?");

  private Hints() {}

  static String ofTime(String text, LogClock clock) {
    if (text.contains("##")) {
      return DAMAGED;
    }
    if (clock instanceof WrittenClock written) {
      return ofWritten(text, written);
    }
    boolean longNumber = clock instanceof CountedClock && text.matches("\\d{10}(\\d{3})?");
    return longNumber ? "; Unix time has 10 digits in seconds, 13 in milliseconds" : "";
  }

  private static String ofWritten(String text, WrittenClock clock) {
    if (SERIAL.matcher(text).matches()) {
      return "; the days of a spreadsheet are stated as \"serial\" in logs.json";
    }
    boolean half = clock.pattern().indexOf('a') >= 0 && !HALF_OF_DAY.matcher(text).find();
    return half ? "; AM or PM is missing" : "";
  }

  static String ofNumber(String text, char decimalMark) {
    if (text.contains("##")) {
      return DAMAGED;
    }
    char other = decimalMark == '.' ? ',' : '.';
    boolean otherMark =
        text.indexOf(other) >= 0 && Numbers.read(text, other).filter(Hints::isSmall).isPresent();
    return otherMark ? "; the decimal mark is stated as \"decimal\" in logs.json" : "";
  }

  private static boolean isSmall(BigDecimal number) {
    return number.precision() - number.scale() <= 4;
  }
}

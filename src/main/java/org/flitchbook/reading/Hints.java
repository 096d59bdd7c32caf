package org.flitchbook.reading;

import java.math.BigDecimal;
import java.util.Optional;
import java.util.regex.Pattern;

/** What often lies behind a cell of a log that can't be read, by the key of its wording. */
final class Hints {

  private static final String DAMAGED = "reading.hint.damaged";

  private static final Pattern HALF_OF_DAY = Pattern.compile("(?i)[ap]\\.?m");
  private static final Pattern SERIAL = Pattern.compile("[234]\\d{4}([.,]\\d+)?");

  private Hints() {}

  static Optional<String> ofTime(String text, LogClock clock) {
    if (text.contains("##")) {
      return Optional.of(DAMAGED);
    }
    if (clock instanceof WrittenClock written) {
      return ofWritten(text, written);
    }
    boolean longNumber = clock instanceof CountedClock && text.matches("\\d{10}(\\d{3})?");
    return Optional.of("reading.hint.unix").filter(hint -> longNumber);
  }

  private static Optional<String> ofWritten(String text, WrittenClock clock) {
    if (SERIAL.matcher(text).matches()) {
      return Optional.of("reading.hint.serial");
    }
    boolean half = clock.pattern().indexOf('a') >= 0 && !HALF_OF_DAY.matcher(text).find();
    return Optional.of("reading.hint.half-day").filter(hint -> half);
  }

  static Optional<String> ofNumber(String text, char decimalMark) {
    if (text.contains("##")) {
      return Optional.of(DAMAGED);
    }
    char other = decimalMark == '.' ? ',' : '.';
    boolean otherMark =
        text.indexOf(other) >= 0 && Numbers.read(text, other).filter(Hints::isSmall).isPresent();
    return Optional.of("reading.hint.decimal").filter(hint -> otherMark);
  }

  private static boolean isSmall(BigDecimal number) {
    return number.precision() - number.scale() <= 4;
  }
}

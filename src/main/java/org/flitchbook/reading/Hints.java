package org.flitchbook.reading;

import static org.flitchbook.message.Message.say;

import java.math.BigDecimal;
import java.util.Optional;
import java.util.regex.Pattern;
import org.flitchbook.message.Message;

/** What often lies behind a cell of a log that can't be read, by the key of its wording. */
final class Hints {

  private static final Message DAMAGED =
      say(
          "reading.hint.damaged",
          "a spreadsheet wrote this over what was there: export the log again");

  private static final Pattern HALF_OF_DAY = Pattern.compile("(?i)[ap]\\.?m");
  private static final Pattern SERIAL = Pattern.compile("[234]\\d{4}([.,]\\d+)?");

  private Hints() {}

  static Optional<Message> ofTime(String text, LogClock clock) {
    if (text.contains("##")) {
      return Optional.of(DAMAGED);
    }
    if (clock instanceof WrittenClock written) {
      return ofWritten(text, written);
    }
    boolean longNumber = clock instanceof CountedClock && text.matches("\\d{10}(\\d{3})?");
    return Optional.of(
            say("reading.hint.unix", "Unix time has 10 digits in seconds, 13 in milliseconds"))
        .filter(hint -> longNumber);
  }

  private static Optional<Message> ofWritten(String text, WrittenClock clock) {
    if (SERIAL.matcher(text).matches()) {
      return Optional.of(
          say(
              "reading.hint.serial",
              "the days of a spreadsheet are stated as \"serial\" in logs.json"));
    }
    boolean half = clock.pattern().indexOf('a') >= 0 && !HALF_OF_DAY.matcher(text).find();
    return Optional.of(say("reading.hint.half-day", "AM or PM is missing")).filter(hint -> half);
  }

  static Optional<Message> ofNumber(String text, char decimalMark) {
    if (text.contains("##")) {
      return Optional.of(DAMAGED);
    }
    char other = decimalMark == '.' ? ',' : '.';
    boolean otherMark =
        text.indexOf(other) >= 0 && Numbers.read(text, other).filter(Hints::isSmall).isPresent();
    return Optional.of(
            say("reading.hint.decimal", "the decimal mark is stated as \"decimal\" in logs.json"))
        .filter(hint -> otherMark);
  }

  private static boolean isSmall(BigDecimal number) {
    return number.precision() - number.scale() <= 4;
  }
}

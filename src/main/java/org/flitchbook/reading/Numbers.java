package org.flitchbook.reading;

import static org.flitchbook.message.Message.say;

import java.math.BigDecimal;
import java.util.Optional;
import java.util.regex.Pattern;
import org.flitchbook.message.Message;

/** Reads decimals strictly: a sign, digits, one decimal mark. No thousands mark. */
final class Numbers {

  private static final int LONGEST = 24;

  /** No program writes a float with so many letters. */
  private static final int LONGEST_LOGGED = 60;

  private static final Pattern LOGGED =
      Pattern.compile("[-+]?([0-9]+\\.?[0-9]*|\\.[0-9]+)([eE][-+]?[0-9]{1,3})?");

  private Numbers() {}

  /** As people write them: digits before and behind the decimal mark, and no exponent. */
  static Optional<BigDecimal> read(String text, char decimalMark) {
    return isNumber(text, decimalMark)
        ? Optional.of(new BigDecimal(decimalMark == '.' ? text : text.replace(decimalMark, '.')))
        : Optional.empty();
  }

  /** As programs write them too: {@code .5}, {@code 5.}, {@code 5.8e1}. */
  static Optional<BigDecimal> logged(String text, char decimalMark) {
    return Optional.of(text.replace(decimalMark, '.'))
        .filter(point -> decimalMark == '.' || text.indexOf('.') < 0)
        .filter(point -> point.length() <= LONGEST_LOGGED && LOGGED.matcher(point).matches())
        .map(BigDecimal::new);
  }

  /** How many letters stand behind the decimal mark. */
  static int places(String number, char decimalMark) {
    int mark = number.indexOf(decimalMark);
    return mark < 0 ? 0 : number.length() - mark - 1;
  }

  /** What often lies behind a cell that is no number. */
  static Optional<Message> hint(String text, char decimalMark) {
    return read(text, decimalMark == '.' ? ',' : '.')
        .filter(number -> number.precision() - number.scale() <= 4)
        .map(
            n ->
                say(
                    "reading.hint.decimal",
                    "the decimal mark is stated as \"decimal\" in logs.json"));
  }

  /** What is expected of a row that is wider than its heading. */
  static Message noBareComma(char delimiter, Message expected) {
    return delimiter == ','
        ? say(
            "reading.row.bare-comma",
            "{0}; a decimal comma can't stand bare in a comma file",
            expected)
        : expected;
  }

  private static boolean isNumber(String text, char decimalMark) {
    int marks = 0;
    int digits = 0;
    for (int i = 0; i < text.length(); i++) {
      char letter = text.charAt(i);
      if (letter >= '0' && letter <= '9') {
        digits++;
      } else if (letter == decimalMark && digits > 0 && i < text.length() - 1) {
        marks++;
      } else if (i > 0 || (letter != '-' && letter != '+')) {
        return false;
      }
    }
    return digits > 0 && marks <= 1 && text.length() <= LONGEST;
  }
}

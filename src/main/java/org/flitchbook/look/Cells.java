package org.flitchbook.look;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import org.flitchbook.reading.Readings;
import org.flitchbook.table.Row;

/** What single cells and rows look like. */
final class Cells {

  /** A date or a time of day somewhere in a cell, or a day of the year; no address of a network. */
  private static final Pattern TIME =
      Pattern.compile(
          "(?<![\\d.])\\d{1,4}[-/.]\\d{1,2}[-/.]\\d{1,4}(?![\\d.])|\\b\\d{1,2}[:h]\\d{2}\\b"
              + "|\\b20\\d{2}-\\d{3}\\b|\\d[. -]{1,2}\\p{L}{3,9}[. -]{1,2}\\d{2}");

  /** Times begin with a digit or a weekday, and are short. */
  private static final Pattern LIKE_TIME = Pattern.compile("(?:\\p{L}{2,9}[.,]{0,2} ?)?\\d.{3,38}");

  private static final Pattern UNIT =
      Pattern.compile(
          "(?i)[(\\[]?(.{0,2}[°º˚\uFFFD?]?[cf]|℃|℉|%( ?rh)?|rh|s|sec|min|h|hh:mm(:ss)?|deg\\.?"
              + " ?[cf]|[ymd]{1,4}[-/.][ymd]{1,4}[-/.][ymd]{1,4}.*)[)\\]]?");

  private Cells() {}

  /** With a point or a comma; what the comma means shows only in the file as a whole. */
  static Optional<Readings.Value> value(String cell) {
    return Readings.value(cell, '.').or(() -> Readings.value(cell, ','));
  }

  static Optional<BigDecimal> number(String cell) {
    return value(cell).map(Readings.Value::number);
  }

  static boolean isNumber(String cell) {
    return number(cell).isPresent();
  }

  static boolean hasDigit(String cell) {
    return cell.chars().anyMatch(letter -> letter >= '0' && letter <= '9');
  }

  /** Whether a cell is a time that can be taken apart, or looks like one. */
  static boolean isTime(String cell) {
    return WrittenTime.of(cell).isPresent() || looksLikeTime(cell);
  }

  static boolean looksLikeTime(String cell) {
    return LIKE_TIME.matcher(cell).matches() && TIME.matcher(cell).find() && !isNumber(cell);
  }

  static List<String> filled(Row row) {
    return row.cellsUnder(index -> true);
  }

  /** Neither a time nor a number stands in it: only such a row can be a heading. */
  static boolean isOfWords(Row row) {
    return filled(row).stream().noneMatch(cell -> isNumber(cell) || isTime(cell));
  }

  /** Words alone, most of them units. */
  static boolean isUnits(Row row) {
    List<String> filled = filled(row);
    long units = filled.stream().filter(cell -> UNIT.matcher(cell).matches()).count();
    return isOfWords(row) && units > 0 && units * 2 >= filled.size();
  }
}

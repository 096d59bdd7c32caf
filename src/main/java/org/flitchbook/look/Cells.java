package org.flitchbook.look;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import org.flitchbook.reading.Readings;
import org.flitchbook.table.Row;

/** What single cells and rows look like. */
final class Cells {

  private static final Pattern TIME =
      Pattern.compile(
          ".*(\\d{1,4}[-/.]\\d{1,2}[-/.]\\d{1,4}|\\d{1,2}:\\d{2}|\\d [A-Za-z]{3} \\d).*");
  private static final Pattern UNIT =
      Pattern.compile(
          "(?i)[(\\[]?(.{0,2}[°º˚\uFFFD?]?[cf]|℃|℉|%( ?rh)?|rh|s|sec|min|h|hh:mm(:ss)?|deg\\.?"
              + " ?[cf]|[ymd]{1,4}[-/.][ymd]{1,4}[-/.][ymd]{1,4}.*)[)\\]]?");

  private Cells() {}

  /** A number with a point or a comma; what the comma means shows only in the file as a whole. */
  static Optional<BigDecimal> number(String cell) {
    return Readings.number(cell, '.').or(() -> Readings.number(cell, ','));
  }

  static boolean isTime(String cell) {
    return TIME.matcher(cell).matches();
  }

  private static List<String> filled(Row row) {
    return row.cellsUnder(index -> true);
  }

  /** A time, or a number at its beginning, and something else beside it. */
  static boolean isData(Row row) {
    List<String> filled = filled(row);
    return filled.size() >= 2
        && (number(filled.get(0)).isPresent() || filled.stream().anyMatch(Cells::isTime))
        && filled.stream().anyMatch(cell -> number(cell).isPresent());
  }

  /** Words alone, with a unit among them. */
  static boolean isUnits(Row row) {
    List<String> filled = filled(row);
    return filled.stream().anyMatch(cell -> UNIT.matcher(cell).matches())
        && filled.stream().noneMatch(cell -> number(cell).isPresent() || isTime(cell));
  }

  /** Whether a row can be the heading of another: words, and one above each filled cell. */
  static boolean fits(Row heading, Row data) {
    return !isData(heading)
        && filled(heading).size() >= 2
        && IntStream.range(0, data.cells().size())
            .allMatch(index -> data.cell(index).isEmpty() || !heading.cell(index).isEmpty());
  }
}

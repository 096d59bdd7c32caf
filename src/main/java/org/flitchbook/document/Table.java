package org.flitchbook.document;

import java.util.List;
import java.util.Objects;

/**
 * A table with one row of heads. A table without rows prints its head alone.
 *
 * @param caption may be empty
 * @param columns not empty
 * @param rows each with as many cells as there are columns
 */
public record Table(String caption, List<Column> columns, List<Row> rows) implements Block {
  public Table {
    Objects.requireNonNull(caption, "table caption");
    columns = List.copyOf(columns);
    Demand.some("table head", columns);
    rows = List.copyOf(rows);
    for (int i = 0; i < rows.size(); i++) {
      checkCells(i + 1, rows.get(i), columns.size());
    }
  }

  private static void checkCells(int number, Row row, int columns) {
    int cells = row.cells().size();
    if (cells != columns) {
      throw new IllegalArgumentException(
          "row " + number + " has " + cells + " cells for " + columns + " columns: " + row);
    }
  }

  /**
   * Divides the width of a page or a terminal among the columns. Columns whose content fits get
   * what their content needs, and what is left over goes by weight. Else short columns stay whole,
   * long ones get the width of their longest word, and the rest goes by weight and by what the
   * content still lacks.
   *
   * @param room the width for all columns, gaps not counted, in any unit
   * @param least for each column the width of its longest word
   * @param natural for each column the width of its content unbroken, not below {@code least}
   * @return the widths; they add up to {@code room} at most
   */
  public double[] share(double room, double[] least, double[] natural) {
    double[] weights = columns.stream().mapToDouble(Column::weight).toArray();
    return new Shares(weights, least, natural).of(room);
  }
}

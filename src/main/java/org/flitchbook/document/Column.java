package org.flitchbook.document;

import java.util.Objects;

/**
 * A column of a table.
 *
 * @param head not blank
 * @param align where the cells and the head stand
 * @param weight the column's share of room that is left over or missing, 0 to 100; 0 keeps the
 *     column as narrow as its content
 * @param rowHead whether the cells of this column name their rows
 */
public record Column(String head, Align align, int weight, boolean rowHead) {
  public Column {
    Demand.words("column head", head);
    Objects.requireNonNull(align, "column alignment");
    Demand.between("column weight", weight, 0, 100);
  }
}

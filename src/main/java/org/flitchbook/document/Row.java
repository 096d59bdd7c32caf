package org.flitchbook.document;

import java.util.List;

/** A row of a table. */
public record Row(List<Cell> cells) {
  public Row {
    cells = List.copyOf(cells);
  }
}

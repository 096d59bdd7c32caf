package org.flitchbook.table;

import java.util.List;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;

/**
 * A row of a table as it stands in the file.
 *
 * @param line the physical line on which it begins, from 1
 * @param cells the cells, white space at their ends taken off
 */
public record Row(int line, List<String> cells) {

  public Row {
    cells = List.copyOf(cells);
  }

  /** The cell at that place, empty where the row is shorter. */
  public String cell(int index) {
    return index < cells.size() ? cells.get(index) : "";
  }

  /** The filled cells at the places that are wanted. */
  public List<String> cellsUnder(IntPredicate wanted) {
    return IntStream.range(0, cells.size())
        .filter(wanted)
        .mapToObj(cells::get)
        .filter(cell -> !cell.isEmpty())
        .toList();
  }

  public boolean isBlank() {
    return cells.stream().allMatch(String::isEmpty);
  }
}

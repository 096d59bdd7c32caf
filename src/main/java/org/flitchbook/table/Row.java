package org.flitchbook.table;

import java.util.ArrayList;
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

  /**
   * Of one line by itself, wherever a quote may open or close; a delimiter in quotes is a letter.
   */
  static Row ofLine(int line, String text, char delimiter) {
    List<String> cells = new ArrayList<>();
    StringBuilder cell = new StringBuilder();
    boolean quoted = false;
    for (int i = 0; i < text.length(); i++) {
      char letter = text.charAt(i);
      quoted ^= letter == '"';
      if (letter == delimiter && !quoted) {
        cells.add(cell.toString().strip());
        cell.setLength(0);
      } else if (letter != '"') {
        cell.append(letter);
      }
    }
    cells.add(cell.toString().strip());
    return new Row(line, cells);
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

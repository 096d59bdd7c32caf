package org.flitchbook.change;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.flitchbook.input.Fault;
import org.flitchbook.input.Severity;
import org.flitchbook.input.SourceFile;
import org.flitchbook.message.Message;
import org.flitchbook.table.Layout;
import org.flitchbook.table.Row;
import org.flitchbook.table.Rows;
import org.flitchbook.table.Tables;

/** The rows of a CSV file, each with its filled cells by the word of their column. */
record SheetRows(List<Line> lines) {

  /**
   * One row.
   *
   * @param number the physical line, from 1
   * @param cells the filled cells by their column's word, or by its number where it has no word
   */
  record Line(int number, Map<String, String> cells) {

    Message shown() {
      return Message.of(String.join(", ", cells.values()));
    }

    boolean says(Line other) {
      return cells.equals(other.cells);
    }

    /** Whether more of the cells agree than differ. */
    boolean isLike(Line other) {
      int agree = 0;
      for (Map.Entry<String, String> cell : cells.entrySet()) {
        agree += cell.getValue().equals(other.cells.get(cell.getKey())) ? 1 : 0;
      }
      return 2 * agree > Math.max(cells.size(), other.cells.size());
    }

    /** The columns in which two rows differ. */
    String differing(Line other) {
      Map<String, String> all = new LinkedHashMap<>(cells);
      other.cells.forEach(all::putIfAbsent);
      return String.join(
          ", ",
          all.keySet().stream()
              .filter(column -> !Objects.equals(cells.get(column), other.cells.get(column)))
              .toList());
    }
  }

  /** The rows under the heading; empty where the file can't be read as a table. */
  static Optional<SheetRows> of(SourceFile file) {
    Collected collected = new Collected();
    List<Fault> faults = Tables.read(file, Layout.OPEN, collected);
    return faults.stream().anyMatch(fault -> fault.is(Severity.BROKEN))
        ? Optional.empty()
        : Optional.of(new SheetRows(List.copyOf(collected.lines)));
  }

  private static final class Collected implements Rows {

    private final List<Line> lines = new ArrayList<>();
    private List<String> columns = List.of();

    @Override
    public void heading(Row heading, char delimiter) {
      columns = heading.cells();
    }

    @Override
    public void row(Row row) {
      Map<String, String> cells = new LinkedHashMap<>();
      for (int i = 0; i < row.cells().size(); i++) {
        if (!row.cell(i).isEmpty()) {
          cells.put(column(i), row.cell(i));
        }
      }
      lines.add(new Line(row.line(), cells));
    }

    private String column(int index) {
      String word = index < columns.size() ? columns.get(index).toLowerCase(Locale.ROOT) : "";
      boolean isOwn = !word.isEmpty() && columns.indexOf(columns.get(index)) == index;
      return isOwn ? word : "column " + (index + 1);
    }
  }
}

package org.flitchbook.document;

import java.util.List;
import java.util.Optional;

/**
 * A table with one row of heads. A table without rows prints its head alone.
 *
 * @param caption may be empty
 * @param columns not empty
 * @param rows each with as many cells as there are columns
 */
public record Table(String caption, List<Column> columns, List<Row> rows) implements Block {
  public Table {
    columns = List.copyOf(columns);
    Require.notEmpty("table head", columns);
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
    return Shares.of(columns, room, least, natural);
  }

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
      Require.notBlank("column head", head);
      Require.between("column weight", weight, 0, 100);
    }
  }

  /** Where text stands in its column. */
  public enum Align {
    LEFT,
    RIGHT,
    CENTER
  }

  /** A row of a table. */
  public record Row(List<Cell> cells) {
    public Row {
      cells = List.copyOf(cells);
    }
  }

  /**
   * A cell of a table; its text may be empty. A tone other than plain puts its symbol in front.
   *
   * @param scale drawn in place of the text, which then says in words what it shows
   */
  public record Cell(Text text, Tone tone, Optional<Scale> scale) {
    public Cell {
      if (scale.isPresent()) {
        Require.notBlank("scale in words", text.plain());
      }
    }

    public Cell(Text text, Tone tone) {
      this(text, tone, Optional.empty());
    }

    /** A scale, and what it shows in words. */
    public static Cell of(Scale scale, String words) {
      return new Cell(Text.of(words), Tone.PLAIN, Optional.of(scale));
    }
  }

  /**
   * A small scale drawn to a limit: a tick stands for the limit, a mark for the value, inside the
   * limit at the left and over it at the right, whatever the limit is.
   *
   * @param at where the mark stands: 0 at the limit, −1 at the left end, 1 at the right end; the
   *     ends also stand for all that lies further out, and are drawn as arrows
   */
  public record Scale(double at) {
    private static final int WIDTH = 9;
    private static final int LIMIT = 5;

    public Scale {
      Require.between("mark of a scale", at, -1, 1);
    }

    public boolean isAtEnd() {
      return Math.abs(at) == 1;
    }

    /** The scale as characters: {@code ──◆──┼───}. */
    String drawn() {
      StringBuilder drawn = new StringBuilder("─".repeat(WIDTH));
      drawn.setCharAt(LIMIT, '┼');
      int place = LIMIT + (int) Math.round(at * (at < 0 ? LIMIT : WIDTH - 1 - LIMIT));
      drawn.setCharAt(place, isAtEnd() ? (at < 0 ? '◄' : '►') : '◆');
      return drawn.toString();
    }
  }
}

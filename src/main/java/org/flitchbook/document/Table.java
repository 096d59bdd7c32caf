package org.flitchbook.document;

import java.util.Arrays;
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
    return share(columns, room, least, natural);
  }

  static double[] share(List<Column> columns, double room, double[] least, double[] natural) {
    Shares shares = new Shares(columns, least, natural);
    double wanted = Arrays.stream(natural).sum();
    double needed = Arrays.stream(least).sum();
    if (wanted <= room) {
      return shares.withSlack(room - wanted);
    }
    return needed >= room
        ? Arrays.stream(least).map(width -> width * room / needed).toArray()
        : shares.filled(room);
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

  /** Divides room among columns by weight and content. */
  private static final class Shares {
    /** A column is short up to this part of an equal share of the room. */
    private static final double SHORT = 1.25;

    private final double[] weights;
    private final double[] least;
    private final double[] natural;

    Shares(List<Column> columns, double[] least, double[] natural) {
      this.weights = columns.stream().mapToDouble(Column::weight).toArray();
      this.least = least;
      this.natural = natural;
    }

    private double[] withSlack(double slack) {
      double[] widths = natural.clone();
      double weight = Arrays.stream(weights).sum();
      for (int i = 0; i < widths.length && weight > 0; i++) {
        widths[i] += slack * weights[i] / weight;
      }
      return widths;
    }

    /**
     * Short columns stay whole, such as those of numbers, if that leaves the long ones their
     * longest word; so do columns of no weight.
     */
    private double[] filled(double room) {
      double shortest = SHORT * room / natural.length;
      double[] widths = least.clone();
      Arrays.setAll(widths, i -> weights[i] == 0 || natural[i] <= shortest ? natural[i] : least[i]);
      if (Arrays.stream(widths).sum() > room) {
        widths = least.clone();
      }
      double left = room - Arrays.stream(widths).sum();
      for (int round = 0; round < widths.length && left > room * 1e-9; round++) {
        left -= give(widths, left);
      }
      return widths;
    }

    /** Hands out what is left, no column more than it lacks, and returns what was taken. */
    private double give(double[] widths, double left) {
      double claims = 0;
      for (int i = 0; i < widths.length; i++) {
        claims += claim(i, widths[i]);
      }
      double taken = 0;
      for (int i = 0; i < widths.length && claims > 0; i++) {
        double part = Math.min(natural[i] - widths[i], left * claim(i, widths[i]) / claims);
        widths[i] += part;
        taken += part;
      }
      return taken;
    }

    private double claim(int column, double width) {
      return Math.max(weights[column], 0.25) * Math.max(0, natural[column] - width);
    }
  }
}

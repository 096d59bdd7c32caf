package org.flitchbook.pdf;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.IntFunction;
import org.flitchbook.document.Chart;
import org.flitchbook.document.Table;
import org.flitchbook.document.Text;
import org.flitchbook.document.Tone;

/** The columns of a table: how wide they are, and the text of a row in them. */
final class TableColumns {
  private static final double GAP = 9;

  /** Between a column set to the right and one set to the left, which would else run together. */
  private static final double WIDE_GAP = 17;

  /** No word may claim more of the page than this; a longer one is cut. */
  private static final double LONGEST_WORD = 0.3;

  private final Flow flow;
  private final Table table;
  private final double[] widths;

  TableColumns(Flow flow, Table table) {
    this.flow = flow;
    this.table = table;
    this.widths = measure();
  }

  private double[] measure() {
    int count = table.columns().size();
    double[] least = new double[count];
    double[] natural = new double[count];
    double room = flow.frame.width();
    for (int i = 0; i < count; i++) {
      room -= i < count - 1 ? gap(i) : 0;
      widen(least, natural, i, FontSize.SMALL, heads().get(i));
      for (Table.Row row : table.rows()) {
        widen(least, natural, i, FontSize.BODY, row.cells().get(i));
      }
    }
    double longest = Math.max(room * LONGEST_WORD, room / count);
    Arrays.setAll(least, i -> Math.min(least[i], longest));
    return table.share(room, least, natural);
  }

  private double gap(int column) {
    boolean facing =
        column + 1 < table.columns().size()
            && table.columns().get(column).align() == Table.Align.RIGHT
            && table.columns().get(column + 1).align() == Table.Align.LEFT;
    return facing ? WIDE_GAP : GAP;
  }

  private void widen(double[] least, double[] natural, int column, FontSize size, Table.Cell cell) {
    LineBreaker text = flow.text.of(size, text(cell));
    double whole = cell.scale().isPresent() ? Row.SCALE_WIDTH : text.natural();
    natural[column] = Math.max(natural[column], whole);
    if (whole > least[column]) {
      double word = cell.scale().isPresent() ? Row.SCALE_WIDTH : text.least();
      least[column] = Math.max(least[column], word);
    }
  }

  private List<Table.Cell> heads() {
    return table.columns().stream()
        .map(column -> new Table.Cell(Text.strong(column.head()), Tone.PLAIN))
        .toList();
  }

  /** The row of heads; each belongs to the owner of its number. */
  Row head(IntFunction<Pen.Owner> owners) {
    return row(FontSize.SMALL, heads(), owners);
  }

  /** A row of cells, each of which belongs to the owner of its number. */
  Row row(FontSize size, List<Table.Cell> cells, IntFunction<Pen.Owner> owners) {
    List<Row.Field> fields = new ArrayList<>();
    double x = flow.frame.left();
    for (int i = 0; i < widths.length; i++) {
      Table.Cell cell = cells.get(i);
      Pen.Owner owner = owners.apply(i);
      fields.add(
          cell.scale().isPresent() && owner instanceof Element element
              ? scale(element, x, widths[i], cell)
              : field(owner, x, i, size, cell));
      x += widths[i] + gap(i);
    }
    return new Row(size, fields, true, true);
  }

  private Row.Field field(Pen.Owner owner, double x, int column, FontSize size, Table.Cell cell) {
    // A hundredth of a point more, so that what was measured unbroken is not broken by rounding.
    List<TextLine> lines = flow.text.of(size, text(cell)).balanced(widths[column] + 0.01);
    Table.Align align = table.columns().get(column).align();
    return new Row.Field(owner, x, widths[column], align, cell.tone(), lines, Optional.empty());
  }

  /** The scale alone is drawn; its words are read out in its place. */
  private static Row.Field scale(Element element, double x, double width, Table.Cell cell) {
    return new Row.Field(
        element.child("Figure").alternative(cell.text().plain()),
        x,
        Math.min(width, Row.SCALE_WIDTH),
        Table.Align.LEFT,
        cell.tone(),
        List.of(),
        cell.scale());
  }

  /** The words of a cell, its symbol in front; strong where the reader must stop. */
  private static Text text(Table.Cell cell) {
    if (cell.tone() == Tone.PLAIN) {
      return cell.text();
    }
    boolean loud = cell.tone() == Tone.FAIL || cell.tone() == Tone.DOUBT;
    List<Text.Span> spans = new ArrayList<>();
    spans.add(new Text.Span(cell.tone().symbol() + "\u00a0", Text.Style.STRONG));
    for (Text.Span span : cell.text().spans()) {
      boolean plain = span.style() == Text.Style.PLAIN;
      spans.add(
          loud && plain ? new Text.Span(span.text(), Text.Style.STRONG, span.target()) : span);
    }
    return new Text(spans);
  }

  /**
   * A row of a table, or some lines of one, set and ready to draw.
   *
   * @param begins whether this is the upper end of the row
   * @param ends whether this is its lower end
   */
  record Row(FontSize size, List<Field> fields, boolean begins, boolean ends) {
    /** The width that a column of scales needs, in points. */
    static final double SCALE_WIDTH = 58;

    private static final double PADDING = 2;
    private static final double LIMIT = 0.62;
    private static final double EDGE = 3.4;
    private static final double TICK = 4.4;
    private static final double MARK = 2.9;

    /** A cell at its place. */
    record Field(
        Pen.Owner owner,
        double x,
        double width,
        Table.Align align,
        Tone tone,
        List<TextLine> lines,
        Optional<Table.Scale> scale) {
      private Field part(int from, int to) {
        List<TextLine> some =
            lines.subList(Math.min(from, lines.size()), Math.min(to, lines.size()));
        return new Field(owner, x, width, align, tone, some, from == 0 ? scale : Optional.empty());
      }

      private double x(TextLine line) {
        return switch (align) {
          case LEFT -> x;
          case RIGHT -> x + width - line.width();
          case CENTER -> x + (width - line.width()) / 2;
        };
      }
    }

    int lines() {
      return fields.stream().mapToInt(field -> field.lines().size()).max().orElse(1);
    }

    private double above() {
      return begins ? PADDING : 0;
    }

    double height() {
      return above() + lines() * size.leading + (ends ? PADDING : 0);
    }

    /** The lines of the row from one to before another. */
    Row part(int from, int to) {
      List<Field> parts = fields.stream().map(field -> field.part(from, to)).toList();
      return new Row(size, parts, from == 0, to >= lines());
    }

    void draw(Pen pen, double top) throws IOException {
      for (int i = 0; i < fields.size(); i++) {
        // The tint ends with the rules of the table.
        tint(pen, top, fields.get(i), i == fields.size() - 1 ? 3 : 6);
      }
      for (Field field : fields) {
        double middle = top + above() + size.leading / 2;
        if (field.scale().isPresent() && field.owner() instanceof Element figure) {
          draw(pen, figure, field, field.scale().get(), middle);
        }
        for (int i = 0; i < field.lines().size(); i++) {
          TextLine line = field.lines().get(i);
          double y = top + above() + i * size.leading;
          pen.as(field.owner()).line(field.x(line), y, line);
        }
      }
    }

    private void tint(Pen pen, double top, Field field, double more) throws IOException {
      if (field.tone() == Tone.FAIL || field.tone() == Tone.DOUBT) {
        double y = begins ? top + 0.8 : top;
        double tall = (ends ? top + height() - 0.8 : top + height()) - y;
        Rectangle area = new Rectangle(field.x() - 3, y, field.width() + more, tall);
        pen.decoration().fill(Color.behind(field.tone()), area);
      }
    }

    /**
     * Draws a scale: a line up to the limit's tick, dashes beyond it, and the mark of the value.
     */
    private static void draw(Pen pen, Element figure, Field field, Table.Scale scale, double middle)
        throws IOException {
      double left = field.x() + EDGE;
      double right = field.x() + field.width() - EDGE;
      double foot = pen.fromBottom(middle + TICK);
      figure.box(left - EDGE, foot, right + EDGE, foot + 2 * TICK);
      double limit = left + LIMIT * (right - left);
      pen.as(figure).rule(Color.GREY, 0.7, left, middle, limit, middle);
      pen.stroke(Color.GREY, 0.7, Pen.Dash.BRIDGE, Plot.line(limit, middle, right, middle));
      pen.rule(Color.BLACK, 1.1, limit, middle - TICK, limit, middle + TICK);
      double x = limit + scale.at() * (scale.at() < 0 ? limit - left : right - limit);
      if (scale.isAtEnd()) {
        double way = Math.signum(scale.at());
        double back = x - way * 2 * MARK;
        double tip = x + way * EDGE;
        pen.fill(Color.BLACK, Plot.line(tip, middle, back, middle - MARK, back, middle + MARK));
      } else {
        ChartKey.draw(pen, Chart.Shape.DIAMOND, x, middle);
      }
    }
  }
}

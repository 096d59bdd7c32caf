package org.flitchbook.pdf;

import java.io.IOException;
import java.util.List;
import java.util.Optional;
import org.flitchbook.document.Chart;
import org.flitchbook.document.Table;
import org.flitchbook.document.Tone;

/**
 * A row of a table, or some lines of one, set and ready to draw.
 *
 * @param begins whether this is the upper end of the row
 * @param ends whether this is its lower end
 */
record TableRow(FontSize size, List<Field> fields, boolean begins, boolean ends) {
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
      List<TextLine> some = lines.subList(Math.min(from, lines.size()), Math.min(to, lines.size()));
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
  TableRow part(int from, int to) {
    List<Field> parts = fields.stream().map(field -> field.part(from, to)).toList();
    return new TableRow(size, parts, from == 0, to >= lines());
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

  /** Draws a scale: a line up to the limit's tick, dashes beyond it, and the mark of the value. */
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
      ChartSymbols.draw(pen, Chart.Shape.DIAMOND, x, middle);
    }
  }
}

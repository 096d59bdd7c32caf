package org.flitchbook.pdf;

import java.io.IOException;
import java.util.List;
import java.util.Optional;
import org.flitchbook.document.Table;
import org.flitchbook.document.Tone;

/**
 * A row of a table, or some lines of one, set and ready to draw.
 *
 * @param begins whether this is the upper end of the row
 * @param ends whether this is its lower end
 */
record TableRow(Type type, List<Field> fields, boolean begins, boolean ends) {
  private static final double PADDING = 2;

  TableRow(Type type, List<Field> fields) {
    this(type, fields, true, true);
  }

  /** A cell at its place. */
  record Field(
      Owner owner,
      double x,
      double width,
      Table.Align align,
      Tone tone,
      List<Line> lines,
      Optional<Table.Scale> scale) {
    private Field part(int from, int to) {
      List<Line> some = lines.subList(Math.min(from, lines.size()), Math.min(to, lines.size()));
      return new Field(owner, x, width, align, tone, some, from == 0 ? scale : Optional.empty());
    }

    private double x(Line line) {
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
    return above() + lines() * type.leading + (ends ? PADDING : 0);
  }

  /** The lines of the row from one to before another. */
  TableRow part(int from, int to) {
    List<Field> parts = fields.stream().map(field -> field.part(from, to)).toList();
    return new TableRow(type, parts, from == 0, to >= lines());
  }

  void draw(Pen pen, double top) throws IOException {
    for (int i = 0; i < fields.size(); i++) {
      // The tint ends with the rules of the table.
      tint(pen, top, fields.get(i), i == fields.size() - 1 ? 3 : 6);
    }
    for (Field field : fields) {
      double middle = top + above() + type.leading / 2;
      if (field.scale().isPresent() && field.owner() instanceof Element figure) {
        new ScaleDrawing(pen, figure, field.x(), field.width(), middle).draw(field.scale().get());
      }
      for (int i = 0; i < field.lines().size(); i++) {
        Line line = field.lines().get(i);
        double y = top + above() + i * type.leading;
        pen.line(field.owner(), type, field.x(line), y, line);
      }
    }
  }

  private void tint(Pen pen, double top, Field field, double more) throws IOException {
    if (field.tone() == Tone.FAIL || field.tone() == Tone.DOUBT) {
      Ink tint = Tints.of(field.tone());
      double y = begins ? top + 0.8 : top;
      double tall = (ends ? top + height() - 0.8 : top + height()) - y;
      pen.fill(Artifact.DECORATION, tint, field.x() - 3, y, field.width() + more, tall);
    }
  }
}

package org.flitchbook.pdf;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.flitchbook.document.Document;
import org.flitchbook.document.Text;

/** Sets a code at the right edge of the first page, and the lines that say the same at its left. */
final class CodeSetter {

  /** 0.42 millimetres: a scan of 150 dots an inch has more than two of them a module. */
  private static final double MODULE = 1.2;

  private static final double GAP = 7;
  private static final double BEFORE = 14;

  /** What it may take of the room before the next block: four modules stay clear around it. */
  private static final double BELOW = 6;

  private final Flow flow;
  private final Rectangle frame;
  private final Document.Code code;
  private final List<TextLine> lines = new ArrayList<>();

  CodeSetter(Flow flow, Document.Code code) {
    this.flow = flow;
    this.frame = flow.frame;
    this.code = code;
    for (String line : code.lines()) {
      Text.Style style = lines.isEmpty() ? Text.Style.MUTED : Text.Style.PLAIN;
      lines.addAll(flow.text.lines(FontSize.SMALL, style, line, frame.width() / 3));
    }
  }

  private double side() {
    return code.rows().size() * MODULE;
  }

  private double height() {
    return Math.max(side(), TextLine.height(lines));
  }

  /** The room that it takes from the title. */
  double width() {
    double widest = lines.stream().mapToDouble(TextLine::width).max().orElse(0);
    return BEFORE + widest + GAP + side();
  }

  /** Sets it beside a title of that height, which stands already. */
  void set(double title) throws IOException {
    Element words = flow.root.child("P");
    Element figure = flow.root.child("Figure").alternative(code.alternative());
    Pen.Drawing drawing =
        (pen, below) -> {
          double top = below - title;
          double left = frame.right() - side();
          pen.as(words).linesUpTo(left - GAP, top, lines);
          double foot = pen.fromBottom(top + side());
          figure.box(left, foot, frame.right(), foot + side());
          pen.as(figure).fill(Color.BLACK, modules(left, top));
        };
    flow.add(0, Math.max(0, height() - title - BELOW), true, drawing);
  }

  /** The dark modules, those beside each other in one piece. */
  private List<Rectangle> modules(double left, double top) {
    List<Rectangle> dark = new ArrayList<>();
    for (int y = 0; y < code.rows().size(); y++) {
      String row = code.rows().get(y);
      for (int from = row.indexOf('#'); from >= 0; ) {
        int light = row.indexOf('.', from);
        int to = light < 0 ? row.length() : light;
        double x = left + from * MODULE;
        dark.add(new Rectangle(x, top + y * MODULE, (to - from) * MODULE, MODULE));
        from = row.indexOf('#', to);
      }
    }
    return dark;
  }
}

package org.flitchbook.pdf;

import java.io.IOException;
import java.util.List;
import java.util.function.Function;
import org.flitchbook.document.Sum;
import org.flitchbook.document.Text;

/**
 * Sets a sum as it is written by hand: the equal signs under each other, a line drawn above the
 * last result.
 */
final class SumSetter {
  private static final double GAP = 14;
  private static final double EQUALS = 16;
  private static final double LABEL_SHARE = 0.34;
  private static final double RESULT_SHARE = 0.3;

  private final Press press;
  private final Sum sum;
  private final double label;
  private final double expression;
  private final double result;

  SumSetter(Press press, Sum sum) {
    this.press = press;
    this.sum = sum;
    double width = press.frame().width();
    this.label = Math.min(widest(Sum.Line::label, Text.Style.PLAIN), width * LABEL_SHARE);
    this.result = Math.min(widest(Sum.Line::result, Text.Style.STRONG), width * RESULT_SHARE);
    double room = width - label - GAP - EQUALS - result;
    this.expression = Math.min(widest(Sum.Line::expression, Text.Style.PLAIN), room);
  }

  private double widest(Function<Sum.Line, String> part, Text.Style style) {
    return sum.lines().stream()
        .mapToDouble(line -> press.setting().width(Type.BODY, style, part.apply(line)))
        .max()
        .orElse(0);
  }

  void set() throws IOException {
    Element list = press.root().child("L");
    int last = sum.lines().size() - 1;
    for (int i = 0; i <= last; i++) {
      boolean total = i == last && last > 0;
      add(list.child("LI"), sum.lines().get(i), i == 0 ? 9 : 0, i < last, total);
    }
  }

  private void add(Element item, Sum.Line line, double before, boolean sticks, boolean total)
      throws IOException {
    Setting setting = press.setting();
    Text.Style style = total ? Text.Style.STRONG : Text.Style.PLAIN;
    List<Line> labels = setting.lines(Type.BODY, Text.Style.PLAIN, line.label(), label);
    List<Line> expressions =
        setting.lines(Type.BODY, Text.Style.PLAIN, line.expression(), expression);
    List<Line> results = setting.lines(Type.BODY, style, line.result(), result);
    int tall = Math.max(labels.size(), Math.max(expressions.size(), results.size()));
    double above = total ? 4 : 0;
    Element name = item.child("Lbl");
    Element body = item.child("LBody");
    Drawing drawing =
        (pen, top) -> {
          double y = top + above;
          rule(pen, total, top);
          left(pen, name, press.frame().left(), y, labels);
          double last = y + (expressions.size() - 1) * Type.BODY.leading;
          right(pen, body, signX() - 4, y, expressions);
          equals(pen, body, line, last);
          left(pen, body, signX() + EQUALS - 4, last, results);
        };
    press.flow().add(Strip.of(before, above + tall * Type.BODY.leading + 1.5, sticks, drawing));
  }

  private double signX() {
    return press.frame().left() + label + GAP + expression + 4;
  }

  private void rule(Pen pen, boolean total, double top) throws IOException {
    if (total) {
      double right = signX() + EQUALS - 4 + result;
      pen.hairline(Artifact.DECORATION, Ink.BLACK, press.frame().left(), top + 2, right, top + 2);
    }
  }

  private void equals(Pen pen, Element body, Sum.Line line, double top) throws IOException {
    if (!line.expression().isBlank()) {
      pen.line(
          body,
          Type.BODY,
          signX(),
          top,
          press.setting().lines(Type.BODY, Text.Style.PLAIN, "= ", EQUALS).get(0));
    }
  }

  private static void left(Pen pen, Element of, double x, double top, List<Line> lines)
      throws IOException {
    for (int i = 0; i < lines.size(); i++) {
      pen.line(of, Type.BODY, x, top + i * Type.BODY.leading, lines.get(i));
    }
  }

  private static void right(Pen pen, Element of, double x, double top, List<Line> lines)
      throws IOException {
    for (int i = 0; i < lines.size(); i++) {
      double begin = x - lines.get(i).width();
      pen.line(of, Type.BODY, begin, top + i * Type.BODY.leading, lines.get(i));
    }
  }
}

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

  private final LayoutContext context;
  private final Sum sum;
  private final double label;
  private final double expression;
  private final double result;

  SumSetter(LayoutContext context, Sum sum) {
    this.context = context;
    this.sum = sum;
    double width = context.frame().width();
    this.label = Math.min(widest(Sum.Line::label, Text.Style.PLAIN), width * LABEL_SHARE);
    this.result = Math.min(widest(Sum.Line::result, Text.Style.STRONG), width * RESULT_SHARE);
    double room = width - label - GAP - EQUALS - result;
    this.expression = Math.min(widest(Sum.Line::expression, Text.Style.PLAIN), room);
  }

  private double widest(Function<Sum.Line, String> part, Text.Style style) {
    return sum.lines().stream()
        .mapToDouble(line -> context.text().width(FontSize.BODY, style, part.apply(line)))
        .max()
        .orElse(0);
  }

  void set() throws IOException {
    Element list = context.root().child("L");
    int last = sum.lines().size() - 1;
    for (int i = 0; i <= last; i++) {
      boolean total = i == last && last > 0;
      add(list.child("LI"), sum.lines().get(i), i == 0 ? 9 : 0, i < last, total);
    }
  }

  private void add(Element item, Sum.Line line, double before, boolean sticks, boolean total)
      throws IOException {
    TextLayout text = context.text();
    Text.Style style = total ? Text.Style.STRONG : Text.Style.PLAIN;
    List<TextLine> labels = text.lines(FontSize.BODY, Text.Style.PLAIN, line.label(), label);
    List<TextLine> expressions =
        text.lines(FontSize.BODY, Text.Style.PLAIN, line.expression(), expression);
    List<TextLine> results = text.lines(FontSize.BODY, style, line.result(), result);
    int tall = Math.max(labels.size(), Math.max(expressions.size(), results.size()));
    double above = total ? 4 : 0;
    Element name = item.child("Lbl");
    Element body = item.child("LBody");
    Pen.Drawing drawing =
        (pen, top) -> {
          double y = top + above;
          rule(pen, total, top);
          pen.lines(name, FontSize.BODY, context.frame().left(), y, labels);
          double last = y + (expressions.size() - 1) * FontSize.BODY.leading;
          pen.linesUpTo(body, FontSize.BODY, signX() - 4, y, expressions);
          equals(pen, body, line, last);
          pen.lines(body, FontSize.BODY, signX() + EQUALS - 4, last, results);
        };
    context
        .flow()
        .add(Flow.Strip.of(before, above + tall * FontSize.BODY.leading + 1.5, sticks, drawing));
  }

  private double signX() {
    return context.frame().left() + label + GAP + expression + 4;
  }

  private void rule(Pen pen, boolean total, double top) throws IOException {
    if (total) {
      double right = signX() + EQUALS - 4 + result;
      pen.hairline(
          Owner.Artifact.DECORATION, Color.BLACK, context.frame().left(), top + 2, right, top + 2);
    }
  }

  private void equals(Pen pen, Element body, Sum.Line line, double top) throws IOException {
    if (!line.expression().isBlank()) {
      pen.line(
          body,
          FontSize.BODY,
          signX(),
          top,
          context.text().lines(FontSize.BODY, Text.Style.PLAIN, "= ", EQUALS).get(0));
    }
  }
}

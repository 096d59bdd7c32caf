package org.flitchbook.pdf;

import java.io.IOException;
import java.util.Collections;
import java.util.List;
import java.util.function.Function;
import org.flitchbook.document.Block.Sum;
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

  private final Flow flow;
  private final Sum sum;
  private final double label;
  private final double expression;
  private final double result;

  SumSetter(Flow flow, Sum sum) {
    this.flow = flow;
    this.sum = sum;
    double width = flow.frame.width();
    this.label = Math.min(widest(Sum.Line::label, Text.Style.PLAIN), width * LABEL_SHARE);
    this.result = Math.min(widest(Sum.Line::result, Text.Style.STRONG), width * RESULT_SHARE);
    double room = width - label - GAP - EQUALS - result;
    this.expression = Math.min(widest(Sum.Line::expression, Text.Style.PLAIN), room);
  }

  private double widest(Function<Sum.Line, String> part, Text.Style style) {
    return flow.text.widest(FontSize.BODY, style, sum.lines().stream().map(part));
  }

  void set() throws IOException {
    Element list = flow.root.child("L");
    int last = sum.lines().size() - 1;
    for (int i = 0; i <= last; i++) {
      boolean total = i == last && last > 0;
      add(list.child("LI"), sum.lines().get(i), i == 0 ? 9 : 0, i < last, total);
    }
  }

  private List<TextLine> lines(Text.Style style, String words, double width) {
    return flow.text.lines(FontSize.BODY, style, words, width);
  }

  private void add(Element item, Sum.Line line, double before, boolean sticks, boolean total)
      throws IOException {
    List<TextLine> labels = lines(Text.Style.PLAIN, line.label(), label);
    List<TextLine> expressions = lines(Text.Style.PLAIN, line.expression(), expression);
    List<TextLine> results =
        lines(total ? Text.Style.STRONG : Text.Style.PLAIN, line.result(), result);
    String sign = line.expression().isBlank() ? "" : "= ";
    List<Integer> tall = List.of(labels.size(), expressions.size(), results.size());
    double above = total ? 4 : 0;
    double left = flow.frame.left();
    double signX = left + label + GAP + expression + 4;
    Element name = item.child("Lbl");
    Element body = item.child("LBody");
    Pen.Drawing drawing =
        (pen, top) -> {
          if (total) {
            double right = signX + EQUALS - 4 + result;
            pen.decoration().hairline(Color.BLACK, left, top + 2, right, top + 2);
          }
          double y = top + above;
          pen.as(name).lines(left, y, labels);
          double last = y + (expressions.size() - 1) * FontSize.BODY.leading;
          pen.as(body).linesUpTo(signX - 4, y, expressions);
          pen.lines(signX, last, lines(Text.Style.PLAIN, sign, EQUALS));
          pen.lines(signX + EQUALS - 4, last, results);
        };
    double height = above + Collections.max(tall) * FontSize.BODY.leading + 1.5;
    flow.add(before, height, sticks, drawing);
  }
}

package org.flitchbook.pdf;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.flitchbook.document.Facts;
import org.flitchbook.document.Text;

/** Sets facts in a grid: the label beside its value, or above it where three share a row. */
final class FactsSetter {
  private static final double GAP = 18;
  private static final double BETWEEN = 8;
  private static final double PADDING = 2;
  private static final double LABEL_SHARE = 0.42;

  private final LayoutContext context;
  private final Facts facts;
  private final boolean stacked;
  private final double column;
  private final double label;

  FactsSetter(LayoutContext context, Facts facts) {
    this.context = context;
    this.facts = facts;
    this.stacked = facts.columns() == 3;
    this.column = (context.frame().width() - GAP * (facts.columns() - 1)) / facts.columns();
    this.label = stacked ? column : Math.min(widestLabel(), column * LABEL_SHARE);
  }

  private double widestLabel() {
    return facts.facts().stream()
        .mapToDouble(fact -> context.text().width(FontSize.BODY, Text.Style.MUTED, fact.label()))
        .max()
        .orElse(0);
  }

  void set() throws IOException {
    Element list = context.root().child("L");
    int each = facts.columns();
    int count = facts.facts().size();
    for (int from = 0; from < count; from += each) {
      List<Placed> row = new ArrayList<>();
      for (Facts.Fact fact : facts.facts().subList(from, Math.min(count, from + each))) {
        row.add(place(fact, list.child("LI"), row.size()));
      }
      double height = row.stream().mapToDouble(Placed::height).max().orElse(0) + PADDING;
      boolean sticks = from == 0 ? count > each : from + 2 * each >= count && from + each < count;
      context
          .flow()
          .add(
              Flow.Strip.of(from == 0 ? 10 : 0, height, sticks, (pen, top) -> draw(pen, top, row)));
    }
  }

  private static void draw(Pen pen, double top, List<Placed> row) throws IOException {
    for (Placed placed : row) {
      placed.draw(pen, top);
    }
  }

  private Placed place(Facts.Fact fact, Element item, int index) {
    double x = context.frame().left() + index * (column + GAP);
    FontSize size = stacked ? FontSize.SMALL : FontSize.BODY;
    List<TextLine> labels = context.text().lines(size, Text.Style.MUTED, fact.label(), label);
    double valueX = stacked ? x : x + label + BETWEEN;
    double valueTop = stacked ? labels.size() * FontSize.SMALL.leading : 0;
    List<TextLine> values =
        context.text().balanced(FontSize.BODY, fact.value(), x + column - valueX);
    return new Placed(
        new Part(item.child("Lbl"), size, x, 0, labels),
        new Part(item.child("LBody"), FontSize.BODY, valueX, valueTop, values),
        stacked ? 3 : 0);
  }

  private record Part(Element element, FontSize size, double x, double down, List<TextLine> lines) {
    double bottom() {
      return down + lines.size() * size.leading;
    }

    void draw(Pen pen, double top) throws IOException {
      pen.lines(element, size, x, top + down, lines);
    }
  }

  private record Placed(Part label, Part value, double padding) {
    double height() {
      return Math.max(label.bottom(), value.bottom()) + padding;
    }

    void draw(Pen pen, double top) throws IOException {
      label.draw(pen, top);
      value.draw(pen, top);
    }
  }
}

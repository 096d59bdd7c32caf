package org.flitchbook.pdf;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.flitchbook.document.Block.Facts;
import org.flitchbook.document.Text;

/** Sets facts in a grid: the label beside its value, or above it where three share a row. */
final class FactsSetter {
  private static final double GAP = 18;
  private static final double BETWEEN = 8;
  private static final double PADDING = 2;
  private static final double LABEL_SHARE = 0.42;

  private final Flow flow;
  private final Facts facts;
  private final boolean stacked;
  private final double column;
  private final double label;

  FactsSetter(Flow flow, Facts facts) {
    this.flow = flow;
    this.facts = facts;
    this.stacked = facts.columns() == 3;
    this.column = (flow.frame.width() - GAP * (facts.columns() - 1)) / facts.columns();
    Stream<String> labels = facts.facts().stream().map(Facts.Fact::label);
    double widest = flow.text.widest(FontSize.BODY, Text.Style.MUTED, labels);
    this.label = stacked ? column : Math.min(widest, column * LABEL_SHARE);
  }

  void set() throws IOException {
    Element list = flow.root.child("L");
    int each = facts.columns();
    int count = facts.facts().size();
    for (int from = 0; from < count; from += each) {
      List<Part> row = new ArrayList<>();
      double x = flow.frame.left();
      for (Facts.Fact fact : facts.facts().subList(from, Math.min(count, from + each))) {
        add(row, fact, list.child("LI"), x);
        x += column + GAP;
      }
      double height = row.stream().mapToDouble(Part::bottom).max().orElse(0);
      boolean sticks = from == 0 ? count > each : from + 2 * each >= count && from + each < count;
      double padding = stacked ? PADDING + 3 : PADDING;
      flow.add(from == 0 ? 10 : 0, height + padding, sticks, (pen, top) -> draw(pen, top, row));
    }
  }

  private void add(List<Part> row, Facts.Fact fact, Element item, double x) {
    FontSize size = stacked ? FontSize.SMALL : FontSize.BODY;
    List<TextLine> labels = flow.text.lines(size, Text.Style.MUTED, fact.label(), label);
    double valueX = stacked ? x : x + label + BETWEEN;
    double down = stacked ? TextLine.height(labels) : 0;
    LineBreaker value = flow.text.of(FontSize.BODY, fact.value());
    row.add(new Part(item.child("Lbl"), x, 0, labels));
    row.add(new Part(item.child("LBody"), valueX, down, value.balanced(x + column - valueX)));
  }

  private static void draw(Pen pen, double top, List<Part> row) throws IOException {
    for (Part part : row) {
      pen.as(part.element).lines(part.x, top + part.down, part.lines);
    }
  }

  private record Part(Element element, double x, double down, List<TextLine> lines) {
    double bottom() {
      return down + TextLine.height(lines);
    }
  }
}

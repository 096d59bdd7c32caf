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

  private final Press press;
  private final Facts facts;
  private final boolean stacked;
  private final double column;
  private final double label;

  FactsSetter(Press press, Facts facts) {
    this.press = press;
    this.facts = facts;
    this.stacked = facts.columns() == 3;
    this.column = (press.frame().width() - GAP * (facts.columns() - 1)) / facts.columns();
    this.label = stacked ? column : Math.min(widestLabel(), column * LABEL_SHARE);
  }

  private double widestLabel() {
    return facts.facts().stream()
        .mapToDouble(fact -> press.setting().width(Type.BODY, Text.Style.MUTED, fact.label()))
        .max()
        .orElse(0);
  }

  void set() throws IOException {
    Element list = press.root().child("L");
    int each = facts.columns();
    int size = facts.facts().size();
    for (int from = 0; from < size; from += each) {
      List<Placed> row = new ArrayList<>();
      for (Facts.Fact fact : facts.facts().subList(from, Math.min(size, from + each))) {
        row.add(place(fact, list.child("LI"), row.size()));
      }
      double height = row.stream().mapToDouble(Placed::height).max().orElse(0) + PADDING;
      boolean sticks = from == 0 ? size > each : from + 2 * each >= size && from + each < size;
      press
          .flow()
          .add(Strip.of(from == 0 ? 10 : 0, height, sticks, (pen, top) -> draw(pen, top, row)));
    }
  }

  private static void draw(Pen pen, double top, List<Placed> row) throws IOException {
    for (Placed placed : row) {
      placed.draw(pen, top);
    }
  }

  private Placed place(Facts.Fact fact, Element item, int index) {
    double x = press.frame().left() + index * (column + GAP);
    Type type = stacked ? Type.SMALL : Type.BODY;
    List<Line> labels = press.setting().lines(type, Text.Style.MUTED, fact.label(), label);
    double valueX = stacked ? x : x + label + BETWEEN;
    double valueTop = stacked ? labels.size() * Type.SMALL.leading : 0;
    List<Line> values = press.setting().balanced(Type.BODY, fact.value(), x + column - valueX);
    return new Placed(
        new Block(item.child("Lbl"), type, x, 0, labels),
        new Block(item.child("LBody"), Type.BODY, valueX, valueTop, values),
        stacked ? 3 : 0);
  }

  private record Block(Element element, Type type, double x, double down, List<Line> lines) {
    double bottom() {
      return down + lines.size() * type.leading;
    }

    void draw(Pen pen, double top) throws IOException {
      for (int i = 0; i < lines.size(); i++) {
        pen.line(element, type, x, top + down + i * type.leading, lines.get(i));
      }
    }
  }

  private record Placed(Block label, Block value, double padding) {
    double height() {
      return Math.max(label.bottom(), value.bottom()) + padding;
    }

    void draw(Pen pen, double top) throws IOException {
      label.draw(pen, top);
      value.draw(pen, top);
    }
  }
}

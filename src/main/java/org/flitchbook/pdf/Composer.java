package org.flitchbook.pdf;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Stream;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.flitchbook.document.Block;
import org.flitchbook.document.Block.Facts;
import org.flitchbook.document.Block.Signatures;
import org.flitchbook.document.Block.Sum;
import org.flitchbook.document.Chart;
import org.flitchbook.document.Document;
import org.flitchbook.document.Table;
import org.flitchbook.document.Text;

/** Hands each block to the setter that knows how it looks. */
final class Composer {
  private static final Set<Class<? extends Block>> BETWEEN =
      Set.of(Block.Note.class, Facts.class, Block.Caution.class);

  private final Document document;
  private final Flow flow;
  private final TextSetter words;

  Composer(PDDocument file, Document document, Archive archive) throws IOException {
    this.document = document;
    this.flow = new Flow(file, archive, document);
    this.words = new TextSetter(flow);
  }

  void compose() throws IOException {
    words.title(document.title(), document.subject(), document.code().map(this::beside));
    List<Block> blocks = document.blocks();
    for (int i = 0; i < blocks.size(); i++) {
      set(blocks.get(i), leadsToBoxes(blocks.subList(i + 1, blocks.size())));
    }
    flow.finish();
  }

  private CodeSetter beside(Document.Code code) {
    return new CodeSetter(flow, code);
  }

  /** Boxes to sign never stand alone: with them go the words above, and rows of a table. */
  private static boolean leadsToBoxes(List<Block> next) {
    return next.stream()
        .filter(block -> !BETWEEN.contains(block.getClass()))
        .findFirst()
        .filter(Signatures.class::isInstance)
        .isPresent();
  }

  private void set(Block block, boolean leads) throws IOException {
    if (block instanceof Table table) {
      new TableSetter(flow, table, leads).set();
      return;
    }
    flow.hold(leads);
    if (block instanceof Block.Heading heading) {
      words.set(heading);
    } else if (block instanceof Block.Paragraph paragraph) {
      words.set(paragraph);
    } else if (block instanceof Block.Note note) {
      words.set(note);
    } else if (block instanceof Block.Banner banner) {
      words.set(banner);
    } else if (block instanceof Block.Caution caution) {
      words.set(caution);
    } else if (block instanceof Block.PageBreak) {
      flow.breakPage();
    } else {
      setGrid(block);
    }
  }

  private void setGrid(Block block) throws IOException {
    if (block instanceof Facts facts) {
      new FactsSetter(flow, facts).set();
    } else if (block instanceof Sum sum) {
      new SumSetter(flow, sum).set();
    } else if (block instanceof Chart chart) {
      ChartSetter.set(flow, chart);
    } else if (block instanceof Block.Blank blank) {
      new HandwritingSetter(flow).set(blank);
    } else if (block instanceof Signatures signatures) {
      new HandwritingSetter(flow).set(signatures);
    } else {
      throw new IllegalArgumentException("no setter for " + block.getClass());
    }
  }

  /** Sets facts in a grid: the label beside its value, or above it where three share a row. */
  private static final class FactsSetter {
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

  /**
   * Sets a sum as it is written by hand: the equal signs under each other, a line drawn above the
   * last result.
   */
  private static final class SumSetter {
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
}

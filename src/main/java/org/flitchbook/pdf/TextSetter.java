package org.flitchbook.pdf;

import java.io.IOException;
import java.util.List;
import java.util.Optional;
import org.flitchbook.document.Block;
import org.flitchbook.document.Text;
import org.flitchbook.document.Tone;

/** Sets titles, headings, paragraphs and notes, and what stands in a frame. */
final class TextSetter {
  /** Lines across the whole page would be too long to read. */
  private static final double MEASURE = 0.84;

  /** Width of the field in which the symbol of a verdict stands. */
  private static final double SYMBOL = 38;

  private static final double INDENT = 20;
  private static final Pen.Drawing NOTHING = (pen, top) -> {};

  private final Flow flow;
  private final Rectangle frame;
  private int depth = 1;

  TextSetter(Flow flow) {
    this.flow = flow;
    this.frame = flow.frame;
  }

  /** The title, and what it is about; a code stands at the right of both. */
  void title(String title, String subject, Optional<CodeSetter> code) throws IOException {
    double measure = frame.width() - code.map(CodeSetter::width).orElse(0.0);
    List<TextLine> lines = lines(FontSize.LARGE, Text.Style.STRONG, title, measure);
    List<TextLine> under = lines(FontSize.BODY, Text.Style.MUTED, subject, measure);
    double height = TextLine.height(lines) + (under.isEmpty() ? 0 : 1 + TextLine.height(under));
    add(flow.root.child("H1"), lines, 0, true, (pen, top) -> pen.heading(0, title, top));
    if (!under.isEmpty()) {
      add(flow.root.child("P"), under, 1, true, NOTHING);
    }
    if (code.isPresent()) {
      code.get().set(height);
    }
  }

  private List<TextLine> lines(FontSize size, Text.Style style, String words) {
    return lines(size, style, words, frame.width());
  }

  private List<TextLine> lines(FontSize size, Text.Style style, String words, double measure) {
    return words.isBlank() ? List.of() : flow.text.lines(size, style, words, measure);
  }

  void set(Block.Heading heading) throws IOException {
    // The title is the first level, and a tagged file must not skip one.
    depth = Math.min(heading.level() + 1, depth + 1);
    int index = heading.level() - 1;
    FontSize size = List.of(FontSize.LARGE, FontSize.HEAD, FontSize.BODY).get(index);
    Text.Style style = heading.level() == 1 ? Text.Style.PLAIN : Text.Style.STRONG;
    List<TextLine> lines = lines(size, style, heading.text());
    Pen.Drawing noting = (pen, top) -> pen.heading(heading.level(), heading.text(), top);
    add(flow.root.child("H" + depth), lines, List.of(24, 17, 12).get(index), true, noting);
  }

  void set(Block.Paragraph paragraph) throws IOException {
    LineBreaker text = flow.text.of(FontSize.BODY, paragraph.text());
    add(flow.root.child("P"), text.lines(frame.width() * MEASURE), 6, false, NOTHING);
  }

  void set(Block.Note note) throws IOException {
    LineBreaker text = flow.text.of(FontSize.SMALL, note.text());
    add(flow.root.child("P"), text.lines(frame.width()), 4, false, NOTHING);
  }

  /** A caption above a table or a chart; it stays with what follows. */
  static void caption(Flow flow, Element element, String caption) throws IOException {
    TextSetter setter = new TextSetter(flow);
    List<TextLine> lines = setter.lines(FontSize.BODY, Text.Style.PLAIN, caption);
    setter.add(element, lines, 13, true, NOTHING);
  }

  /** No first or last line of several stands alone on a page. */
  private void add(
      Element element, List<TextLine> lines, double before, boolean sticks, Pen.Drawing beforeFirst)
      throws IOException {
    int last = lines.size() - 1;
    for (int i = 0; i <= last; i++) {
      TextLine line = lines.get(i);
      Pen.Drawing first = i == 0 ? beforeFirst : NOTHING;
      boolean held = i == last ? sticks : sticks || i == 0 || i == last - 1;
      Pen.Drawing drawing =
          (pen, top) -> {
            first.draw(pen, top);
            pen.as(element).line(frame.left(), top, line);
          };
      flow.add(i == 0 ? before : 0, line.size().leading, held, drawing);
    }
  }

  void set(Block.Caution caution) throws IOException {
    FontSize size = FontSize.SMALL;
    double measure = frame.width() - INDENT - 8;
    List<TextLine> lines = flow.text.lines(size, Text.Style.PLAIN, caution.text(), measure);
    TextLine mark = flow.text.line(size, Text.Style.STRONG, "⚠");
    Element element = flow.root.child("P");
    double height = TextLine.height(lines) + 9;
    Pen.Drawing drawing =
        (pen, top) -> {
          pen.decoration().frame(Color.GREY, 0.5, field(top, frame.width(), height));
          pen.line(frame.left() + 7, top + 4.5, mark);
          pen.as(element).lines(frame.left() + INDENT, top + 4.5, lines);
        };
    flow.add(9, height, false, drawing);
  }

  private Rectangle field(double top, double width, double height) {
    return new Rectangle(frame.left(), top, width, height);
  }

  void set(Block.Banner banner) throws IOException {
    double measure = frame.width() - SYMBOL - 24;
    List<TextLine> words =
        flow.text.lines(FontSize.LARGE, Text.Style.STRONG, banner.words(), measure);
    List<TextLine> sentence =
        flow.text.lines(FontSize.BODY, Text.Style.PLAIN, banner.sentence(), measure);
    double down = 6.5 + TextLine.height(words);
    double height = down + TextLine.height(sentence) + 6.5;
    Element big = flow.root.child("P");
    Element small = flow.root.child("P");
    Pen.Drawing drawing =
        (pen, top) -> {
          symbol(pen, big, banner.tone(), top, height);
          double x = frame.left() + SYMBOL + 12;
          pen.lines(x, top + 6.5, words);
          pen.as(small).lines(x, top + down, sentence);
        };
    flow.add(11, height, false, drawing);
  }

  /**
   * The symbol in its field: white on black where the answer is no, so that grey paper shows it.
   */
  private void symbol(Pen pen, Element element, Tone tone, double top, double height)
      throws IOException {
    boolean loud = tone == Tone.FAIL || tone == Tone.DOUBT;
    pen.decoration().fill(Color.behind(tone), field(top, frame.width(), height));
    if (loud) {
      pen.fill(Color.BLACK, field(top, SYMBOL, height));
    }
    pen.frame(Color.BLACK, 0.7, field(top, frame.width(), height));
    double width = flow.text.width(FontSize.SIGN, Text.Style.STRONG, tone.symbol());
    double x = frame.left() + (SYMBOL - width) / 2;
    double middle = top + (height - FontSize.SIGN.leading) / 2;
    Color ink = loud ? Color.WHITE : Color.BLACK;
    pen.as(element).text(FontSize.SIGN, Text.Style.STRONG, ink, x, middle, tone.symbol() + " ");
  }
}

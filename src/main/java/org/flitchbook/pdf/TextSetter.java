package org.flitchbook.pdf;

import java.io.IOException;
import java.util.List;
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

  private final LayoutContext context;
  private final Rectangle frame;
  private int depth = 1;

  TextSetter(LayoutContext context) {
    this.context = context;
    this.frame = context.frame();
  }

  void title(String title, String subject) throws IOException {
    List<TextLine> lines = lines(FontSize.LARGE, Text.Style.STRONG, title);
    add(context.root().child("H1"), FontSize.LARGE, lines, 0, true, noting(0, title));
    if (!subject.isBlank()) {
      List<TextLine> under = lines(FontSize.BODY, Text.Style.MUTED, subject);
      add(context.root().child("P"), FontSize.BODY, under, 1, true, NOTHING);
    }
  }

  private List<TextLine> lines(FontSize size, Text.Style style, String words) {
    return context.text().lines(size, style, words, frame.width());
  }

  void set(Block.Heading heading) throws IOException {
    // The title is the first level, and a tagged file must not skip one.
    depth = Math.min(heading.level() + 1, depth + 1);
    Element element = context.root().child("H" + depth);
    FontSize size =
        switch (heading.level()) {
          case 1 -> FontSize.LARGE;
          case 2 -> FontSize.HEAD;
          default -> FontSize.BODY;
        };
    Text.Style style = heading.level() == 1 ? Text.Style.PLAIN : Text.Style.STRONG;
    double before = heading.level() == 1 ? 24 : heading.level() == 2 ? 17 : 12;
    List<TextLine> lines = lines(size, style, heading.text());
    add(element, size, lines, before, true, noting(heading.level(), heading.text()));
  }

  private Pen.Drawing noting(int level, String heading) {
    return (pen, top) ->
        context.destinations().add(level, heading, pen.page().page, pen.fromBottom(top));
  }

  void set(Block.Paragraph paragraph) throws IOException {
    double measure = frame.width() * MEASURE;
    List<TextLine> lines = context.text().lines(FontSize.BODY, paragraph.text(), measure);
    add(context.root().child("P"), FontSize.BODY, lines, 6, false, NOTHING);
  }

  void set(Block.Note note) throws IOException {
    List<TextLine> lines = context.text().lines(FontSize.SMALL, note.text(), frame.width());
    add(context.root().child("P"), FontSize.SMALL, lines, 4, false, NOTHING);
  }

  /** A caption above a table or a chart; it stays with what follows. */
  static void caption(LayoutContext context, Element element, String caption) throws IOException {
    TextSetter setter = new TextSetter(context);
    List<TextLine> lines = setter.lines(FontSize.BODY, Text.Style.PLAIN, caption);
    setter.add(element, FontSize.BODY, lines, 13, true, NOTHING);
  }

  /** No first or last line of several stands alone on a page. */
  private void add(
      Element element,
      FontSize size,
      List<TextLine> lines,
      double before,
      boolean sticks,
      Pen.Drawing beforeFirst)
      throws IOException {
    int last = lines.size() - 1;
    for (int i = 0; i <= last; i++) {
      TextLine line = lines.get(i);
      Pen.Drawing first = i == 0 ? beforeFirst : NOTHING;
      boolean held = i == last ? sticks : sticks || i == 0 || i == last - 1;
      Pen.Drawing drawing =
          (pen, top) -> {
            first.draw(pen, top);
            pen.line(element, size, frame.left(), top, line);
          };
      context.flow().add(Flow.Strip.of(i == 0 ? before : 0, size.leading, held, drawing));
    }
  }

  void set(Block.Caution caution) throws IOException {
    FontSize size = FontSize.SMALL;
    TextLayout text = context.text();
    List<TextLine> lines =
        text.lines(size, Text.Style.PLAIN, caution.text(), frame.width() - INDENT - 8);
    TextLine mark = text.lines(size, Text.Style.STRONG, "⚠", INDENT).get(0);
    Element element = context.root().child("P");
    double height = lines.size() * size.leading + 9;
    Pen.Drawing drawing =
        (pen, top) -> {
          pen.frame(Owner.Artifact.DECORATION, Color.GREY, 0.5, field(top, frame.width(), height));
          pen.line(Owner.Artifact.DECORATION, size, frame.left() + 7, top + 4.5, mark);
          pen.lines(element, size, frame.left() + INDENT, top + 4.5, lines);
        };
    context.flow().add(Flow.Strip.of(9, height, false, drawing));
  }

  private Rectangle field(double top, double width, double height) {
    return new Rectangle(frame.left(), top, width, height);
  }

  void set(Block.Banner banner) throws IOException {
    double measure = frame.width() - SYMBOL - 24;
    TextLayout text = context.text();
    List<TextLine> words = text.lines(FontSize.LARGE, Text.Style.STRONG, banner.words(), measure);
    List<TextLine> sentence =
        text.lines(FontSize.BODY, Text.Style.PLAIN, banner.sentence(), measure);
    double down = 6.5 + words.size() * FontSize.LARGE.leading;
    double height = down + sentence.size() * FontSize.BODY.leading + 6.5;
    Element big = context.root().child("P");
    Element small = context.root().child("P");
    Pen.Drawing drawing =
        (pen, top) -> {
          symbol(pen, big, banner.tone(), top, height);
          double x = frame.left() + SYMBOL + 12;
          pen.lines(big, FontSize.LARGE, x, top + 6.5, words);
          pen.lines(small, FontSize.BODY, x, top + down, sentence);
        };
    context.flow().add(Flow.Strip.of(11, height, false, drawing));
  }

  /**
   * The symbol in its field: white on black where the answer is no, so that grey paper shows it.
   */
  private void symbol(Pen pen, Element element, Tone tone, double top, double height)
      throws IOException {
    Owner decoration = Owner.Artifact.DECORATION;
    boolean loud = tone == Tone.FAIL || tone == Tone.DOUBT;
    pen.fill(decoration, Color.behind(tone), field(top, frame.width(), height));
    if (loud) {
      pen.fill(decoration, Color.BLACK, field(top, SYMBOL, height));
    }
    pen.frame(decoration, Color.BLACK, 0.7, field(top, frame.width(), height));
    String symbol = tone.symbol();
    double width = context.text().width(FontSize.SIGN, Text.Style.STRONG, symbol);
    double x = frame.left() + (SYMBOL - width) / 2;
    double middle = top + (height - FontSize.SIGN.leading) / 2;
    pen.word(element, FontSize.SIGN, loud ? Color.WHITE : Color.BLACK, x, middle, symbol + " ");
  }
}

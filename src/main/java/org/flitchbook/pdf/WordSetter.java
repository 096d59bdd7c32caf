package org.flitchbook.pdf;

import java.io.IOException;
import java.util.List;
import org.flitchbook.document.Block;
import org.flitchbook.document.Text;

/** Sets titles, headings and paragraphs. */
final class WordSetter {
  /** Lines across the whole page would be too long to read. */
  private static final double MEASURE = 0.84;

  private static final Drawing NOTHING = (pen, top) -> {};

  private final Press press;
  private int depth = 1;

  WordSetter(Press press) {
    this.press = press;
  }

  void title(String title, String subject) throws IOException {
    List<Line> lines =
        press.setting().lines(Type.LARGE, Text.Style.STRONG, title, press.frame().width());
    add(press.root().child("H1"), Type.LARGE, lines, 0, true, noting(0, title));
    if (!subject.isBlank()) {
      List<Line> under =
          press.setting().lines(Type.BODY, Text.Style.MUTED, subject, press.frame().width());
      add(press.root().child("P"), Type.BODY, under, 1, true, NOTHING);
    }
  }

  void set(Block.Heading heading) throws IOException {
    // The title is the first level, and a tagged file must not skip one.
    depth = Math.min(heading.level() + 1, depth + 1);
    Element element = press.root().child("H" + depth);
    Type type =
        switch (heading.level()) {
          case 1 -> Type.LARGE;
          case 2 -> Type.HEAD;
          default -> Type.BODY;
        };
    Text.Style style = heading.level() == 1 ? Text.Style.PLAIN : Text.Style.STRONG;
    double before = heading.level() == 1 ? 24 : heading.level() == 2 ? 17 : 12;
    List<Line> lines = press.setting().lines(type, style, heading.text(), press.frame().width());
    add(element, type, lines, before, true, noting(heading.level(), heading.text()));
  }

  void set(Block.Paragraph paragraph) throws IOException {
    double measure = press.frame().width() * MEASURE;
    List<Line> lines = press.setting().lines(Type.BODY, paragraph.text(), measure);
    add(press.root().child("P"), Type.BODY, lines, 6, false, NOTHING);
  }

  private Drawing noting(int level, String heading) {
    return (pen, top) -> press.anchors().add(level, heading, pen.sheet().page, pen.fromBottom(top));
  }

  void set(Block.Note note) throws IOException {
    List<Line> lines = press.setting().lines(Type.SMALL, note.text(), press.frame().width());
    add(press.root().child("P"), Type.SMALL, lines, 4, false, NOTHING);
  }

  /** A caption above a table or a chart; it stays with what follows. */
  static void caption(Press press, Element element, String caption) throws IOException {
    List<Line> lines =
        press.setting().lines(Type.BODY, Text.Style.PLAIN, caption, press.frame().width());
    new WordSetter(press).add(element, Type.BODY, lines, 13, true, NOTHING);
  }

  /** No first or last line of several stands alone on a page. */
  private void add(
      Element element,
      Type type,
      List<Line> lines,
      double before,
      boolean sticks,
      Drawing beforeFirst)
      throws IOException {
    int last = lines.size() - 1;
    for (int i = 0; i <= last; i++) {
      Line line = lines.get(i);
      Drawing first = i == 0 ? beforeFirst : NOTHING;
      boolean held = i == last ? sticks : sticks || i == 0 || i == last - 1;
      double x = press.frame().left();
      press
          .flow()
          .add(
              Strip.of(
                  i == 0 ? before : 0,
                  type.leading,
                  held,
                  (pen, top) -> {
                    first.draw(pen, top);
                    pen.line(element, type, x, top, line);
                  }));
    }
  }
}

package org.flitchbook.pdf;

import java.io.IOException;
import java.util.List;
import org.flitchbook.document.Block;
import org.flitchbook.document.Text;

/** Sets ruled room to write in, never split. */
final class BlankSetter {
  /** Seven millimetres, for writing by hand. */
  private static final double RULE = 20;

  private static final double GAP = 14;

  private final Press press;
  private final Block.Blank blank;

  BlankSetter(Press press, Block.Blank blank) {
    this.press = press;
    this.blank = blank;
  }

  void set() throws IOException {
    Element element = press.root().child("P");
    List<Line> label =
        press.setting().lines(Type.BODY, Text.Style.PLAIN, blank.label(), press.frame().width());
    double words = label.size() * Type.BODY.leading;
    double slots = blank.slots().isEmpty() ? 0 : RULE + Type.SMALL.leading;
    Drawing drawing =
        (pen, top) -> {
          for (int i = 0; i < label.size(); i++) {
            double y = top + i * Type.BODY.leading;
            pen.line(element, Type.BODY, press.frame().left(), y, label.get(i));
          }
          rules(pen, top + words);
        };
    double height = words + blank.lines() * RULE + slots;
    press.flow().add(Strip.of(7, height, false, drawing));
  }

  private void rules(Pen pen, double top) throws IOException {
    Frame frame = press.frame();
    for (int i = 1; i <= blank.lines(); i++) {
      double y = top + i * RULE;
      pen.hairline(Artifact.DECORATION, Ink.GREY, frame.left(), y, frame.right(), y);
    }
    int count = blank.slots().size();
    double width = (frame.width() - GAP * (count - 1)) / Math.max(1, count);
    for (int i = 0; i < count; i++) {
      double x = frame.left() + i * (width + GAP);
      slot(pen, blank.slots().get(i), x, top + (blank.lines() + 1) * RULE, width);
    }
  }

  private void slot(Pen pen, String label, double x, double y, double width) throws IOException {
    Line words = press.setting().lines(Type.SMALL, Text.Style.MUTED, label, width).get(0);
    pen.hairline(Artifact.DECORATION, Ink.GREY, x, y, x + width, y);
    pen.line(press.root().child("P"), Type.SMALL, x, y + 0.5, words);
  }
}

package org.flitchbook.pdf;

import java.io.IOException;
import java.util.List;
import org.flitchbook.document.Block;
import org.flitchbook.document.Text;
import org.flitchbook.document.Tone;

/** Sets what stands in a frame: the verdict and the cautions. */
final class FrameSetter {
  private static final double SIGN = 38;

  private final Press press;
  private final Frame frame;

  FrameSetter(Press press) {
    this.press = press;
    this.frame = press.frame();
  }

  void set(Block.Caution caution) throws IOException {
    Type type = Type.SMALL;
    double indent = 20;
    List<Line> lines =
        press.setting().lines(type, Text.Style.PLAIN, caution.text(), frame.width() - indent - 8);
    Line mark = press.setting().lines(type, Text.Style.STRONG, "⚠", indent).get(0);
    Element element = press.root().child("P");
    double height = lines.size() * type.leading + 9;
    Drawing drawing =
        (pen, top) -> {
          pen.frame(Artifact.DECORATION, Ink.GREY, 0.5, frame.left(), top, frame.width(), height);
          pen.line(Artifact.DECORATION, type, frame.left() + 7, top + 4.5, mark);
          draw(pen, element, type, frame.left() + indent, top + 4.5, lines);
        };
    press.flow().add(Strip.of(9, height, false, drawing));
  }

  void set(Block.Banner banner) throws IOException {
    double measure = frame.width() - SIGN - 24;
    List<Line> words =
        press.setting().lines(Type.LARGE, Text.Style.STRONG, banner.words(), measure);
    List<Line> sentence =
        press.setting().lines(Type.BODY, Text.Style.PLAIN, banner.sentence(), measure);
    double height = words.size() * Type.LARGE.leading + sentence.size() * Type.BODY.leading + 13;
    Element big = press.root().child("P");
    Element small = press.root().child("P");
    Drawing drawing =
        (pen, top) -> {
          sign(pen, big, banner.tone(), top, height);
          double x = frame.left() + SIGN + 12;
          draw(pen, big, Type.LARGE, x, top + 6.5, words);
          draw(pen, small, Type.BODY, x, top + 6.5 + words.size() * Type.LARGE.leading, sentence);
        };
    press.flow().add(Strip.of(11, height, false, drawing));
  }

  /**
   * The symbol in its field: white on black where the answer is no, so that grey paper shows it.
   */
  private void sign(Pen pen, Element element, Tone tone, double top, double height)
      throws IOException {
    Artifact decoration = Artifact.DECORATION;
    boolean loud = tone == Tone.FAIL || tone == Tone.DOUBT;
    pen.fill(decoration, Tints.of(tone), frame.left(), top, frame.width(), height);
    if (loud) {
      pen.fill(decoration, Ink.BLACK, frame.left(), top, SIGN, height);
    }
    pen.frame(decoration, Ink.BLACK, 0.7, frame.left(), top, frame.width(), height);
    String symbol = tone.symbol();
    double width = press.setting().width(Type.SIGN, Text.Style.STRONG, symbol);
    double x = frame.left() + (SIGN - width) / 2;
    double middle = top + (height - Type.SIGN.leading) / 2;
    pen.word(element, Type.SIGN, loud ? Ink.WHITE : Ink.BLACK, x, middle, symbol + " ");
  }

  private static void draw(Pen pen, Owner of, Type type, double x, double top, List<Line> lines)
      throws IOException {
    for (int i = 0; i < lines.size(); i++) {
      pen.line(of, type, x, top + i * type.leading, lines.get(i));
    }
  }
}

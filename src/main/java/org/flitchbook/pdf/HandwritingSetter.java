package org.flitchbook.pdf;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.flitchbook.document.Block;
import org.flitchbook.document.Block.Signatures;
import org.flitchbook.document.Text;

/** Sets room to write and sign in by hand. */
final class HandwritingSetter {
  private static final double GAP = 16;
  private static final int BESIDE = 2;

  /** Seven millimetres between the lines of a blank. */
  private static final double RULE = 20;

  private static final double SLOT_GAP = 14;
  private static final double PADDING = 8;
  private static final double LINES = 60;
  private static final double NAME_SHARE = 0.56;

  private final Flow flow;
  private final Rectangle frame;

  HandwritingSetter(Flow flow) {
    this.flow = flow;
    this.frame = flow.frame;
  }

  private List<TextLine> lines(FontSize size, Text.Style style, String words, double width) {
    return words.isBlank() ? List.of() : flow.text.lines(size, style, words, width);
  }

  /** Ruled room, never split. */
  void set(Block.Blank blank) throws IOException {
    Element element = flow.root.child("P");
    List<TextLine> label = lines(FontSize.BODY, Text.Style.PLAIN, blank.label(), frame.width());
    double words = TextLine.height(label);
    double slots = blank.slots().isEmpty() ? 0 : RULE + FontSize.SMALL.leading;
    Pen.Drawing drawing =
        (pen, top) -> {
          pen.as(element).lines(frame.left(), top, label);
          rules(pen, blank, top + words);
        };
    double height = words + blank.lines() * RULE + slots;
    flow.add(7, height, false, drawing);
  }

  private void rules(Pen pen, Block.Blank blank, double top) throws IOException {
    for (int i = 1; i <= blank.lines(); i++) {
      double y = top + i * RULE;
      pen.decoration().hairline(Color.GREY, frame.left(), y, frame.right(), y);
    }
    int count = blank.slots().size();
    double width = (frame.width() - SLOT_GAP * (count - 1)) / Math.max(1, count);
    for (int i = 0; i < count; i++) {
      double x = frame.left() + i * (width + SLOT_GAP);
      double y = top + (blank.lines() + 1) * RULE;
      slot(pen, flow.root.child("P"), Color.GREY, blank.slots().get(i), x, y, width);
    }
  }

  /** A line to write on, and its label below. */
  private void slot(
      Pen pen, Element of, Color color, String label, double x, double y, double width)
      throws IOException {
    pen.decoration().hairline(color, x, y, x + width, y);
    TextLine words = lines(FontSize.SMALL, Text.Style.MUTED, label, width).get(0);
    pen.as(of).line(x, y + 0.5, words);
  }

  /** Signature boxes, two beside each other, all on one page. */
  void set(Signatures signatures) throws IOException {
    List<Signatures.Box> boxes = signatures.boxes();
    double width = (frame.width() - GAP * (BESIDE - 1)) / BESIDE;
    for (int from = 0; from < boxes.size(); from += BESIDE) {
      List<SigningBox> row = new ArrayList<>();
      for (Signatures.Box box : boxes.subList(from, Math.min(boxes.size(), from + BESIDE))) {
        double x = frame.left() + row.size() * (width + GAP);
        row.add(new SigningBox(box, x, width));
      }
      add(row, from == 0 ? 11 : 9, from + BESIDE < boxes.size());
    }
  }

  private void add(List<SigningBox> row, double before, boolean sticks) throws IOException {
    double height = row.stream().mapToDouble(SigningBox::height).max().orElse(0);
    Pen.Drawing drawing =
        (pen, top) -> {
          for (SigningBox box : row) {
            box.draw(pen, top, height);
          }
        };
    flow.add(before, height, sticks, drawing);
  }

  /**
   * A box with the role and the statement of a signer and lines for signature, printed name, date
   * and time. The lines hang from the foot of the box, so that boxes beside each other agree.
   */
  private final class SigningBox {
    private final Element element = flow.root.child("Sect");
    private final Signatures.Box box;
    private final double left;
    private final double width;
    private final List<TextLine> role;
    private final List<TextLine> statement;
    private final List<TextLine> name;

    SigningBox(Signatures.Box box, double x, double across) {
      this.box = box;
      this.left = x + PADDING;
      this.width = across - 2 * PADDING;
      this.role = lines(FontSize.BODY, Text.Style.STRONG, box.role(), width);
      this.statement = lines(FontSize.SMALL, Text.Style.PLAIN, box.statement(), width);
      this.name = lines(FontSize.BODY, Text.Style.PLAIN, box.name(), width * NAME_SHARE);
    }

    /** The room of the lines to write on; a long name needs more of it. */
    private double tall() {
      return LINES + Math.max(0, name.size() - 1) * FontSize.BODY.leading;
    }

    double height() {
      double words = TextLine.height(role) + TextLine.height(statement);
      return PADDING + words + tall() + PADDING - 2;
    }

    void draw(Pen pen, double top, double height) throws IOException {
      Rectangle edge = new Rectangle(left - PADDING, top, width + 2 * PADDING, height);
      pen.decoration().frame(Color.GREY, 0.5, edge);
      double y = top + PADDING - 2;
      pen.as(element.child("P")).lines(left, y, role);
      pen.as(element.child("P")).lines(left, y + TextLine.height(role), statement);
      double bottom = top + height - PADDING + 2;
      Rectangle place = new Rectangle(left, bottom - tall(), width, tall());
      String purpose = box.role() + ": " + say("pdf.signature", "Signature");
      pen.field(element.child("Form"), box.field(), purpose, place);
      drawLines(pen, bottom);
    }

    private void drawLines(Pen pen, double bottom) throws IOException {
      double half = width * NAME_SHARE;
      double lower = bottom - FontSize.SMALL.leading;
      double upper = bottom - tall() + LINES - FontSize.SMALL.leading - 27;
      slot(pen, say("pdf.signature", "Signature"), List.of(), left, upper, width);
      slot(pen, say("pdf.printed-name", "Printed name"), name, left, lower, half);
      double x = left + half + 8;
      slot(pen, say("pdf.date", "Date"), List.of(), x, lower, (left + width - x) * 0.58);
      double timeX = x + (left + width - x) * 0.58 + 8;
      slot(pen, say("pdf.time", "Time"), List.of(), timeX, lower, left + width - timeX);
    }

    private String say(String id, String english) {
      return flow.words.say(id, english);
    }

    /** A line to write on, with what is printed on it already. */
    private void slot(
        Pen pen, String label, List<TextLine> value, double x, double y, double length)
        throws IOException {
      Element of = element.child("P");
      HandwritingSetter.this.slot(pen, of, Color.BLACK, label, x, y, length);
      pen.as(of).lines(x, y - TextLine.height(value), value);
    }
  }
}

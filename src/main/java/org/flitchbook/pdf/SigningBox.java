package org.flitchbook.pdf;

import java.io.IOException;
import java.util.List;
import org.flitchbook.document.Signatures;
import org.flitchbook.document.Text;

/**
 * A box with the role and the statement of a signer and lines for signature, printed name, date and
 * time. The lines hang from the foot of the box, so that boxes beside each other agree.
 */
final class SigningBox {
  private static final double PADDING = 8;
  private static final double LINES = 55;
  private static final double NAME_SHARE = 0.56;

  private final Press press;
  private final Element element;
  private final Signatures.Box box;
  private final double left;
  private final double width;
  private final List<Line> role;
  private final List<Line> statement;
  private final List<Line> name;

  SigningBox(Press press, Element element, Signatures.Box box, double left, double width) {
    this.press = press;
    this.element = element;
    this.box = box;
    this.left = left + PADDING;
    this.width = width - 2 * PADDING;
    this.role = lines(Type.BODY, Text.Style.STRONG, box.role(), this.width);
    this.statement =
        box.statement().isBlank()
            ? List.of()
            : lines(Type.SMALL, Text.Style.PLAIN, box.statement(), this.width);
    this.name =
        box.name().isBlank()
            ? List.of()
            : lines(Type.BODY, Text.Style.PLAIN, box.name(), this.width * NAME_SHARE);
  }

  /** The room of the lines to write on; a long name needs more of it. */
  private double tall() {
    return LINES + Math.max(0, name.size() - 1) * Type.BODY.leading;
  }

  double height() {
    double words = role.size() * Type.BODY.leading + statement.size() * Type.SMALL.leading;
    return PADDING + words + tall() + PADDING - 2;
  }

  void draw(Pen pen, double top, double height) throws IOException {
    pen.frame(Artifact.DECORATION, Ink.GREY, 0.5, left - PADDING, top, width + 2 * PADDING, height);
    Element heading = element.child("P");
    Element stated = element.child("P");
    Element field = element.child("Form");
    double y = top + PADDING - 2;
    for (Line line : role) {
      pen.line(heading, Type.BODY, left, y, line);
      y += Type.BODY.leading;
    }
    for (Line line : statement) {
      pen.line(stated, Type.SMALL, left, y, line);
      y += Type.SMALL.leading;
    }
    double bottom = top + height - PADDING + 2;
    Box place = new Box(left, bottom - tall(), width, tall());
    pen.sheet().field(new SignatureField(box.field(), told(), field, place));
    drawLines(pen, bottom);
  }

  private void drawLines(Pen pen, double bottom) throws IOException {
    double half = width * NAME_SHARE;
    double lower = bottom - Type.SMALL.leading;
    double upper = bottom - tall() + LINES - Type.SMALL.leading - 27;
    slot(pen, say("pdf.signature", "Signature"), List.of(), left, upper, width);
    slot(pen, say("pdf.printed-name", "Printed name"), name, left, lower, half);
    double x = left + half + 8;
    slot(pen, say("pdf.date", "Date"), List.of(), x, lower, (left + width - x) * 0.58);
    double timeX = x + (left + width - x) * 0.58 + 8;
    slot(pen, say("pdf.time", "Time"), List.of(), timeX, lower, left + width - timeX);
  }

  private String told() {
    return box.role() + ": " + say("pdf.signature", "Signature");
  }

  private String say(String id, String english) {
    return press.words().say(id, english);
  }

  private List<Line> lines(Type type, Text.Style style, String text, double length) {
    return press.setting().lines(type, style, text, length);
  }

  /** A line to write on, its label below, and what is printed on it already. */
  private void slot(Pen pen, String label, List<Line> value, double x, double y, double length)
      throws IOException {
    pen.hairline(Artifact.DECORATION, Ink.BLACK, x, y, x + length, y);
    Element of = element.child("P");
    pen.line(of, Type.SMALL, x, y + 0.5, lines(Type.SMALL, Text.Style.MUTED, label, length).get(0));
    for (int i = 0; i < value.size(); i++) {
      double top = y - (value.size() - i) * Type.BODY.leading;
      pen.line(of, Type.BODY, x, top, value.get(i));
    }
  }
}

package org.flitchbook.pdf;

import java.io.IOException;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.PDPageContentStream.AppendMode;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.documentinterchange.markedcontent.PDPropertyList;
import org.flitchbook.document.Text;
import org.flitchbook.words.Words;
import org.jspecify.annotations.Nullable;

/**
 * The only way to put a mark on a page. Each mark names its owner; marks of one owner in a row make
 * one piece of marked content.
 *
 * <p>Distances are in points; x runs from the left edge of the paper, y <em>down</em> from its top.
 */
final class Pen implements AutoCloseable {
  private static final double HAIRLINE = 0.35;

  private final Sheet sheet;
  private final Fonts fonts;
  private final Words words;
  private final PDPageContentStream out;
  private final double height;
  private @Nullable Owner owner;
  private @Nullable Ink ink;

  Pen(PDDocument file, Sheet sheet, Fonts fonts, Words words) throws IOException {
    this.sheet = sheet;
    this.fonts = fonts;
    this.words = words;
    this.out = new PDPageContentStream(file, sheet.page, AppendMode.APPEND, true, false);
    this.height = sheet.page.getMediaBox().getHeight();
  }

  Sheet sheet() {
    return sheet;
  }

  /** Draws a line of text; {@code top} is the upper edge of its leading. */
  void line(Owner of, Type type, double x, double top, Line line) throws IOException {
    double baseline = top + type.baseline();
    for (Line.Piece piece : line.pieces()) {
      if (piece.style() == Text.Style.STRUCK) {
        struck(of, type, x + piece.x(), baseline, piece);
      } else {
        Face face = Type.face(piece.style());
        Owner owned = link(of, piece, new Box(x + piece.x(), top, piece.width(), type.leading));
        text(owned, type, face, Type.ink(piece.style()), x + piece.x(), baseline, piece.text());
      }
    }
  }

  /** What is struck is read out as such: a line through a word can only be seen. */
  private void struck(Owner of, Type type, double x, double baseline, Line.Piece piece)
      throws IOException {
    Owner said =
        of instanceof Element element
            ? element.child("Span").actual(words.say("pdf.struck", "struck: {0}", piece.text()))
            : of;
    text(said, type, Face.PLAIN, Ink.BLACK, x, baseline, piece.text());
    double middle = baseline - type.size * 0.27;
    rule(said, Ink.BLACK, 0.7, x, middle, x + piece.width(), middle);
  }

  /**
   * An element of its own for a piece that leads somewhere; what repeats on pages leads nowhere.
   */
  private Owner link(Owner of, Line.Piece piece, Box place) {
    if (piece.target().isEmpty() || !(of instanceof Element element)) {
      return of;
    }
    Element link = element.child("Link");
    PDRectangle over =
        new PDRectangle(
            round(place.left()), y(place.bottom()), round(place.width()), round(place.height()));
    sheet.link(new Sheet.Link(link, over, piece.target().get()));
    return link;
  }

  /** Draws a word of legible characters, strong; {@code top} is the upper edge of its leading. */
  void word(Owner of, Type type, Ink with, double x, double top, String word) throws IOException {
    text(of, type, Face.STRONG, with, x, top + type.baseline(), word);
  }

  private void text(
      Owner of, Type type, Face face, Ink with, double x, double baseline, String words)
      throws IOException {
    if (words.isEmpty()) {
      return;
    }
    own(of);
    fillWith(with);
    out.beginText();
    out.setFont(fonts.font(face), (float) type.size);
    out.newLineAtOffset(round(x), y(baseline));
    out.showText(words);
    out.endText();
  }

  void hairline(Owner of, Ink with, double x1, double y1, double x2, double y2) throws IOException {
    rule(of, with, HAIRLINE, x1, y1, x2, y2);
  }

  void rule(Owner of, Ink with, double weight, double x1, double y1, double x2, double y2)
      throws IOException {
    stroke(of, with, weight, Dash.NONE, new Path().move(x1, y1).line(x2, y2));
  }

  void fill(Owner of, Ink with, double x, double y, double width, double tall) throws IOException {
    own(of);
    fillWith(with);
    out.addRect(round(x), y(y + tall), round(width), round(tall));
    out.fill();
  }

  void frame(Owner of, Ink with, double weight, double x, double y, double width, double tall)
      throws IOException {
    Path path = new Path().move(x, y).line(x + width, y).line(x + width, y + tall);
    stroke(of, with, weight, Dash.NONE, path.line(x, y + tall).shut());
  }

  void fill(Owner of, Ink with, Path path) throws IOException {
    own(of);
    fillWith(with);
    trace(path);
    out.fill();
  }

  void stroke(Owner of, Ink with, double weight, Dash dash, Path path) throws IOException {
    own(of);
    out.setStrokingColor(with.red, with.green, with.blue);
    out.setLineWidth((float) weight);
    out.setLineCapStyle(dash.cap());
    out.setLineJoinStyle(1);
    out.setLineDashPattern(dash.pattern(), 0);
    trace(path);
    out.stroke();
  }

  /** What the drawing draws is cut off at a rectangle. Everything in it must have this owner. */
  void within(Owner of, double x, double y, double width, double tall, Drawing drawing)
      throws IOException {
    own(of);
    out.saveGraphicsState();
    out.addRect(round(x), y(y + tall), round(width), round(tall));
    out.clip();
    drawing.draw(this, y);
    out.restoreGraphicsState();
    ink = null;
  }

  private void trace(Path path) throws IOException {
    for (Path.Step step : path.steps()) {
      float x = round(step.x());
      switch (step.kind()) {
        case MOVE -> out.moveTo(x, y(step.y()));
        case LINE -> out.lineTo(x, y(step.y()));
        case CURVE ->
            out.curveTo(
                round(step.x1()), y(step.y1()), round(step.x2()), y(step.y2()), x, y(step.y()));
        case SHUT -> out.closePath();
      }
    }
  }

  private void fillWith(Ink with) throws IOException {
    if (ink != with) {
      out.setNonStrokingColor(with.red, with.green, with.blue);
      ink = with;
    }
  }

  private void own(Owner next) throws IOException {
    if (next == owner) {
      return;
    }
    release();
    owner = next;
    if (next instanceof Element element) {
      out.beginMarkedContent(element.type(), sheet.mark(element));
    } else if (next == Artifact.DECORATION) {
      out.beginMarkedContent(COSName.ARTIFACT);
    } else {
      out.beginMarkedContent(COSName.ARTIFACT, pagination(next));
    }
  }

  private static PDPropertyList pagination(Owner part) {
    COSDictionary properties = new COSDictionary();
    properties.setName(COSName.TYPE, "Pagination");
    properties.setName(COSName.SUBTYPE, part == Artifact.HEAD ? "Header" : "Footer");
    return PDPropertyList.create(properties);
  }

  private void release() throws IOException {
    if (owner != null) {
      out.endMarkedContent();
      owner = null;
    }
  }

  /** A distance from the top of the paper as one from its foot. */
  double fromBottom(double fromTop) {
    return height - fromTop;
  }

  private float y(double fromTop) {
    return round(height - fromTop);
  }

  private static float round(double points) {
    return Math.round(points * 100) / 100f;
  }

  @Override
  public void close() throws IOException {
    release();
    out.close();
  }
}

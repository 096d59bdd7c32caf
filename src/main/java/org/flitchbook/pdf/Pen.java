package org.flitchbook.pdf;

import java.io.IOException;
import java.util.List;
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

  private final TaggedPage page;
  private final Fonts fonts;
  private final Words words;
  private final PDPageContentStream out;
  private final double height;
  private @Nullable Owner owner;
  private @Nullable Color color;

  Pen(PDDocument file, TaggedPage page, Fonts fonts, Words words) throws IOException {
    this.page = page;
    this.fonts = fonts;
    this.words = words;
    this.out = new PDPageContentStream(file, page.page, AppendMode.APPEND, true, false);
    this.height = page.page.getMediaBox().getHeight();
  }

  TaggedPage page() {
    return page;
  }

  /** Draws a line of text; {@code top} is the upper edge of its leading. */
  void line(Owner of, FontSize size, double x, double top, TextLine line) throws IOException {
    double baseline = top + size.baseline();
    for (TextLine.Piece piece : line.pieces()) {
      if (piece.style() == Text.Style.STRUCK) {
        struck(of, size, x + piece.x(), baseline, piece);
      } else {
        Owner owned =
            link(of, piece, new Rectangle(x + piece.x(), top, piece.width(), size.leading));
        text(
            owned,
            size,
            piece.style(),
            color(piece.style()),
            x + piece.x(),
            baseline,
            piece.text());
      }
    }
  }

  /** Draws lines below each other. */
  void lines(Owner of, FontSize size, double x, double top, List<TextLine> lines)
      throws IOException {
    for (int i = 0; i < lines.size(); i++) {
      line(of, size, x, top + i * size.leading, lines.get(i));
    }
  }

  /** Draws lines below each other, each of which ends at {@code right}. */
  void linesUpTo(Owner of, FontSize size, double right, double top, List<TextLine> lines)
      throws IOException {
    for (int i = 0; i < lines.size(); i++) {
      line(of, size, right - lines.get(i).width(), top + i * size.leading, lines.get(i));
    }
  }

  private static Color color(Text.Style style) {
    return style == Text.Style.MUTED ? Color.GREY : Color.BLACK;
  }

  /** What is struck is read out as such: a line through a word can only be seen. */
  private void struck(Owner of, FontSize size, double x, double baseline, TextLine.Piece piece)
      throws IOException {
    Owner said =
        of instanceof Element element
            ? element.child("Span").actual(words.say("pdf.struck", "struck: {0}", piece.text()))
            : of;
    text(said, size, Text.Style.STRUCK, Color.BLACK, x, baseline, piece.text());
    double middle = baseline - size.points * 0.27;
    rule(said, Color.BLACK, 0.7, x, middle, x + piece.width(), middle);
  }

  /**
   * An element of its own for a piece that leads somewhere; what repeats on pages leads nowhere.
   */
  private Owner link(Owner of, TextLine.Piece piece, Rectangle place) {
    if (piece.target().isEmpty() || !(of instanceof Element element)) {
      return of;
    }
    Element link = element.child("Link");
    PDRectangle over =
        new PDRectangle(
            round(place.left()), y(place.bottom()), round(place.width()), round(place.height()));
    page.links.add(new TaggedPage.Link(link, over, piece.target().get()));
    return link;
  }

  /** Draws a word of fallback characters, strong; {@code top} is the upper edge of its leading. */
  void word(Owner of, FontSize size, Color with, double x, double top, String word)
      throws IOException {
    text(of, size, Text.Style.STRONG, with, x, top + size.baseline(), word);
  }

  private void text(
      Owner of,
      FontSize size,
      Text.Style style,
      Color with,
      double x,
      double baseline,
      String words)
      throws IOException {
    if (words.isEmpty()) {
      return;
    }
    own(of);
    fillWith(with);
    out.beginText();
    out.setFont(fonts.font(style), (float) size.points);
    out.newLineAtOffset(round(x), y(baseline));
    out.showText(words);
    out.endText();
  }

  void hairline(Owner of, Color with, double x1, double y1, double x2, double y2)
      throws IOException {
    rule(of, with, HAIRLINE, x1, y1, x2, y2);
  }

  void rule(Owner of, Color with, double weight, double x1, double y1, double x2, double y2)
      throws IOException {
    stroke(of, with, weight, Dash.NONE, new Path().move(x1, y1).line(x2, y2));
  }

  void fill(Owner of, Color with, Rectangle area) throws IOException {
    own(of);
    fillWith(with);
    addRectangle(area);
    out.fill();
  }

  private void addRectangle(Rectangle area) throws IOException {
    out.addRect(round(area.left()), y(area.bottom()), round(area.width()), round(area.height()));
  }

  void frame(Owner of, Color with, double weight, Rectangle edge) throws IOException {
    Path path = new Path().move(edge.left(), edge.top()).line(edge.right(), edge.top());
    path.line(edge.right(), edge.bottom()).line(edge.left(), edge.bottom()).shut();
    stroke(of, with, weight, Dash.NONE, path);
  }

  void fill(Owner of, Color with, Path path) throws IOException {
    own(of);
    fillWith(with);
    trace(path);
    out.fill();
  }

  void stroke(Owner of, Color with, double weight, Dash dash, Path path) throws IOException {
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
  void within(Owner of, Rectangle area, Drawing drawing) throws IOException {
    own(of);
    out.saveGraphicsState();
    addRectangle(area);
    out.clip();
    drawing.draw(this, area.top());
    out.restoreGraphicsState();
    color = null;
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

  private void fillWith(Color with) throws IOException {
    if (color != with) {
      out.setNonStrokingColor(with.red, with.green, with.blue);
      color = with;
    }
  }

  private void own(Owner next) throws IOException {
    if (next == owner) {
      return;
    }
    release();
    owner = next;
    if (next instanceof Element element) {
      out.beginMarkedContent(element.type(), page.mark(element));
    } else if (next == Owner.Artifact.DECORATION) {
      out.beginMarkedContent(COSName.ARTIFACT);
    } else {
      out.beginMarkedContent(COSName.ARTIFACT, pagination(next));
    }
  }

  private static PDPropertyList pagination(Owner part) {
    COSDictionary properties = new COSDictionary();
    properties.setName(COSName.TYPE, "Pagination");
    properties.setName(COSName.SUBTYPE, part == Owner.Artifact.HEAD ? "Header" : "Footer");
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

  /** Something to draw once its place on the page is known. */
  @FunctionalInterface
  interface Drawing {
    /** Draws with its upper edge at {@code top}, in points from the top of the paper. */
    void draw(Pen pen, double top) throws IOException;
  }

  /** How a stroke is broken. Lengths are in points. */
  enum Dash {
    NONE,
    LONG,
    DOTS,
    LIMIT,
    BRIDGE;

    /** The PDF number of the shape of the ends: 0 cut, 1 round. */
    int cap() {
      return this == DOTS ? 1 : 0;
    }

    /** Lengths of stroke and gap by turns; none for an unbroken stroke. */
    float[] pattern() {
      return switch (this) {
        case NONE -> new float[] {};
        case LONG -> new float[] {5, 2.4f};
        case DOTS -> new float[] {0, 2.4f};
        case LIMIT -> new float[] {7, 1.6f, 1.2f, 1.6f};
        case BRIDGE -> new float[] {1.2f, 2.2f};
      };
    }
  }
}

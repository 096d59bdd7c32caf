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
import org.flitchbook.document.Chart;
import org.flitchbook.document.Text;
import org.flitchbook.words.Words;
import org.jspecify.annotations.Nullable;

/**
 * The only way to put a mark on a page. Each mark belongs to the owner that the pen was given last;
 * marks of one owner in a row make one piece of marked content.
 *
 * <p>Distances are in points; x runs from the left edge of the paper, y <em>down</em> from its top.
 */
final class Pen implements AutoCloseable {
  private static final double HAIRLINE = 0.35;

  private final Archive.TaggedPage page;
  private final TextLayout fonts;
  private final Words words;
  private final PDPageContentStream out;
  private final double height;
  private Owner owner = Artifact.DECORATION;
  private @Nullable Owner marked;
  private @Nullable Color color;

  Pen(PDDocument file, Archive.TaggedPage page, TextLayout fonts, Words words) throws IOException {
    this.page = page;
    this.fonts = fonts;
    this.words = words;
    this.out = new PDPageContentStream(file, page.page(), AppendMode.APPEND, true, false);
    this.height = page.page().getMediaBox().getHeight();
  }

  /** Whom a mark on paper belongs to: an element of the structure tree, or nobody. */
  sealed interface Owner permits Element, Artifact {}

  /** What is not read out: rules, tints, repeated heads of tables; running heads and feet. */
  enum Artifact implements Owner {
    DECORATION,
    HEAD,
    FOOT
  }

  /** The pen, for marks that belong to that owner. */
  Pen as(Owner next) {
    owner = next;
    return this;
  }

  /** The pen, for marks that nobody reads out. */
  Pen decoration() {
    return as(Artifact.DECORATION);
  }

  /** Notes that a heading begins here, below so much of the page. */
  void heading(int level, String text, double top) {
    page.archive().destinations.add(level, text, page.page(), fromBottom(top));
  }

  /** Lays a field to sign in over its place; it is called so in the file and to a reader. */
  void field(Element element, String name, String purpose, Rectangle place) throws IOException {
    page.field(element, name, purpose, area(place));
  }

  /** Draws lines of text below each other; {@code top} is the upper edge of the first. */
  void lines(double x, double top, List<TextLine> lines) throws IOException {
    for (int i = 0; i < lines.size(); i++) {
      line(x, top + i * lines.get(i).size().leading, lines.get(i));
    }
  }

  /** Draws lines below each other, each of which ends at {@code right}. */
  void linesUpTo(double right, double top, List<TextLine> lines) throws IOException {
    for (int i = 0; i < lines.size(); i++) {
      TextLine line = lines.get(i);
      line(right - line.width(), top + i * line.size().leading, line);
    }
  }

  /** Draws a line of text; {@code top} is the upper edge of its leading. */
  void line(double x, double top, TextLine line) throws IOException {
    Owner whole = owner;
    for (TextLine.Piece piece : line.pieces()) {
      FontSize size = line.size();
      double begin = x + piece.x();
      if (piece.style() == Text.Style.STRUCK) {
        struck(size, begin, top, piece);
      } else {
        link(piece, new Rectangle(begin, top, piece.width(), size.leading));
        Color ink = piece.style() == Text.Style.MUTED ? Color.GREY : Color.BLACK;
        text(size, piece.style(), ink, begin, top, piece.text());
      }
      owner = whole;
    }
  }

  /** What is struck is read out as such: a line through a word can only be seen. */
  private void struck(FontSize size, double x, double top, TextLine.Piece piece)
      throws IOException {
    if (owner instanceof Element element) {
      owner = element.child("Span").actual(words.say("pdf.struck", "struck: {0}", piece.text()));
    }
    text(size, Text.Style.STRUCK, Color.BLACK, x, top, piece.text());
    double middle = top + size.baseline() - size.points * 0.27;
    rule(Color.BLACK, 0.7, x, middle, x + piece.width(), middle);
  }

  /**
   * An element of its own for a piece that leads somewhere; what repeats on pages leads nowhere.
   */
  private void link(TextLine.Piece piece, Rectangle place) {
    if (piece.target().isPresent() && owner instanceof Element element) {
      Element link = element.child("Link");
      page.archive()
          .destinations
          .add(new Destinations.Link(page, link, area(place), piece.target().get()));
      owner = link;
    }
  }

  /** Draws text without breaking it; {@code top} is the upper edge of its leading. */
  void text(FontSize size, Text.Style style, Color with, double x, double top, String text)
      throws IOException {
    if (text.isEmpty()) {
      return;
    }
    fillWith(with);
    out.beginText();
    out.setFont(fonts.font(style), (float) size.points);
    out.newLineAtOffset(round(x), y(top + size.baseline()));
    out.showText(text);
    out.endText();
  }

  void hairline(Color with, double x1, double y1, double x2, double y2) throws IOException {
    rule(with, HAIRLINE, x1, y1, x2, y2);
  }

  void rule(Color with, double weight, double x1, double y1, double x2, double y2)
      throws IOException {
    stroke(with, weight, Dash.NONE, List.of(new Chart.Point(x1, y1), new Chart.Point(x2, y2)));
  }

  void fill(Color with, Rectangle area) throws IOException {
    fillWith(with);
    addRectangle(area);
    out.fill();
  }

  void fill(Color with, List<Chart.Point> edge) throws IOException {
    fillWith(with);
    trace(edge);
    out.fill();
  }

  /** Fills areas as one, so that no seam shows where they meet. */
  void fill(Color with, Iterable<Rectangle> areas) throws IOException {
    fillWith(with);
    for (Rectangle area : areas) {
      addRectangle(area);
    }
    out.fill();
  }

  private void addRectangle(Rectangle area) throws IOException {
    out.addRect(round(area.left()), y(area.bottom()), round(area.width()), round(area.height()));
  }

  void frame(Color with, double weight, Rectangle edge) throws IOException {
    strokeWith(with, weight, Dash.NONE);
    addRectangle(edge);
    out.stroke();
  }

  /** Draws a disc: in PDF a stroke of no length with round ends. */
  void disc(Color with, double radius, double x, double y) throws IOException {
    Chart.Point middle = new Chart.Point(x, y);
    stroke(with, 2 * radius, Dash.ROUND, List.of(middle, middle));
  }

  /** Strokes a path of straight lines; it is closed where it ends on the point it began with. */
  void stroke(Color with, double weight, Dash dash, List<Chart.Point> path) throws IOException {
    strokeWith(with, weight, dash);
    trace(path);
    out.stroke();
  }

  private void strokeWith(Color with, double weight, Dash dash) throws IOException {
    mark();
    out.setStrokingColor(with.red, with.green, with.blue);
    out.setLineWidth((float) weight);
    out.setLineCapStyle(dash == Dash.DOTS || dash == Dash.ROUND ? 1 : 0);
    out.setLineJoinStyle(1);
    out.setLineDashPattern(dash.pattern, 0);
  }

  private void trace(List<Chart.Point> path) throws IOException {
    Chart.Point first = path.get(0);
    out.moveTo(round(first.x()), y(first.y()));
    for (Chart.Point to : path.subList(1, path.size())) {
      out.lineTo(round(to.x()), y(to.y()));
    }
    if (path.size() > 2 && first.equals(path.get(path.size() - 1))) {
      out.closePath();
    }
  }

  /** Cuts off at a rectangle what is drawn until {@link #unclip}, all of one owner. */
  void clip(Rectangle area) throws IOException {
    mark();
    out.saveGraphicsState();
    addRectangle(area);
    out.clip();
  }

  void unclip() throws IOException {
    out.restoreGraphicsState();
    color = null;
  }

  private void fillWith(Color with) throws IOException {
    mark();
    if (color != with) {
      out.setNonStrokingColor(with.red, with.green, with.blue);
      color = with;
    }
  }

  private void mark() throws IOException {
    if (owner == marked) {
      return;
    }
    release();
    marked = owner;
    if (owner instanceof Element element) {
      out.beginMarkedContent(element.type(), page.mark(element));
    } else if (owner == Artifact.DECORATION) {
      out.beginMarkedContent(COSName.ARTIFACT);
    } else {
      COSDictionary properties = new COSDictionary();
      properties.setName(COSName.TYPE, "Pagination");
      properties.setName(COSName.SUBTYPE, owner == Artifact.HEAD ? "Header" : "Footer");
      out.beginMarkedContent(COSName.ARTIFACT, PDPropertyList.create(properties));
    }
  }

  private void release() throws IOException {
    if (marked != null) {
      out.endMarkedContent();
      marked = null;
    }
  }

  /** A distance from the top of the paper as one from its foot. */
  double fromBottom(double fromTop) {
    return height - fromTop;
  }

  private PDRectangle area(Rectangle place) {
    return new PDRectangle(
        round(place.left()), y(place.bottom()), round(place.width()), round(place.height()));
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

  /** Something to draw with its upper edge at {@code top}, once that is known. */
  interface Drawing {
    void draw(Pen pen, double top) throws IOException;
  }

  /** How a stroke is broken and ends. */
  enum Dash {
    NONE,
    ROUND,
    LONG(5, 2.4f),
    DOTS(0, 2.4f),
    LIMIT(7, 1.6f, 1.2f, 1.6f),
    BRIDGE(1.2f, 2.2f);

    /** Lengths of stroke and gap by turns, in points; none for an unbroken stroke. */
    private final float[] pattern;

    Dash(float... pattern) {
      this.pattern = pattern;
    }
  }
}

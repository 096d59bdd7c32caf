package org.flitchbook.pdf;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.geom.Point2D;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.contentstream.PDFGraphicsStreamEngine;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.graphics.image.PDImage;
import org.flitchbook.document.Table;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** On every scale the mark stands left of the limit's tick inside of it, and right of it beyond. */
class ScaleDrawingTest {

  @ParameterizedTest
  @CsvSource({
    "-1,   left",
    "-0.5, left",
    "-0.1, left",
    "0,    on it",
    "0.1,  right",
    "0.5,  right",
    "1,    right"
  })
  void the_mark_stands_beside_the_tick(double at, String where) throws IOException {
    Strokes strokes = drawn(at);
    assertEquals(1, strokes.ticks.size(), "upright strokes");
    double tick = strokes.ticks.get(0);
    double mark = strokes.marks.stream().mapToDouble(x -> x).average().orElseThrow();
    assertEquals(where, Math.abs(mark - tick) < 0.1 ? "on it" : mark < tick ? "left" : "right");
  }

  @ParameterizedTest
  @CsvSource({"-1, -0.5", "-0.5, -0.2", "-0.2, 0", "0, 0.4", "0.4, 0.9"})
  void more_margin_stands_further_left(double one, double other) throws IOException {
    assertTrue(middle(drawn(one)) < middle(drawn(other)), one + " and " + other);
  }

  private static double middle(Strokes strokes) {
    return strokes.marks.stream().mapToDouble(x -> x).average().orElseThrow();
  }

  private static Strokes drawn(double at) throws IOException {
    Table.Column column = new Table.Column("inside, over", Table.Align.LEFT, 0, false);
    Table.Row row = new Table.Row(List.of(Table.Cell.of(new Table.Scale(at), "in words")));
    byte[] pdf = Pages.print(Pages.document(new Table("", List.of(column), List.of(row))));
    try (PDDocument file = Loader.loadPDF(pdf)) {
      Strokes strokes = new Strokes(file.getPage(0));
      strokes.processPage(file.getPage(0));
      return strokes;
    }
  }

  /** Collects where upright strokes stand, and the corners of what is filled. */
  private static final class Strokes extends PDFGraphicsStreamEngine {
    final List<Double> ticks = new ArrayList<>();
    final List<Double> marks = new ArrayList<>();
    private final List<Point2D> path = new ArrayList<>();

    Strokes(PDPage page) {
      super(page);
    }

    @Override
    public void moveTo(float x, float y) {
      path.add(new Point2D.Float(x, y));
    }

    @Override
    public void lineTo(float x, float y) {
      path.add(new Point2D.Float(x, y));
    }

    @Override
    public void strokePath() {
      if (path.size() == 2 && path.get(0).getX() == path.get(1).getX()) {
        ticks.add(path.get(0).getX());
      }
      path.clear();
    }

    @Override
    public void fillPath(int rule) {
      path.forEach(corner -> marks.add(corner.getX()));
      path.clear();
    }

    @Override
    public Point2D getCurrentPoint() {
      return path.get(path.size() - 1);
    }

    @Override
    public void appendRectangle(Point2D a, Point2D b, Point2D c, Point2D d) {}

    @Override
    public void curveTo(float x1, float y1, float x2, float y2, float x3, float y3) {}

    @Override
    public void closePath() {}

    @Override
    public void endPath() {
      path.clear();
    }

    @Override
    public void fillAndStrokePath(int rule) {
      path.clear();
    }

    @Override
    public void clip(int rule) {}

    @Override
    public void drawImage(PDImage image) {}

    @Override
    public void shadingFill(COSName name) {}
  }
}

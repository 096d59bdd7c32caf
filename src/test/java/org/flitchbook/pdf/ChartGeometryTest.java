package org.flitchbook.pdf;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.flitchbook.PrintedWords;
import org.flitchbook.document.Block;
import org.flitchbook.document.Chart;
import org.flitchbook.document.Document;
import org.flitchbook.document.Text;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** Where the words of a chart stand: none on another, none outside, at whatever width. */
class ChartGeometryTest {
  private static final double LEFT = 60;
  private static final double TOP = 80;

  /** 60 millimetres. */
  private static final double COLUMN = 60 / 25.4 * 72;

  /** The whole width of a Letter page between its margins. */
  private static final double PAGE = 510;

  private static List<PrintedWords> printed(Chart chart, double width) throws IOException {
    Document document = Pages.document(new Block.Paragraph(Text.of("x")));
    try (PDDocument file = new PDDocument()) {
      Archive archive = new Archive(file, document);
      Flow flow = new Flow(file, archive, document);
      ChartSetter setter = new ChartSetter(flow.text, chart, LEFT, width);
      Element figure = flow.root.child("Figure");
      flow.add(0, 1, false, (pen, top) -> setter.draw(pen.as(figure), TOP));
      flow.finish();
      ByteArrayOutputStream out = new ByteArrayOutputStream();
      file.save(out);
      double foot = TOP + setter.height();
      return PrintedWords.of(out.toByteArray()).stream()
          .filter(each -> each.bottom() > TOP && each.top() < foot)
          .toList();
    }
  }

  private static void check(Chart chart, double width) throws IOException {
    List<PrintedWords> words = printed(chart, width);
    assertEquals(List.of(), PrintedWords.overlaps(words));
    for (PrintedWords each : words) {
      assertTrue(each.left() >= LEFT - 0.1, each + " sticks out at the left");
      assertTrue(each.right() <= LEFT + width + 0.1, each + " sticks out at the right");
      assertTrue(each.size() >= 7, each + " is too small to read at arm's length");
    }
    for (Chart.Guide guide : chart.guides()) {
      assertTrue(
          words.stream().anyMatch(each -> each.words().equals(guide.label())),
          "no label on the limit line " + guide.label() + " in " + words);
    }
  }

  @Test
  void a_chart_is_legible_in_a_column_of_60_millimetres() throws IOException {
    Chart whole = SampleRecord.smokeChart();
    check(whole, COLUMN);
    check(whole, PAGE);
  }

  @Test
  void a_narrow_chart_still_tells_times_and_values_of_crossings() throws IOException {
    List<String> words =
        printed(SampleRecord.smokeChart(), COLUMN).stream().map(PrintedWords::words).toList();
    for (String wanted :
        List.of("13:02 80 °F", "11:07 HT-3 150.4 °F", "0 h", "100", "P2, thin end")) {
      assertTrue(words.contains(wanted), wanted + " is not among " + words);
    }
  }

  @TestFactory
  Stream<DynamicTest> charts_at_random_keep_their_words_apart() {
    return IntStream.range(0, 40)
        .mapToObj(seed -> DynamicTest.dynamicTest("seed " + seed, () -> random(new Random(seed))));
  }

  private static void random(Random random) throws IOException {
    double width = COLUMN + random.nextDouble() * (PAGE - COLUMN);
    check(chart(random), width);
  }

  private static Chart chart(Random random) {
    double hours = 2 + random.nextInt(200);
    List<Chart.Guide> guides = new ArrayList<>();
    for (int i = 0; i < random.nextInt(5); i++) {
      int at = 40 + 20 * i + random.nextInt(15);
      guides.add(new Chart.Guide(at + " °F", at));
    }
    List<List<Chart.Point>> stretches = new ArrayList<>();
    List<Chart.Marker> markers = new ArrayList<>();
    for (int i = 0; i < 3; i++) {
      stretches.add(walk(random, hours * i / 3, hours * (i + 0.8) / 3));
      Chart.Point last = stretches.get(i).get(stretches.get(i).size() - 1);
      markers.add(
          new Chart.Marker(last.x(), last.y(), "11:0" + i + " " + Math.round(last.y()) + " °F"));
    }
    return new Chart(
        "",
        "in words",
        new Chart.Axis("Clock time, EST", 0, hours, ticks(hours / 8, 8, "0:00", "2026-02-2")),
        new Chart.Axis("°F, at the right °C", 20, 220, ticks(20, 11, "", "")),
        List.of(new Chart.Curve("core P1", Chart.Stroke.SOLID, stretches)),
        guides,
        List.of(new Chart.Marks("crossing", Chart.Shape.DOT, markers)),
        List.of(
            new Chart.Band(0, hours / 2, "smoke"),
            new Chart.Band(hours / 4, hours / 3, "no reading")),
        100 + random.nextInt(150));
  }

  private static List<Chart.Point> walk(Random random, double from, double to) {
    List<Chart.Point> points = new ArrayList<>();
    double y = 120;
    for (int i = 0; i <= 50; i++) {
      points.add(new Chart.Point(from + (to - from) * i / 50, y));
      y = Math.min(215, Math.max(25, y + random.nextGaussian() * 8));
    }
    return points;
  }

  private static List<Chart.Tick> ticks(double step, int count, String label, String second) {
    List<Chart.Tick> ticks = new ArrayList<>();
    for (int i = 1; i <= count; i++) {
      String first = label.isEmpty() ? String.valueOf(Math.round(i * step)) : i + label;
      ticks.add(new Chart.Tick(i * step, first, i % 3 == 0 ? second + i : ""));
    }
    return ticks;
  }
}

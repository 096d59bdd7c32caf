package org.flitchbook.look;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.flitchbook.book.BookFolder;
import org.flitchbook.input.Severity;
import org.flitchbook.input.SourceFile;
import org.flitchbook.measure.Level;
import org.flitchbook.message.Language;
import org.flitchbook.practice.ToolPractice;
import org.flitchbook.reading.Day;
import org.flitchbook.reading.Hand;
import org.flitchbook.reading.Readings;
import org.flitchbook.reading.Series;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/**
 * Each log of the collection is read by hand, looked at, and read by the entry that was proposed:
 * the figures of all three are those of its page, or it is refused in the page's words.
 */
final class ShapesTest {

  private static final int LEAST = 60;

  /** What a reading with more digits behind its decimal mark is held as is as near as this. */
  private static final int DIGITS = 8;

  private static Stream<DynamicTest> each(boolean refused, Consumer<Shape> test) {
    return Shape.all().stream()
        .filter(shape -> shape.isRefused() == refused)
        .map(shape -> DynamicTest.dynamicTest(shape.log(), () -> test.accept(shape)));
  }

  static Look.Result seen(Shape shape) {
    return Look.at(shape.file(), Language.ENGLISH, BookFolder.toolTemplates());
  }

  @Test
  void every_file_is_described_and_where_its_shape_was_seen() throws IOException {
    List<String> described =
        Shape.rows("| log | shape | where it was seen |").map(row -> row.get(0)).toList();
    assertEquals(Shape.files(), described.stream().sorted().toList());
    assertEquals(
        new HashSet<>(described), Shape.all().stream().map(Shape::log).collect(Collectors.toSet()));
    assertTrue(described.size() >= LEAST);
  }

  @TestFactory
  Stream<DynamicTest> a_log_read_by_hand_has_the_figures_of_its_page() {
    return each(false, shape -> assertEquals(shape.figures(), ByHand.of(shape).figures()));
  }

  @TestFactory
  Stream<DynamicTest> look_says_what_the_page_says() {
    return each(false, shape -> assertEquals(shape.says(), Proposal.of(seen(shape)).summary()));
  }

  @TestFactory
  Stream<DynamicTest> what_is_no_table_is_refused_by_what_it_is() {
    return each(true, shape -> assertEquals(shape.says(), refusal(shape)));
  }

  static String refusal(Shape shape) {
    return seen(shape).faults().stream()
        .map(
            fault ->
                "line %d: %s; expected %s"
                    .formatted(
                        fault.place().line(),
                        fault.found().in(Language.ENGLISH),
                        fault.expected().in(Language.ENGLISH)))
        .collect(Collectors.joining("\n"));
  }

  @TestFactory
  Stream<DynamicTest> an_answered_proposal_reads_the_log_to_its_last_row() {
    return each(false, ShapesTest::readsAll);
  }

  private static void readsAll(Shape shape) {
    Proposal proposal = Proposal.of(seen(shape));
    Map<String, String> units = units(shape, proposal);
    assertTrue(proposal.words().containsAll(units.keySet()), () -> units + " of " + proposal);
    Day day = read(shape.file(), proposal.answered(units, shape.answers()));
    assertEquals(
        List.of(), day.faults().stream().filter(fault -> fault.is(Severity.BROKEN)).toList());
    assertEquals(ByHand.of(shape).figures(DIGITS), figures(day, List.copyOf(units.keySet())));
    int used = day.files().get(1).used();
    assertTrue(used >= (int) proposal.tree().get("read"), () -> "read " + proposal.tree());
  }

  /** The units of the columns that count, by the words of the proposal. */
  private static Map<String, String> units(Shape shape, Proposal proposal) {
    ByHand hand = ByHand.of(shape);
    Map<String, String> units = new LinkedHashMap<>();
    for (ByHand.Column column : hand.columns()) {
      boolean headed = proposal.tree().containsKey("heading");
      String called =
          headed && column.called().matches("\\d+")
              ? hand.word((int) proposal.tree().get("heading"), Integer.parseInt(column.called()))
              : column.called();
      units.put(called, column.unit());
    }
    return units;
  }

  static Day read(SourceFile log, String layout) {
    Hand hand = new Hand(ZoneId.of("America/New_York"), '.', ToolPractice.get());
    return Readings.read(LocalDate.of(2026, 12, 30), List.of(Shape.layout(layout), log), hand);
  }

  private static String figures(Day day, List<String> columns) {
    Set<Instant> times = new TreeSet<>();
    Map<String, String> ranges = new LinkedHashMap<>();
    for (Series series : day.series()) {
      List<Integer> all = IntStream.range(0, series.samples().size()).boxed().toList();
      all.forEach(i -> times.add(Instant.ofEpochMilli(series.samples().at(i))));
      List<BigDecimal> values = all.stream().map(i -> value(series, i)).toList();
      ranges.put(series.column(), ByHand.range(values, DIGITS));
    }
    TreeSet<Instant> sorted = new TreeSet<>(times);
    return "%d | %s | %s | %s"
        .formatted(
            day.files().get(1).used(),
            sorted.first(),
            sorted.last(),
            columns.stream().map(ranges::get).collect(Collectors.joining("; ")));
  }

  private static BigDecimal value(Series series, int index) {
    return Level.quantity(series.samples().level(index), series.unit()).value().rounded(2 * DIGITS);
  }
}

package org.flitchbook.check;

import static org.flitchbook.check.Said.reasons;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Path;
import java.util.List;
import org.flitchbook.input.Fault;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The invented books of {@code src/test/scenarios}, see the README there. */
final class ScenariosTest {

  private static final Path BOOKS = Path.of("src", "test", "scenarios");
  private static final String COOLING = "us.b99.cooling-1";

  private static Shelf judged(String book, String day) {
    return Shelf.judged(BOOKS.resolve(book), day, "2026-12-01T05:00:00Z");
  }

  @ParameterizedTest
  @CsvSource({
    "s1b-still-fridge, 2026-02-24, 26047-B1, not met, not met",
    "s3-fire-out, 2026-03-07, 26058-B1, not met, not met",
    "s5a-gap-with-hand-reading, 2026-03-19, 26072-J1, met, met",
    "s5b-gap-without, 2026-03-19, 26072-J1, met, met",
    "s5c-long-gap, 2026-03-19, 26072-J1, not shown, met",
    "s6a-probe-out, 2026-03-29, 26079-L1, not shown, not shown",
    "s6b-probe-out-by-hand, 2026-03-29, 26079-L1, met, met",
    "s7a-autumn, 2026-11-01, 26296-L1, not met, met",
    "s7b-spring, 2026-03-08, 26058-B2, met, met",
  })
  void the_cooling_is_found_as_the_readme_tells(
      String book, String day, String lot, String first, String second) {
    List<Part> parts = judged(book, day).finding(lot, COOLING).parts();
    assertEquals(first, parts.get(0).verdict().words(), reasons(parts.get(0)));
    assertEquals(second, parts.get(1).verdict().words(), reasons(parts.get(1)));
  }

  /**
   * The times of the README, as the log writes them, to a minute of the log's interval and noise.
   */
  @ParameterizedTest
  @CsvSource({
    "s1b-still-fridge, 2026-02-24, 26047-B1, 123, 421",
    "s3-fire-out, 2026-03-07, 26058-B1, 172, 436",
    "s7a-autumn, 2026-11-01, 26296-L1, 98, 268",
    "s7b-spring, 2026-03-08, 26058-B2, 71, ",
  })
  void the_interpolated_times_are_those_of_the_readme(
      String book, String day, String lot, int first, Integer second) {
    List<Part> parts = judged(book, day).finding(lot, COOLING).parts();
    assertEquals(first, interpolated(parts.get(0)), 1.5);
    if (second != null) {
      assertEquals(second, interpolated(parts.get(1)), 1.5);
    }
  }

  private static double interpolated(Part part) {
    return part.measured()
        .orElseThrow()
        .interpolated()
        .orElseThrow()
        .value()
        .rounded(3)
        .doubleValue();
  }

  @ParameterizedTest
  @CsvSource({"s5b-gap-without, note gap", "s5c-long-gap, note gap; ask gap over a crossing"})
  void a_gap_over_a_crossing_is_noted(String book, String noted) {
    assertEquals(List.of(noted.split("; ")), said(judged(book, "2026-03-19").lot("26072-J1")));
  }

  /** The log says that the thick end fell from 139 to 40 °F within two minutes. */
  @Test
  void a_probe_that_fell_out_shows_nothing_of_the_thick_end() {
    Judgement judged = judged("s6a-probe-out", "2026-03-29").lot("26079-L1");
    assertEquals(Verdict.NOT_SHOWN, judged.verdict());
    assertEquals(List.of("probe moved", "core equals air"), asked(judged));
  }

  /** One explanation says that it lay on the shelf, another that it was put back. */
  @Test
  void readings_by_hand_of_the_thick_end_show_it() {
    Judgement judged = judged("s6b-probe-out-by-hand", "2026-03-29").lot("26079-L1");
    assertEquals(Verdict.MET, judged.verdict());
    assertEquals(List.of(), asked(judged));
    assertEquals(List.of("ask probe moved", "ask core equals air", "note gap"), said(judged));
    assertEquals("P1", Bench.found(judged, COOLING).parts().get(0).probe());
  }

  /** The wall clock says 38 minutes where 98 went by: a false pass by more than an hour. */
  @Test
  void the_doubled_hour_of_autumn_hides_nothing() {
    Judgement judged = judged("s7a-autumn", "2026-11-01").lot("26296-L1");
    assertEquals(Verdict.NOT_MET, judged.verdict());
    List<Part> parts = Bench.found(judged, COOLING).parts();
    assertEquals("not met", parts.get(0).verdict().words());
    assertEquals("met", parts.get(1).verdict().words());
    assertEquals(List.of("note autumn clock change"), said(judged));
  }

  /** 37 minutes slow: the log's times lie on other readings than those written by hand. */
  @Test
  void a_logger_whose_clock_is_slow_is_asked_about() {
    Judgement judged = judged("s7c-logger-slow", "2026-02-24").lot("26047-B1");
    assertEquals(List.of("ask clock offset", "ask hand and log disagree"), said(judged));
    assertEquals(Verdict.NOT_SHOWN, judged.verdict());
  }

  private static List<String> asked(Judgement judged) {
    return judged.openFaults().stream().map(Fault::rule).distinct().toList();
  }

  private static List<String> said(Judgement judged) {
    return judged.faults().stream()
        .map(fault -> fault.severity().word() + " " + fault.rule())
        .distinct()
        .toList();
  }
}

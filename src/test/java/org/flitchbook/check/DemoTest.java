package org.flitchbook.check;

import static org.flitchbook.check.Said.formulas;
import static org.flitchbook.check.Said.reasons;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.flitchbook.input.Place;
import org.flitchbook.measure.Dimension;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The demo book at its day, and the example book, as their READMEs tell of them. */
final class DemoTest {

  private static final Shelf DEMO =
      Shelf.judged(Path.of("demo-data", "wrenfold"), "2026-02-24", "2026-02-25T05:00:00Z");
  private static final Shelf EXAMPLE =
      Shelf.judged(
          Path.of("src", "test", "resources", "org", "flitchbook", "lot", "book"),
          "2026-02-24",
          "2026-02-25T05:00:00Z");

  @ParameterizedTest
  @CsvSource({
    "26047-B1, met",
    "26044-B1, not met",
    "26043-L1, not met",
    "26045-B1, not met",
    "26045-B2, not met",
    "26048-J1, met",
    "26055-B1, pending",
  })
  void each_lot_has_the_verdict_of_the_readme(String lot, String verdict) {
    assertEquals(verdict, DEMO.lot(lot).verdict().words());
  }

  @ParameterizedTest
  @CsvSource({
    "26047-B1, us.424.22-b-3.nitrite, met",
    "26047-B1, us.b99.cooling-1, met",
    "26044-B1, us.424.22-b-3.nitrite, not met",
    "26044-B1, us.b99.cooling-1, met",
    "26043-L1, us.a21.table-2.lethality-6.5, not met",
    "26043-L1, us.b99.cooling-1, not met",
    "26045-B1, us.b99.cooling-1, not met",
    "26045-B2, us.b99.cooling-1, not met",
    "26048-J1, us.424.22-b-3.nitrite, met",
    "26048-J1, us.b99.cooling-1, met",
    "26055-B1, us.424.22-b-3.nitrite, met",
    "26055-B1, us.b99.cooling-1, pending",
  })
  void each_finding_is_that_of_the_readme(String lot, String limit, String verdict) {
    Finding finding = DEMO.finding(lot, limit);
    assertEquals(verdict, finding.verdict().words(), reasons(finding));
  }

  @Test
  void the_come_up_of_the_loin_is_not_shown() {
    Finding comeUp = DEMO.finding("26043-L1", "us.a21.come-up");
    assertEquals(Verdict.NOT_SHOWN, comeUp.verdict(), comeUp.verdict().words());
    Finding humidity =
        DEMO.lot("26043-L1").findings().stream()
            .filter(finding -> finding.limit().covers().equals("humidity"))
            .findFirst()
            .orElseThrow();
    assertEquals(Verdict.MET, humidity.verdict(), reasons(humidity));
  }

  @ParameterizedTest
  @CsvSource({"26047-B1, 149.4", "26044-B1, 221.2", "26048-J1, 150.2", "26055-B1, 150.4"})
  void the_nitrite_is_that_of_the_readme(String lot, String ppm) {
    Measured measured = DEMO.finding(lot, "us.424.22-b-3.nitrite").measured().orElseThrow();
    assertEquals(new BigDecimal(ppm), measured.value().value().rounded(1));
  }

  /** Every finding with a value can be followed to lines that exist. */
  @TestFactory
  Stream<DynamicTest> every_number_can_be_followed() {
    return DEMO.lots().values().stream()
        .flatMap(
            judged ->
                judged.findings().stream()
                    .filter(finding -> finding.measured().isPresent())
                    .map(
                        finding ->
                            DynamicTest.dynamicTest(
                                judged.lot().code() + " " + finding.limit().id(),
                                () -> followed(finding))));
  }

  private static void followed(Finding finding) {
    Measured measured = finding.measured().orElseThrow();
    assertEquals(measured.value().dimension(), measured.limit().dimension());
    assertEquals(measured.value().dimension(), measured.margin().dimension());
    assertFalse(formulas(finding).isBlank());
    assertFalse(finding.limit().source().document().isBlank());
    assertFalse(finding.evidence().isEmpty());
    finding.evidence().forEach(DemoTest::isALine);
    if (measured.value().dimension() == Dimension.TEMPERATURE) {
      String number = measured.value().shownNumber();
      assertTrue(
          finding.evidence().stream().anyMatch(place -> line(place).contains(number))
              || finding.evidence().get(0).file().contains("jowl"),
          number + " in " + finding.evidence());
    }
    boolean miss = finding.verdict() == Verdict.NOT_MET;
    assertEquals(miss, miss && measured.margin().value().signum() < 0);
  }

  private static void isALine(Place place) {
    List<String> lines = DEMO.lines().getOrDefault(place.file(), List.of());
    assertTrue(place.line() >= 2 && place.line() <= lines.size(), place.toString());
  }

  private static String line(Place place) {
    return DEMO.lines().get(place.file()).get(place.line() - 1);
  }

  @Test
  void the_example_lot_is_met_without_a_fault() {
    Judgement judged = EXAMPLE.lot("26047-B1");
    assertEquals(List.of(), judged.faults());
    assertEquals(Verdict.MET, judged.verdict());
    Measured nitrite = Bench.found(judged, "us.424.22-b-3.nitrite").measured().orElseThrow();
    assertEquals(new BigDecimal("149.366"), nitrite.value().value().rounded(3));
  }

  /** 70 and 197 minutes, to the log's interval and noise. */
  @Test
  void the_example_lots_band_times_are_those_of_its_curve() {
    List<Part> parts = EXAMPLE.finding("26047-B1", "us.b99.cooling-1").parts();
    assertEquals(70, interpolated(parts.get(0)), 2);
    assertEquals(197, interpolated(parts.get(1)), 2);
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
}

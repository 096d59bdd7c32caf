package org.flitchbook.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Unit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;

/** The tables of the rule sets row by row against what their sources print. */
final class PublishedTablesTest {

  private static List<Kind.Hold> rows(String id) {
    Limit limit =
        Draft.of("least.json").plan().ruleSets().stream()
            .flatMap(set -> Stream.ofNullable(set.limits().get(id)))
            .findFirst()
            .orElseThrow();
    return ((Kind.TimeAtTemperature) limit.kind()).rows();
  }

  private static String time(String id, String degrees) {
    return rows(id).stream()
        .filter(row -> row.atLeast().equals(Quantity.required(degrees + " °F")))
        .map(row -> row.time().toString())
        .findFirst()
        .orElse("no row");
  }

  @ParameterizedTest(name = "{0} °F: {2}, {3}, {4}")
  @CsvFileSource(
      resources = "/org/flitchbook/plan/a21-tables.csv",
      delimiter = '|',
      numLinesToSkip = 1)
  void a_row_of_the_cooking_guideline_is_as_printed(
      String fahrenheit, BigDecimal celsius, String log65, String log7, String log5) {
    assertEquals(log65, time("us.a21.table-2.lethality-6.5", fahrenheit));
    assertEquals(log7, time("us.a21.table-2.lethality-7", fahrenheit));
    assertEquals(log5, time("us.a21.table-6.lethality-5", fahrenheit));
    BigDecimal exact = Quantity.required(fahrenheit + " °F").in(Unit.CELSIUS).value().rounded(1);
    assertEquals(
        true,
        exact.subtract(celsius).abs().compareTo(new BigDecimal("0.1")) <= 0,
        "the printed °C is at most a tenth off, and so no number of ours");
  }

  @ParameterizedTest
  @CsvSource({
    "us.a21.table-2.lethality-6.5, 31",
    "us.a21.table-2.lethality-7, 31",
    "us.a21.table-6.lethality-5, 31",
    "us.318.10-c-1.trichina, 13",
    "us-retail.fc22.3-401.11-b.roast, 17",
    "us-retail.fc22.3-401.11-a-2.cooking, 4"
  })
  void a_table_has_no_more_rows_than_its_source(String id, int rows) {
    assertEquals(rows, rows(id).size());
  }

  /** FDA Food Code 2022, 3-401.11(B) (read); former 9 CFR 318.10(c)(1) (second-hand). */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          us-retail.fc22.3-401.11-b.roast     | 130 112 min, 131 89 min, 133 56 min, 135 36 min, 136 28 min, 138 18 min, 140 12 min, 142 8 min, 144 5 min, 145 4 min, 147 134 s, 149 85 s, 151 54 s, 153 34 s, 155 22 s, 157 14 s, 158 0 s
          us-retail.fc22.3-401.11-a-2.cooking | 145 3 min, 150 1 min, 155 17 s, 158 0 s
          us-retail.fc22.3-401.11-a-1.cooking | 145 15 s
          us.318.10-c-1.trichina              | 120 21 h, 122 9.5 h, 124 4.5 h, 126 2 h, 128 1 h, 130 30 min, 132 15 min, 134 6 min, 136 3 min, 138 2 min, 140 1 min, 142 1 min, 144 0 s
          """)
  void a_table_is_as_its_source_prints_it(String id, String printed) {
    List<String> rows = new ArrayList<>();
    for (Kind.Hold row : rows(id)) {
      assertEquals(Unit.FAHRENHEIT, row.atLeast().unit());
      rows.add(row.atLeast().value() + " " + row.time());
    }
    assertEquals(printed, String.join(", ", rows));
  }

  /** The single numbers that the same sources print, with the unit that they print. */
  @ParameterizedTest(name = "{0}: {1}")
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          # limit                          | number   | source
          us.424.22-b-3.nitrite            | 200 ppm  | 9 CFR 424.22(b)(3) (read)
          us.424.22-b-2.nitrite            | 120 ppm  | 9 CFR 424.22(b)(2) (read)
          us.424.22-b-1.nitrite            | 120 ppm  | 9 CFR 424.22(b)(1) (read)
          us.424.22-b-1.nitrite-floor      | 120 ppm  | 9 CFR 424.22(b)(1) (read)
          us.424.22-b-1.accelerator        | 550 ppm  | 9 CFR 424.22(b)(1) (read)
          us.424.22-b-1-ii-a.nitrite       | 100 ppm  | 9 CFR 424.22(b)(1)(ii)(A) (read)
          us.424.22-b-1-ii-b.nitrite       | 80 ppm   | 9 CFR 424.22(b)(1)(ii)(B) (read)
          us.424.22-b-1-ii-b.nitrite-floor | 40 ppm   | 9 CFR 424.22(b)(1)(ii)(B) (read)
          us.424.21-c.nitrite-dry          | 625 ppm  | 9 CFR 424.21(c), 1 oz to 100 lb (derived)
          us.424.21-c.nitrite-comminuted   | 156.25 ppm | 9 CFR 424.21(c), 1/4 oz to 100 lb (derived)
          us.424.21-c.nitrite-pickle       | 200 ppm  | 9 CFR 424.21(c), 2 lb to 100 gal (derived)
          us.424.21-c.nitrate-bacon        | 0 ppm    | 9 CFR 424.21(c) (read)
          us.424.21-c.residual-nitrite     | 200 ppm  | 9 CFR 424.21(c) (read)
          us.319.107.yield                 | 100 %    | 9 CFR 319.107 (read)
          us.319.106-c.yield               | 82 %     | 9 CFR 319.106(c), 18 % lost (derived)
          us.319.106-c.salt                | 4 %      | 9 CFR 319.106(c) (read)
          us.hb.12.nitrite-floor           | 120 ppm  | FSIS Directive 7620.3 p. 12 (second-hand)
          """)
  void a_bound_is_as_its_source_prints_it(String id, String number, String source) {
    assertEquals(number, ((Kind.Bound) kind(id)).limit().toString(), source);
  }

  @ParameterizedTest(name = "{0}: {1}")
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          # limit                           | stages                                              | source
          us.b99.cooling-1                  | 130 °F to 80 °F 1.5 h, 80 °F to 40 °F 5 h           | FSIS Appendix B, June 1999, option 1 (read)
          us.b99.cooling-2                  | 120 °F to 80 °F 1 h, 120 °F to 55 °F 6 h            | FSIS Appendix B, June 1999, option 2 (read)
          us.a21.come-up                    | 50 °F to 130 °F 6 h                                 | FSIS-GD-2021-14 p. 24 (read)
          us-retail.fc22.3-501.14-a.cooling | 135 °F to 70 °F 2 h, 135 °F to 41 °F 6 h            | FDA Food Code 2022, 3-501.14(A) (read)
          """)
  void a_span_is_as_its_source_prints_it(String id, String stages, String source) {
    List<String> read = new ArrayList<>();
    for (Kind.Stage stage : ((Kind.Span) kind(id)).stages()) {
      read.add(stage.from() + " to " + stage.to() + " " + stage.atMost());
    }
    assertEquals(stages, String.join(", ", read), source);
  }

  private static Kind kind(String id) {
    return Draft.of("least.json").plan().ruleSets().stream()
        .flatMap(set -> Stream.ofNullable(set.limits().get(id)))
        .findFirst()
        .orElseThrow()
        .kind();
  }

  @Test
  void a_limit_from_memory_says_so() {
    List<String> remembered =
        Draft.of("least.json").plan().ruleSets().stream()
            .flatMap(set -> set.limits().values().stream())
            .filter(limit -> limit.source().standing() == Standing.MEMORY)
            .map(Limit::id)
            .sorted()
            .toList();
    assertEquals(
        List.of(
            "us.318.10-c-1.trichina-come-up",
            "us.b21.come-up-partly",
            "us.b21.cooling-1",
            "us.b21.cooling-3",
            "us.b21.hot-holding",
            "us.hb.28.nitrite-pumped",
            "us.hb.28.nitrite-pumped-floor",
            "us.osu.cooling-cured"),
        remembered);
  }
}

package org.flitchbook.lot;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.Instant;
import java.util.List;
import java.util.stream.Stream;
import org.flitchbook.plan.Plan;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

final class RegisterTest {

  private static final String FILE = "2026-02-16/instruments.csv";

  private static Lots checked(Plan plan, String... rows) {
    StringBuilder text = new StringBuilder();
    for (String row : rows) {
      text.append(",2026-02-16 06:50,").append(row).append(",,\n");
    }
    return Books.of(plan, Books.LATE, FILE, text.toString());
  }

  private static Register.Check check(Plan plan, String row) {
    Lots book = checked(plan, row);
    assertEquals(List.of(), Books.said(book));
    return book.register().checks().get(0);
  }

  /** Tolerance of HT-3: 2 °F; of S-10: 2 g. At 310 ft water boils at 212 − 0.0018 × 310 °F. */
  @ParameterizedTest
  @CsvSource({
    "'ice point,,32,°F,MA,HT-3,', 0 °F, true",
    "'ice point,,34,°F,MA,HT-3,', 2 °F, true",
    "'ice point,,34.0001,°F,MA,HT-3,', 2.0001 °F, false",
    "'ice point,,30,°F,MA,HT-3,', -2 °F, true",
    "'ice point,,29.9999,°F,MA,HT-3,', -2.0001 °F, false",
    "'ice point,,1.1,°C,MA,HT-3,', 1.1 °C, true",
    "'ice point,,1.1112,°C,MA,HT-3,', 1.1112 °C, false",
    "'boiling point,,211.442,°F,MA,HT-3,', 0 °F, true",
    "'boiling point,,213.442,°F,MA,HT-3,', 2 °F, true",
    "'boiling point,,213.443,°F,MA,HT-3,', 2.001 °F, false",
    "'check weight,1000 g,1002,g,MA,S-10,', 2 g, true",
    "'check weight,1000 g,1002.1,g,MA,S-10,', 2.1 g, false",
    "'check weight,1 kg,998,g,MA,S-10,', -2 g, true",
    "'check weight,1000 g,1.002,kg,MA,S-10,', 0.002 kg, true",
    "'check weight,1000 g,1.0021,kg,MA,S-10,', 0.0021 kg, false",
    "'compared with reference,140 °F,141.5,°F,MA,HT-3,', 1.5 °F, true",
    "'compared with reference,60 °C,142.1,°F,MA,HT-3,', 2.1 °F, false",
    "'compared with reference,140 °F,60,°C,MA,HT-3,', 0 °C, true"
  })
  void a_check_at_the_tolerance_passes_and_above_it_fails(
      String row, String error, boolean passed) {
    Register.Check check = check(Books.plan(), row);
    assertEquals(error, check.error().toString());
    assertEquals(passed, check.passed());
  }

  /** 1,000 m are 3280.84 ft: 212 − 5.906 = 206.094 °F. */
  @Test
  void the_boiling_point_falls_with_the_altitude() {
    Plan high = Books.plan("310 ft", "1000 m");
    assertEquals("0.905512 °F", check(high, "boiling point,,207,°F,MA,HT-3,").error().toString());
  }

  private static Arguments row(String row, String said) {
    return Arguments.of(row, "stop " + FILE + ":2:" + said);
  }

  static Stream<Arguments> unusable() {
    String reference = ", expected the reference's value with its unit";
    return Stream.of(
        row("check weight,,1000,g,MA,S-10,", "item: found nothing" + reference),
        row("check weight,1000,1000,g,MA,S-10,", "item: found 1000" + reference),
        row("check weight,20 °C,1000,g,MA,S-10,", "item: found 20 °C" + reference),
        row("compared with reference,100 g,140,°F,MA,HT-3,", "item: found 100 g" + reference),
        row(
            "compared with reference,999999999999 °F,140,°F,MA,HT-3,",
            "item: found 999999999999 °F" + reference));
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("unusable")
  void a_check_without_its_reference_is_told(String row, String said) {
    assertEquals(List.of(said), Books.said(checked(Books.plan(), row)));
  }

  @Test
  void a_check_that_does_not_fit_its_instrument_is_told() {
    Lots book = checked(Books.plan(), "ice point,,32,°F,MA,S-10,");
    assertEquals(
        List.of(
            "stop " + FILE + ":2:instrument: found S-10, a scale, expected a thermometer or logger",
            "stop " + FILE + ":2:what: found ice point of a scale, expected a check that fits it"),
        Books.said(book));
    assertEquals(List.of(), book.register().checks());
  }

  @Test
  void a_boiling_point_needs_the_altitude() {
    Plan nowhere = Books.plan("\"altitude\": \"310 ft\", ", "");
    assertEquals(
        List.of(
            "stop "
                + FILE
                + ":2:what: found a boiling point, expected the establishment's \"altitude\" in the"
                + " plan"),
        Books.said(checked(nowhere, "boiling point,,211,°F,MA,HT-3,")));
  }

  @Test
  void an_instrument_of_no_plan_is_told_and_checked_no_further() {
    Lots book = checked(Books.plan(), "ice point,,32,°F,MA,HT-9,");
    assertEquals(1, Books.said(book).size());
    assertEquals(List.of(), book.register().checks());
  }

  @Test
  void a_good_check_holds_for_its_time_and_a_failed_one_not_at_all() {
    Lots book =
        Books.of(
            FILE,
            """
            ,2026-02-16 06:50,ice point,,32,°F,MA,HT-3,,,
            ,2026-02-20 06:50,ice point,,36,°F,MA,HT-3,,,
            ,2026-02-21 06:50,ice point,,32,°F,MA,HT-3,,,
            """);
    var thermometer = Books.plan().instrument("HT-3").orElseThrow();
    Register register = book.register();
    assertEquals(3, register.of(thermometer).size());
    assertEquals(
        List.of(false, true, true, false, true, true, false),
        Stream.of(
                "2026-02-16T11:49:59Z",
                "2026-02-16T11:50:00Z",
                "2026-02-20T11:49:59Z",
                "2026-02-20T11:50:00Z",
                "2026-02-21T11:50:00Z",
                "2026-03-23T11:50:00Z",
                "2026-03-23T11:50:01Z")
            .map(time -> register.inForce(thermometer, Instant.parse(time)))
            .toList());
  }
}

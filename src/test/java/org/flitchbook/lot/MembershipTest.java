package org.flitchbook.lot;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.stream.Stream;
import org.flitchbook.input.Fault;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

final class MembershipTest {

  private static final String PRODUCT = "A1,2026-02-16 09:00,product,JTB,,,MA,,,,\n";

  private static Arguments row(String sheet, String row, String said) {
    return Arguments.of(sheet, row, said);
  }

  static Stream<Arguments> unknown() {
    String scales = "an instrument of the plan: S-10, S-01, S-001, HT-3, LG-A";
    String at = "A1,2026-02-16 09:12,";
    return Stream.of(
        row("cure", at + "turned,,,,XX,,,,", "by: found XX, expected initials in the plan: MA, IQ"),
        row("cure", at + "weight,,4640,g,MA,S-99,,,", "instrument: found S-99, expected " + scales),
        row(
            "cure",
            at + "weight,,4640,g,MA,HT-3,,,",
            "instrument: found HT-3, a thermometer, expected a scale"),
        row(
            "cure",
            at + "weight,,4640,g,MA,LG-A,,,",
            "instrument: found LG-A, a logger, expected a scale"),
        row(
            "cure",
            at + "cooler temperature,F1,38,°F,MA,S-10,,,",
            "instrument: found S-10, a scale, expected a thermometer or logger"),
        row(
            "cure",
            at + "into cure,F9,,,MA,,,,",
            "item: found F9, expected a place of the plan: F1, SK, F2, SM"),
        row(
            "cure",
            at + "curing salt,C9,11.5,g,MA,S-01,,,",
            "item: found C9, expected a lot of curing salt in the plan: C1-7741, RC-118"),
        row(
            "cure",
            at + "curing salt,,11.5,g,MA,S-01,,,",
            "item: found nothing, expected a lot of curing salt in the plan: C1-7741, RC-118"));
  }

  @ParameterizedTest(name = "{1}")
  @MethodSource("unknown")
  void what_the_plan_does_not_know_stops_the_lot(String sheet, String row, String said) {
    Lots book = Books.of("2026-02-16/" + sheet + ".csv", PRODUCT + row + "\n");
    assertEquals(List.of("stop A1 2026-02-16/" + sheet + ".csv:3:" + said), Books.said(book));
  }

  @ParameterizedTest
  @CsvSource({
    "cure, into cure, SM, a smoker",
    "soak, into soak, SM, a smoker",
    "soak, into soak, SK, ''",
    "soak, into soak, F1, ''",
    "dry, into drying, F2, ''",
    "dry, into drying, SM, a smoker",
    "dry, into drying, SK, a water",
    "smoke, into smoke, F2, a cooler",
    "chill, into chill, SM, a smoker",
  })
  void each_step_wants_its_kind_of_place(String sheet, String what, String place, String kind) {
    String file = "2026-02-16/" + sheet + ".csv";
    Lots book =
        Books.of(file, PRODUCT + "A1,2026-02-16 10:00," + what + "," + place + ",,,MA,,,,\n");
    String asked =
        "ask A1 "
            + file
            + ":3:item: found "
            + what
            + " in "
            + place
            + ", "
            + kind
            + ", expected a place of another kind, or its kind in the plan corrected";
    List<String> said = Books.said(book).stream().filter(text -> text.contains(":3:item")).toList();
    assertEquals(kind.isEmpty() ? List.of() : List.of(asked), said);
  }

  @ParameterizedTest(name = "{0} {1}")
  @CsvSource(
      delimiter = '|',
      value = {
        "A1 | 2026-02-15 09:12,turned,,,,MA,,,, | ''",
        "A1 | 2026-02-17 23:59,turned,,,,MA,,,, | ''",
        "A1 | 2026-02-14 23:59,turned,,,,MA,,,,                     | time: found a time of another"
            + " day than its folder, expected a time at most 1 d off, or in \"entered\" when it was"
            + " typed",
        "A1 | 2026-02-18 00:00,turned,,,,MA,,,,                     | time: found a time of another"
            + " day than its folder, expected a time at most 1 d off, or in \"entered\" when it was"
            + " typed",
        "'' | 2025-02-16 09:12,cooler temperature,F1,58,°F,MA,HT-3,,, | time: found a time of"
            + " another day than its folder, expected a time at most 1 d off, or in \"entered\""
            + " when it was typed",
        "A1 | 2026-02-16 09:12,cooler temperature,SK,38,°F,MA,HT-3,,, | item: found cooler"
            + " temperature in SK, a water, expected a place of another kind, or its kind in the"
            + " plan corrected",
        "A1 | 2026-02-16 09:12,into cure,SM,,,MA,,,,                 | item: found into cure in SM,"
            + " a smoker, expected a place of another kind, or its kind in the plan corrected",
        "A1 | 2026-02-16 09:12,cooler temperature,SM,38,°F,MA,HT-3,,, | ''",
      })
  void a_row_of_another_day_or_kind_of_place_is_asked_about(String lot, String row, String said) {
    Lots book = Books.of("2026-02-16/cure.csv", PRODUCT + lot + "," + row + "\n");
    assertEquals(
        said.isEmpty()
            ? List.of()
            : List.of(("ask " + lot).strip() + " 2026-02-16/cure.csv:3:" + said),
        Books.said(book));
  }

  @Test
  void a_product_that_the_plan_does_not_know_stops_the_lot() {
    Lots book = Books.of("2026-02-16/cure.csv", PRODUCT.replace("JTB", "HAM"));
    assertEquals(
        List.of("stop A1 2026-02-16/cure.csv:2: found HAM, expected one of JTB, CPL"),
        Books.said(book));
  }

  @Test
  void a_lot_without_a_product_is_stopped_at_its_first_entry() {
    Lots book = Books.of("2026-02-16/cure.csv", "A1,2026-02-16 09:12,turned,,,,MA,,,,\n");
    assertEquals(
        List.of(
            "stop A1 2026-02-16/cure.csv:2: found no entry \"product\", expected one of JTB, CPL"),
        Books.said(book));
  }

  @Test
  void a_product_named_as_the_value_is_understood() {
    Lots book = Books.of("2026-02-16/cure.csv", PRODUCT.replace("JTB,", ",JTB"));
    assertEquals(List.of(), Books.said(book));
    assertEquals("JTB", book.lots().get(0).product().orElseThrow().code());
  }

  @Test
  void a_reading_of_no_lot_and_no_place_of_the_plan_is_told() {
    Lots book =
        Books.of(
            "2026-02-16/cure.csv", ",2026-02-16 09:12,cooler temperature,F9,38,°F,MA,HT-3,,,\n");
    assertEquals(
        List.of(
            "stop 2026-02-16/cure.csv:2:item: found F9, expected a place of the plan: F1, SK, F2,"
                + " SM"),
        Books.said(book));
  }

  @Test
  void a_fault_of_an_unreadable_lot_touches_no_single_lot() {
    Lots book =
        Books.of("2026-02-16/cure.csv", PRODUCT + "../x,2026-02-16 09:12,turned,,,,MA,,,,\n");
    assertEquals(
        List.of(
            "stop 2026-02-16/cure.csv:3:lot: found ../x, expected letters, digits, - and _ only, 32"
                + " at most"),
        Books.said(book));
    assertEquals(1, book.faults().size());
  }

  @Test
  void out_before_into_is_told() {
    Lots book =
        Books.of(
            "2026-02-16/cure.csv",
            PRODUCT
                + "A1,2026-02-16 09:40,into cure,F1,,,MA,,,,\n"
                + "A1,2026-02-16 09:30,out of cure,,,,MA,,,,\n");
    assertEquals(
        List.of(
            "stop A1 2026-02-16/cure.csv:4:time: found out of cure before into cure"
                + " (2026-02-16/cure.csv:3), expected a later time"),
        Books.said(book));
  }

  @ParameterizedTest
  @CsvSource({"B1, ''", "a1, lots alike by name"})
  void codes_that_differ_in_capitals_are_asked_about(String other, String rule) {
    Lots book =
        Books.of(
            "2026-02-16/cure.csv", PRODUCT + other + ",2026-02-16 09:00,product,JTB,,,MA,,,,\n");
    List<String> asked = book.lot("A1").orElseThrow().faults().stream().map(Fault::rule).toList();
    assertEquals(rule.isEmpty() ? List.of() : List.of(rule), asked);
  }
}

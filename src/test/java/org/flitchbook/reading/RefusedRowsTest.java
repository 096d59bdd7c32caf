package org.flitchbook.reading;

import static org.flitchbook.reading.Days.HEAD;
import static org.flitchbook.reading.Days.said;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

final class RefusedRowsTest {

  private static final String A_MASS = "a mass, digits with a decimal point";
  private static final String A_TIME = "expected a date and time such as 2026-02-16 09:05";
  private static final String LOT = "expected letters, digits, - and _ only, 32 at most";

  private static Arguments row(String sheet, String row, String... said) {
    return Arguments.of(sheet, row, List.of(said));
  }

  private static Arguments time(String time, String said) {
    return row(
        "cure", "26047-B1," + time + ",turned,,,,MA,,", "stop cure.csv:2:time: found " + said);
  }

  private static Arguments lot(String lot, String found) {
    return row(
        "cure", lot + ",2026-02-24 06:40,turned,,,,MA,,", "stop cure.csv:2:lot: found " + found);
  }

  private static Arguments salt(String value, String unit, String... said) {
    return row(
        "cure",
        "26047-B1,2026-02-24 09:20,curing salt,C1," + value + "," + unit + ",MA,S-01,",
        said);
  }

  static Stream<Arguments> unusable() {
    String spoons =
        ", expected a weight in g, kg, oz or lb: one teaspoon of the same curing salt weighs"
            + " anything from 4.2 to 7.1 g";
    return Stream.of(
        row(
            "cure",
            "26047-B1,2026-02-24 09:20,curing salt,C1,12,5,g,MA,S-01,weighed",
            "stop cure.csv:2: found 10 cells (26047-B1, 2026-02-24 09:20, curing salt, C1, 12, 5, g,"
                + " MA, S-01, weighed), expected 9 cells as in the heading; a decimal comma can't"
                + " stand bare in a comma file"),
        salt("12,5", "g", "stop cure.csv:2:unit: found 5, expected g, kg, oz or lb"),
        salt(
            "\"12,5\"",
            "g",
            "stop cure.csv:2:value: found 12,5, expected "
                + A_MASS
                + "; a decimal comma is stated in the plan"),
        salt("", "g", "stop cure.csv:2:value: found nothing, expected " + A_MASS),
        salt("about 12", "g", "stop cure.csv:2:value: found about 12, expected " + A_MASS),
        salt("1e3", "g", "stop cure.csv:2:value: found 1e3, expected " + A_MASS),
        salt("1 200", "g", "stop cure.csv:2:value: found 1 200, expected " + A_MASS),
        salt(".5", "g", "stop cure.csv:2:value: found .5, expected " + A_MASS),
        salt("5.", "g", "stop cure.csv:2:value: found 5., expected " + A_MASS),
        salt("٥", "g", "stop cure.csv:2:value: found ٥, expected " + A_MASS),
        salt("12", "", "stop cure.csv:2:unit: found nothing, expected g, kg, oz or lb"),
        salt("12", "gr", "stop cure.csv:2:unit: found gr, expected g, kg, oz or lb"),
        salt("12", "G", "stop cure.csv:2:unit: found G, expected g, kg, oz or lb"),
        salt("12", "°F", "stop cure.csv:2:unit: found °F, expected g, kg, oz or lb"),
        salt("12", "lb oz", "stop cure.csv:2:unit: found lb oz, expected g, kg, oz or lb"),
        salt("2", "tsp", "stop cure.csv:2:unit: found 2 tsp of curing salt" + spoons),
        salt("1", "Teaspoons", "stop cure.csv:2:unit: found 1 Teaspoons of curing salt" + spoons),
        salt(
            "1/2",
            "cup",
            "stop cure.csv:2:value: found 1/2, expected " + A_MASS,
            "stop cure.csv:2:unit: found 1/2 cup of curing salt" + spoons),
        row(
            "cure",
            "26047-B1,2026-02-24 09:20,cooler temperature,F1,38,g,MA,HT-3,",
            "stop cure.csv:2:unit: found g, expected °C or °F"),
        row(
            "cure",
            "26047-B1,2026-02-24 09:20,thickness,,38,kg,MA,,",
            "stop cure.csv:2:unit: found kg, expected mm, cm, in, m or ft"),
        row(
            "lab",
            "26047-B1,2026-02-24 09:20,moisture,,38,g,MA,,",
            "stop lab.csv:2:unit: found g, expected ppm or %"),
        time("", "no time, " + A_TIME),
        time("09:05", "09:05, a time without a date, expected 2026-02-16 09:05 or the like"),
        time("9:05 am", "9:05 am, a time without a date, expected 2026-02-16 09:05 or the like"),
        time("16/02/2026 09:05", "16/02/2026 09:05, " + A_TIME),
        time("2026-02-16", "2026-02-16, " + A_TIME),
        time("2026-2-16 9:05", "2026-2-16 9:05, " + A_TIME),
        time("2026-02-30 09:05", "2026-02-30 09:05, expected a date and time that exist"),
        time("2026-02-24 24:00", "2026-02-24 24:00, expected a date and time that exist"),
        time("2026-02-24 09:60", "2026-02-24 09:60, expected a date and time that exist"),
        time(
            "2026-11-01 01:30",
            "2026-11-01 01:30, which the clock showed twice in America/New_York, expected an offset behind it, -04:00 or -05:00"),
        time(
            "2026-03-08 02:30",
            "2026-03-08 02:30, which the clock skipped in America/New_York, expected a time that was on the clock"),
        lot("", "no lot, expected a lot"),
        lot("../../x", "../../x, " + LOT),
        lot("-x", "-x, " + LOT),
        lot("a b", "a b, " + LOT),
        lot("a.b", "a.b, " + LOT),
        lot("Brühstück", "Brühstück, " + LOT),
        lot("x".repeat(33), "x".repeat(33) + ", " + LOT),
        row(
            "lab",
            "26047-B1,2026-02-24 06:40,taste,,5,%,MA,,",
            "stop lab.csv:2:what: found taste, expected one of salt, moisture, residual nitrite, residual nitrite ion, residual nitrate, water activity, pH"),
        row(
            "lab",
            "26047-B1,2026-02-24 06:40,,,5,%,MA,,",
            "stop lab.csv:2:what: found nothing, expected one of salt, moisture, residual nitrite, residual nitrite ion, residual nitrate, water activity, pH"),
        row(
            "soak",
            "26047-B1,2026-02-24 06:40,turned,,,,MA,,",
            "stop soak.csv:2:what: found turned, expected one of into soak, water temperature, water changed, out of soak, weight"),
        row(
            "cure",
            "26047-B1,2026-02-24 06:40,rind,,gone,,MA,,",
            "stop cure.csv:2:value: found gone, expected on or off"),
        row(
            "dry",
            "26047-B1,2026-02-24 06:40,surface,,,,MA,,",
            "stop dry.csv:2:value: found nothing, expected tacky or wet"),
        row(
            "cure",
            "26047-B1,2026-02-24 06:40,product,,,,MA,,",
            "stop cure.csv:2:value: found nothing, expected the product"),
        row(
            "cure",
            "26047-B1,2026-02-24 06:40,into cure,,,,MA,,",
            "stop cure.csv:2:item: found nothing, expected what or where, for \"into cure\""));
  }

  @ParameterizedTest(name = "{1}")
  @MethodSource("unusable")
  void a_row_that_cannot_be_used_is_told_and_makes_no_entry(
      String sheet, String row, List<String> said) {
    Day day = Days.row(sheet, row);
    assertEquals(said, said(day));
    assertEquals(List.of(), day.entries());
    assertEquals(0, day.files().get(0).used());
    assertEquals(1, day.files().get(0).rows());
  }

  static Stream<Arguments> incomplete() {
    String turned = "26047-B1,2026-02-24 06:40,turned,,,,,,";
    String weight = "26047-B1,2026-02-24 06:40,weight,,4640,g,MA,,";
    return Stream.of(
        row("cure", turned, "stop cure.csv:2:by: found no initials, expected who wrote this"),
        row(
            "cure",
            weight,
            "stop cure.csv:2:instrument: found no instrument, expected which one read it"));
  }

  @ParameterizedTest(name = "{1}")
  @MethodSource("incomplete")
  void an_incomplete_row_is_used_and_stops_its_lot(String sheet, String row, List<String> said) {
    Day day = Days.row(sheet, row);
    assertEquals(said, said(day));
    assertEquals(1, day.entries().size());
    assertEquals("26047-B1", day.faults().get(0).lot());
  }

  @Test
  void the_doubled_hour_is_read_with_its_offset() {
    String row = "26047-B1,2026-11-01 01:30/,turned,,,,MA,,";
    assertEquals("2026-11-01T05:30:00Z", written(row.replace("/", "-04:00")));
    assertEquals("2026-11-01T06:30:00Z", written(row.replace("/", "-05:00")));
    assertEquals("2026-11-01T01:30:00Z", written(row.replace("/", "Z")));
  }

  private static String written(String row) {
    Day day = Days.row("cure", row);
    assertEquals(List.of(), said(day));
    return day.entries().get(0).time().written().toString();
  }

  @Test
  void a_correction_must_name_a_file_and_a_line() {
    String head = HEAD.replace("note", "note,corrects");
    for (String wrong :
        List.of("7", "cure.csv", "cure.csv:", "cure.csv:0", "cure:7", "cure.csv:7:8")) {
      Day day =
          Days.sheet("cure", head + "26047-B1,2026-02-24 06:40,turned,,,,MA,,," + wrong + "\n");
      assertEquals(
          List.of(
              "stop cure.csv:2:corrects: found "
                  + wrong
                  + ", expected file:line of the entry that this one replaces"),
          said(day));
    }
  }

  @Test
  void a_wrong_time_of_typing_is_told_too() {
    String head = HEAD.replace("note", "note,entered");
    Day day = Days.sheet("cure", head + "26047-B1,2026-02-24 06:40,turned,,,,MA,,,tonight\n");
    assertEquals(List.of("stop cure.csv:2:entered: found tonight, " + A_TIME), said(day));
  }

  @Test
  void every_fault_of_every_row_is_found() {
    String text =
        HEAD
            + "26047-B1,09:05,sugar,,x,spoon,,,\n"
            + "../x,2026-02-24 09:05,turned,,,,MA,,\n"
            + "26047-B1,2026-02-24 09:05,sugar,,48,g,MA,S-01,\n"
            + "26047-B1,2026-02-24 09:05,sugar,,48,,MA,S-01,\n";
    Day day = Days.sheet("cure", text);
    assertEquals(
        List.of("2 time", "2 value", "2 unit", "2 by", "2 instrument", "3 lot", "5 unit"),
        day.faults().stream().map(f -> f.place().line() + " " + f.place().column()).toList());
    assertEquals(1, day.entries().size());
  }

  @Test
  void a_fault_names_its_lot_where_the_lot_can_be_read() {
    assertEquals("26047-B1", Days.row("cure", "26047-B1,x,turned,,,,MA,,").faults().get(0).lot());
    assertEquals("", Days.row("cure", "../x,x,turned,,,,MA,,").faults().get(0).lot());
  }
}

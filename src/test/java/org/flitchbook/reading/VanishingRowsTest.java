package org.flitchbook.reading;

import static org.flitchbook.reading.Days.HEAD;
import static org.flitchbook.reading.Days.said;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Rows that nothing behind the reader could use, or that would make its sums fail. */
final class VanishingRowsTest {

  private static final String LEVEL =
      "at most eight digits before and nine behind the decimal mark";

  private static Arguments row(String sheet, String row, String said) {
    return Arguments.of(sheet, row, List.of("stop " + sheet + ".csv:2:" + said));
  }

  static Stream<Arguments> unusable() {
    String at = "26047-B1,2026-02-24 09:20,";
    return Stream.of(
        row(
            "cure",
            ",2026-02-24 09:20,other,juniper,10.0,g,MA,S-01,",
            "lot: found no lot, expected a lot"),
        row(
            "dispatch",
            ",2026-02-24 09:20,packed,tray,10.0,g,MA,S-01,",
            "lot: found no lot, expected a lot"),
        row(
            "smoke",
            ",2026-02-24 09:20,chamber temperature,,150,°F,MA,T,",
            "lot: found no lot, expected a lot, or a place as the item"),
        row(
            "cure",
            at + "green weight,,-4812,g,MA,S-10,",
            "value: found -4812, expected more than 0"),
        row("cure", at + "green weight,,0,g,MA,S-10,", "value: found 0, expected more than 0"),
        row("chill", at + "weight,,0.0,g,MA,S-10,", "value: found 0.0, expected more than 0"),
        row("cure", at + "sugar,,-1,g,MA,S-10,", "value: found -1, expected 0 or more"),
        row("cure", at + "thickness,,-1,mm,MA,,", "value: found -1, expected 0 or more"),
        row("lab", at + "moisture,,-1,%,MA,,", "value: found -1, expected 0 or more"),
        row("lab", at + "pH,,-1,,MA,,", "value: found -1, expected 0 or more"),
        row("lab", at + "pH,,5.6,pH,MA,,", "unit: found pH, expected no unit"),
        row("dry", at + "humidity,F2,650000,ppm,MA,HT-3,", "unit: found ppm, expected %"),
        row(
            "dry",
            at + "humidity,F2,65.1234567891,%,MA,HT-3,",
            "value: found 65.1234567891, expected " + LEVEL),
        row(
            "chill",
            at + "internal temperature,,39.1234567891,°F,MA,T,",
            "value: found 39.1234567891, expected " + LEVEL),
        row(
            "chill",
            at + "internal temperature,,123456789,°F,MA,T,",
            "value: found 123456789, expected " + LEVEL),
        row(
            "actions",
            at + "disposition,,4222,,MA,,destroyed",
            "unit: found nothing, expected g, kg, oz or lb"));
  }

  @ParameterizedTest(name = "{1}")
  @MethodSource("unusable")
  void a_row_that_nothing_could_use_is_told(String sheet, String row, List<String> said) {
    Day day = Days.row(sheet, row);
    assertEquals(said, said(day));
    assertEquals(List.of(), day.entries());
  }

  @ParameterizedTest
  @ValueSource(strings = {"con", "CON", "nul", "Prn", "aux", "com1", "LPT9", "day", "Deviations"})
  void a_lot_cannot_be_called_like_a_device_or_another_record(String lot) {
    assertEquals(
        List.of(
            "stop cure.csv:2:lot: found "
                + lot
                + ", expected another name: files of that name mean something else"),
        said(Days.row("cure", lot + ",2026-02-24 06:40,turned,,,,MA,,")));
  }

  @Test
  void a_check_without_an_instrument_is_told() {
    Day day = Days.row("instruments", ",2026-02-24 06:50,ice point,,32.4,°F,MA,,");
    assertEquals(
        List.of(
            "stop instruments.csv:2:instrument: found no instrument, expected which one read it"),
        said(day));
  }

  @ParameterizedTest
  @ValueSource(strings = {HEAD_WITH_NOTHING_AT_THE_END, HEAD_WITH_NOTHING_INSIDE})
  void a_cell_under_no_word_is_told(String head) {
    String row = "26047-B1,2026-02-24 06:40,turned,,,,MA,,,late\n";
    String row2 = "26047-B1,late,2026-02-24 06:40,turned,,,,MA,,\n";
    Day day = Days.sheet("cure", head + (head.endsWith(",\n") ? row : row2));
    assertEquals(1, day.faults().size());
    assertEquals(
        "cells under no word of the heading (late)", day.faults().get(0).found().toString());
    assertEquals(List.of(), day.entries());
  }

  private static final String HEAD_WITH_NOTHING_AT_THE_END =
      "lot,time,what,item,value,unit,by,instrument,note,\n";
  private static final String HEAD_WITH_NOTHING_INSIDE =
      "lot,,time,what,item,value,unit,by,instrument,note\n";

  @Test
  void a_unit_that_belongs_to_no_quantity_is_kept() {
    Day day = Days.row("cure", "26047-B1,2026-02-24 06:40,turned,,2,times,MA,,");
    assertEquals(List.of(), said(day));
    assertEquals("2", day.entries().get(0).shown());
    assertEquals(Map.of("unit", "times"), day.entries().get(0).other());
  }

  @Test
  void other_columns_keep_the_order_of_the_sheet() {
    String names = "k,j,i,h,g,f,e,d,c,b,a";
    Day day =
        Days.sheet(
            "cure",
            HEAD.strip() + "," + names + "\n26047-B1,2026-02-24 06:40,turned,,,,MA,,," + names);
    assertEquals(names, String.join(",", day.entries().get(0).other().keySet()));
  }
}

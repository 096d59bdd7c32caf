package org.flitchbook.reading;

import static org.flitchbook.reading.Days.HEAD;
import static org.flitchbook.reading.Days.said;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;

final class RefusedSheetsTest {

  private static final String ROW = "26047-B1,2026-02-24 09:05,sugar,,48.0,g,MA,S-01,\n";

  @Test
  void an_empty_sheet_is_broken() {
    assertEquals(
        List.of(
            "broken cure.csv: found an empty file, expected a line of columns and rows under it"),
        said(Days.sheet("cure", "")));
  }

  @Test
  void a_heading_alone_is_noted() {
    assertEquals(
        List.of("note cure.csv:1: found a heading alone, expected rows under the heading"),
        said(Days.sheet("cure", HEAD)));
  }

  @Test
  void every_missing_column_is_named() {
    Day day = Days.sheet("cure", HEAD.replace("unit,", "").replace(",note", "") + ROW);
    String found =
        "\" in lot, time, what, item, value, by, instrument, expected the columns lot, time, what,"
            + " item, value, unit, by, instrument, note";
    assertEquals(
        List.of(
            "broken cure.csv:1:unit: found no column \"unit" + found,
            "broken cure.csv:1:note: found no column \"note" + found),
        said(day));
    assertEquals(List.of(), day.entries());
  }

  @Test
  void a_column_that_stands_twice_is_broken() {
    assertEquals(
        List.of(
            "broken cure.csv:1:value: found the column \"value\" twice, expected each column once"),
        said(Days.sheet("cure", HEAD.strip() + ",Value\n" + ROW)));
  }

  @Test
  void a_quote_that_never_closes_is_broken() {
    assertEquals(
        List.of(
            "broken cure.csv:3: found a quote that never closes, expected \" at the end of the"
                + " cell"),
        said(Days.sheet("cure", HEAD + ROW + ROW.replace("sugar", "\"sugar") + ROW)));
  }

  @Test
  void the_faults_of_all_files_are_found() {
    Day day =
        Days.read(
            Days.NEW_YORK,
            Days.file("smoke.csv", ""),
            Days.file("cure.csv", HEAD + "x\n"),
            Days.file("chill.csv", "a,b\n"));
    assertEquals(
        List.of("chill.csv", "cure.csv", "smoke.csv"),
        day.faults().stream().map(f -> f.place().file().substring(11)).distinct().toList());
  }

  @Test
  void a_table_that_nobody_claims_is_asked_about() {
    Day day = Days.read(Days.NEW_YORK, Days.file("fridge.csv", "a\n"), Days.file("photo.jpg", "x"));
    assertEquals(
        List.of(
            "ask fridge.csv: found a file that is no sheet and that logs.json does not name,"
                + " expected a sheet's name, or an entry in logs.json that says how to read it"),
        said(day));
    assertEquals(List.of("not read", "not read"), day.files().stream().map(FileRead::use).toList());
  }
}

package org.flitchbook.reading;

import static java.nio.charset.StandardCharsets.UTF_16BE;
import static java.nio.charset.StandardCharsets.UTF_16LE;
import static org.flitchbook.reading.Days.HEAD;
import static org.flitchbook.reading.Days.said;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.charset.Charset;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.flitchbook.input.SourceFile;
import org.flitchbook.sheet.Shape;
import org.flitchbook.sheet.Sheet;
import org.flitchbook.sheet.What;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

final class SheetsTest {

  @TestFactory
  Stream<DynamicTest> every_word_of_every_sheet_makes_an_entry() {
    return Arrays.stream(Sheet.values())
        .flatMap(
            sheet ->
                What.on(sheet).stream()
                    .map(
                        what ->
                            DynamicTest.dynamicTest(
                                sheet.word() + " " + what.word(),
                                () -> makesAnEntry(sheet, what))));
  }

  private static void makesAnEntry(Sheet sheet, What what) {
    String row =
        "26047-B1,2026-02-24 09:05," + what.word() + "," + filled(what.shape()) + ",MA,T,n";
    Day day = Days.row(sheet.word(), row);
    assertEquals(List.of(), said(day));
    assertEquals(1, day.entries().size());
    Entry entry = day.entries().get(0);
    assertEquals(what, entry.what());
    assertEquals(sheet, entry.sheet());
    assertEquals("26047-B1", entry.lot());
    assertEquals("2026-02-24/" + sheet.word() + ".csv:2", entry.place().toString());
    assertEquals(what.shape().dimension(), entry.quantity().map(q -> q.dimension()));
  }

  /** Item, value and unit. */
  private static String filled(Shape shape) {
    return switch (shape) {
      case EVENT, MAYBE_MASS -> ",,";
      case ITEM -> "F1,,";
      case WORDS -> ",all of it,";
      case ON_OFF -> ",off,";
      case SURFACE -> ",tacky,";
      case MASS -> "x,11.5,g";
      case TEMPERATURE -> "F1,37.8,°F";
      case LENGTH -> ",38,mm";
      case SHARE -> ",12.5,%";
      case BARE -> ",5.6,";
    };
  }

  @Test
  void an_entry_keeps_all_that_was_written() {
    String text =
        "note,instrument,BY,Unit,value,item,what,time,lot,piece,entered,corrects,Weather,Mood\n"
            + "n1,S-01,MA,g,11.50,C1-7741,Curing Salt,2026-02-24T09:20:30,26047-B1,P2,"
            + "2026-02-24 18:00,cure.csv:7,rain,good\n";
    Entry entry = Days.sheet("cure", text).entries().get(0);
    assertEquals("26047-B1 P2", entry.lot() + " " + entry.piece());
    assertEquals("C1-7741 11.50 g", entry.item() + " " + entry.shown());
    assertEquals("MA S-01 n1", entry.by() + " " + entry.instrument() + " " + entry.note());
    assertEquals("2026-02-24T14:20:30Z", entry.time().written().toString());
    assertEquals("2026-02-24T14:20:30Z", entry.time().latest().toString());
    assertEquals("2026-02-24T23:00:00Z", entry.entered().orElseThrow().written().toString());
    assertEquals("2026-02-24T23:01:00Z", entry.entered().orElseThrow().latest().toString());
    assertEquals("cure.csv:7", entry.corrects());
    assertEquals(Map.of("weather", "rain", "mood", "good"), entry.other());
  }

  @ParameterizedTest
  @CsvSource({
    "11.5, g, 11.5 g",
    "4.812, kg, 4.812 kg",
    "170, oz, 170 oz",
    "10.6, lb, 10.6 lb",
    "10.6, lbs, 10.6 lb",
    "+3, g, 3 g",
    "0, g, 0 g"
  })
  void masses_are_read_in_every_unit_of_mass(String value, String unit, String read) {
    String row = "26047-B1,2026-02-24 09:05,sugar,," + value + "," + unit + ",MA,S-10,";
    assertEquals(read, Days.row("cure", row).entries().get(0).amount().toString());
  }

  @ParameterizedTest
  @CsvSource({
    "37.8, °F, 37.8 °F",
    "3.2, °C, 3.2 °C",
    "3.2, C, 3.2 °C",
    "37.8, F, 37.8 °F",
    "-1, °C, -1 °C"
  })
  void temperatures_are_read_in_both_units(String value, String unit, String read) {
    String row =
        "26047-B1,2026-02-24 09:05,cooler temperature,F1," + value + "," + unit + ",MA,HT-3,";
    assertEquals(read, Days.row("cure", row).entries().get(0).amount().toString());
  }

  @ParameterizedTest
  @ValueSource(strings = {";", "\t"})
  void semicolons_and_tabs_part_a_sheet_too(String delimiter) {
    String text =
        (HEAD + "26047-B1,2026-02-24 09:05,sugar,,48.0,g,MA,S-01,x").replace(",", delimiter);
    Day day = Days.sheet("cure", text);
    assertEquals(List.of(), said(day));
    assertEquals("48.0 g", day.entries().get(0).shown());
  }

  @Test
  void a_decimal_comma_is_read_where_the_plan_states_it() {
    String text = (HEAD + "26047-B1,2026-02-24 09:05,sugar,,48/5,g,MA,S-01,x").replace(",", ";");
    Day day = Days.read(Days.COMMA, Days.file("cure.csv", text.replace('/', ',')));
    assertEquals(List.of(), said(day));
    assertEquals("48.5 g", day.entries().get(0).amount().toString());
    assertEquals("2026-02-24T08:05:00Z", day.entries().get(0).time().written().toString());
  }

  @Test
  void a_decimal_point_is_refused_where_the_plan_states_a_comma() {
    Day day =
        Days.read(
            Days.COMMA,
            Days.file("cure.csv", HEAD + "26047-B1,2026-02-24 09:05,sugar,,48.5,g,MA,S,"));
    assertEquals(
        List.of("stop cure.csv:2:value: found 48.5, expected a mass, digits with a decimal comma"),
        said(day));
  }

  @Test
  void UTF_16_sheets_with_a_mark_are_read() {
    String text =
        "\uFEFF" + HEAD + "26047-B1,2026-02-24 09:05,water temperature,SK,4.5,°C,MA,HT-3,\r\n";
    for (Charset charset : List.of(UTF_16LE, UTF_16BE)) {
      Day day =
          Days.read(Days.NEW_YORK, SourceFile.of("2026-02-24/soak.csv", text.getBytes(charset)));
      assertEquals(List.of(), said(day));
      assertEquals("4.5 °C", day.entries().get(0).shown());
    }
  }

  @Test
  void a_Windows_1252_sheet_is_read_with_a_note() {
    String text = HEAD + "26047-B1,2026-02-24 09:05,water temperature,SK,4.5,°C,MA,HT-3,\r\n";
    byte[] bytes = text.getBytes(Charset.forName("windows-1252"));
    Day day = Days.read(Days.NEW_YORK, SourceFile.of("2026-02-24/soak.csv", bytes));
    assertEquals(
        List.of(
            "note soak.csv:2: found bytes that are no UTF-8, expected UTF-8; read as Windows-1252"),
        said(day));
    assertEquals("4.5 °C", day.entries().get(0).shown());
  }

  @Test
  void lines_are_physical() {
    String row = "26047-B1,2026-02-24 09:05,sugar,,48.0,g,MA,S-01,";
    Day day = Days.sheet("cure", HEAD + "\n" + row + "\"two\nlines\"\n\n" + row + "\n");
    assertEquals(List.of(3, 6), day.entries().stream().map(e -> e.place().line()).toList());
  }

  @Test
  void what_became_of_a_file_is_counted() {
    String good = "26047-B1,2026-02-24 09:05,sugar,,48.0,g,MA,S-01,\n";
    Day day = Days.sheet("cure", HEAD + good + "\n" + good.replace("48.0", "x") + good);
    FileRead read = day.files().get(0);
    assertEquals(
        "2026-02-24/cure.csv sheet 3 2",
        read.name() + " " + read.use() + " " + read.rows() + " " + read.used());
    assertEquals(64, read.sha256().length());
  }

  @Test
  void a_product_may_stand_as_the_item() {
    Day day = Days.row("cure", "26047-B1,2026-02-24 09:05,product,JTB,,,MA,,");
    assertEquals(List.of(), said(day));
    assertEquals("JTB", day.entries().get(0).item());
  }

  @Test
  void a_short_row_lacks_its_last_cells() {
    Day day = Days.row("cure", "26047-B1,2026-02-24 06:40,turned,,,,MA");
    assertEquals(List.of(), said(day));
    assertEquals(1, day.entries().size());
  }

  @Test
  void empty_cells_beyond_the_heading_are_nothing() {
    Day day = Days.row("cure", "26047-B1,2026-02-24 06:40,turned,,,,MA,,,,,");
    assertEquals(List.of(), said(day));
    assertEquals(1, day.entries().size());
  }

  @Test
  void instruments_need_no_lot_and_places_neither() {
    assertEquals(
        List.of(), said(Days.row("instruments", ",2026-02-24 06:50,ice point,,32.4,°F,MA,HT-3,")));
    Day place = Days.row("cure", ",2026-02-24 06:50,cooler temperature,F1,38,°F,MA,HT-3,");
    assertEquals(List.of(), said(place));
    assertEquals(Optional.of(""), place.entries().stream().map(Entry::lot).findFirst());
  }
}

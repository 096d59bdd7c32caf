package org.flitchbook.reading;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A log of P1 with one more column, or more, that its entry does not read. */
final class OtherColumnsTest {

  private static final String PATTERN =
      "\"pattern\": \"yyyy-MM-dd HH:mm:ss\", \"zone\": \"America/New_York\"";

  private static final String ENTRY =
      ", expected what they are, as a column in logs.json, or \"leftOut\" there with the reason";
  private static final String NAMED =
      ", expected those that logs.json names; the rest counts for nothing";

  /** A row a minute with these cells, several of them parted by commas. */
  private static String log(String words, List<String> cells) {
    return "Time,P1,"
        + words
        + "\n"
        + IntStream.range(0, cells.size())
            .mapToObj(i -> "2026-02-24 08:0" + i + ":00,39." + i + "," + cells.get(i) + "\n")
            .collect(Collectors.joining());
  }

  private static List<String> said(String more, String words, String... cells) {
    return Days.said(Days.log(PATTERN, more, log(words, List.of(cells))));
  }

  private static String severity(String word, String cells) {
    List<String> said = said("", word, cells.strip().split(" ", -1));
    return said.isEmpty() ? "" : said.get(0).split(" ", 2)[0];
  }

  @ParameterizedTest
  @CsvSource({
    "P2,        39.2 40.1 41.7,    ask",
    "P2,        39.2 39.2 39.2,    ask",
    "P2,        39.2 '' '',        ask",
    "P2,        --- --- 151.3,     ask",
    "P2,        39 40 42,          ask",
    "P2,        41 40 39,          ask",
    "P2,        -127 -127 -127,    ask",
    "P2,        39.2°F 40.1°F 42F, ask",
    "Humid,     95% 96% 94%,       ask",
    "Set,       225 225 225,       ask",
    "Bathroom,  50 51 53,          ask",
    "P2 (bat),  50 51 53,          note",
    "Battery %, 100 99 97,         note",
    "V_Batt,    3.7 3.6 3.6,       note",
    "VBat,      3.7 3.6 3.6,       note",
    "Acrobat,   3.7 3.6 3.6,       ask",
    "Voltage,   3.7 3.6 3.6,       note",
    "Batería,   100 99 97,         note",
    "RSSI,      -70 -71 -70,       note",
    "Elapsed s, 0 61 119,          note",
    "No.,       1 2 3,             note",
    "No.,       1 2 2,             ask",
    "No.,       141 142 143,       note",
    "P2,        141 142 143,       ask",
    "P2,        39.1 39.2 39.3,    ask",
    "P2,        39.1 40.2,         ask",
    "P2,        39.1,              ask",
    "Note 2,    39.1 39.2,         ask",
    "Row,       39.1 39.2 39.3,    ask",
    "Minutes,   0 5 10,            note",
    "Minutes,   0 5 11,            ask",
    "Alarm,     0 0 1,             note",
    "Alarm,     0 0 2,             ask",
    "Event,     start '' stop,     note",
    "Serial,    LG-A LG-A LG-A,    note",
    "P2,        '' '' '',          ''",
  })
  void a_column_is_asked_about_where_it_may_hold_readings(
      String word, String cells, String expected) {
    assertEquals(expected, severity(word, cells.replace("''", "")));
  }

  @Test
  void a_decimal_comma_hides_no_reading() {
    assertEquals(
        List.of("ask p1.csv:1:P2: found numbers under \"P2\"" + ENTRY),
        said("", "P2", "\"39,2\"", "\"40,1\"", "\"41,7\""));
  }

  @Test
  void one_log_asks_once_for_all_its_columns_and_names_the_rest_once() {
    assertEquals(
        List.of(
            "ask p1.csv:1:P2: found numbers under \"P2\"; \"P3\"" + ENTRY,
            "note p1.csv:1:No: found more columns: \"No\"; \"Text\"" + NAMED),
        said("", "No,P2,Text,P3", "1,39.2,a,40.1", "2,39.3,b,40.9"));
  }

  @Test
  void a_column_without_a_heading_is_no_hiding_place() {
    assertEquals(
        List.of(
            "ask p1.csv:1: found numbers under \"\"" + ENTRY,
            "note p1.csv:1:Text: found more columns: \"Text\"" + NAMED),
        said("", ",Text", "39.2,a", "39.9,b"));
  }

  @Test
  void a_column_that_is_left_out_for_a_reason_is_named_with_it() {
    String leftOut = "\"leftOut\": {\"P3\": \"spare probe, in the air\"}, ";
    assertEquals(
        List.of("note p1.csv:1:P3: found more columns: \"P3\": spare probe, in the air" + NAMED),
        said(leftOut, "P3", "39.2", "40.4"));
    assertEquals(
        List.of(
            "ask p1.csv:1:P2: found numbers under \"P2\"" + ENTRY,
            "note p1.csv:1:P3: found more columns: \"P3\": spare probe, in the air" + NAMED),
        said(leftOut, "P2,P3", "39.2,40.1", "39.9,40.2"));
    assertEquals(List.of(), said(leftOut, "", "", ""));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "{\"P3\": \"\"}     | \"P3\" without a reason",
        "{\"P3\": \"  \"}   | \"P3\" without a reason",
        "{\"P1\": \"spare\"}| \"P1\", which is a column too",
      })
  void a_column_is_read_or_left_out_for_a_reason(String leftOut, String found) {
    assertEquals(
        List.of(
            "broken logs.json:1:logs[0].leftOut: found "
                + found
                + ", expected columns that are not read, each with the reason"),
        said("\"leftOut\": " + leftOut + ", ", "P3", "39.2").stream()
            .filter(each -> each.startsWith("broken"))
            .toList());
  }

  /** The second part has its columns in another order: each word keeps its own numbers. */
  @Test
  void a_heading_in_the_middle_mixes_no_columns() {
    String log =
        """
        Time,P1,No,Text
        2026-02-24 08:00:00,39.2,1,a
        2026-02-24 08:01:00,39.3,2,b
        Time,Text,No,P1
        2026-02-24 08:02:00,c,3,39.4
        """;
    assertEquals(
        List.of(
            "note p1.csv:4: found Time, Text, No, P1, expected the heading once, on line 1",
            "note p1.csv:1:No: found more columns: \"No\"; \"Text\"" + NAMED),
        Days.said(Days.log(PATTERN, log)));
  }
}

package org.flitchbook.reading;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import org.flitchbook.input.Fault;
import org.flitchbook.input.SourceFile;
import org.flitchbook.practice.ToolPractice;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A log that is no table is refused by what it is, with the first line that shows it. */
final class OtherFormatsTest {

  private static final String LAYOUT =
      """
      {"logs": [{"files": "log.csv", "instrument": "LG-A",
       "time": {"column": "Time", "pattern": "yyyy-MM-dd HH:mm:ss", "zone": "America/New_York"},
       "columns": [{"column": "P1", "what": "internal temperature", "unit": "°F", "lot": "A1"}]}]}
      """;

  private static Day read(String text) {
    return Readings.read(
        LocalDate.parse("2026-02-24"),
        List.of(
            SourceFile.of("2026-02-24/log.csv", text.getBytes(UTF_8)),
            SourceFile.of("2026-02-24/logs.json", LAYOUT.getBytes(UTF_8))),
        new Hand(ZoneId.of("America/New_York"), '.', ToolPractice.get()));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '!',
      value = {
        "{\"t\": \"2026-02-24 08:00\", \"v\": 38.1} ! JSON, one object a line",
        "time=2026-02-24T08:00 temp=38.1 ! a key and its value in each cell",
        "<tr><td>2026-02-24 08:00</td><td>38.1</td></tr> ! a web page or XML",
        "On 24 February the probe read about 38 degrees in the morning. ! sentences",
        "2026-02-24 08:00 | 38.1 | 37.9 ! cells between |",
      })
  void it_is_named(String line, String kind) {
    String text = (line.strip() + "\n").repeat(12);
    Day day = read(text);
    String shown =
        line.strip().length() <= 60 ? line.strip() : line.strip().substring(0, 60).strip() + " …";
    assertEquals(
        List.of(
            "no table 2026-02-24/log.csv:1: found "
                + kind
                + ": "
                + shown
                + ", expected rows of cells parted by comma, semicolon or tab: choose CSV where the"
                + " log is exported"),
        day.faults().stream().map(fault -> fault.rule() + " " + fault.message()).toList());
  }

  /** A table with words in a cell is one, though logs.json names another column. */
  @Test
  void a_table_that_lacks_a_column_is_no_other_format() {
    String text = "Date,P1,remark\n" + "2026-02-24 08:00:00,38.1,door open a while\n".repeat(12);
    assertEquals(List.of("missing column"), read(text).faults().stream().map(Fault::rule).toList());
  }

  @Test
  void an_empty_log_is_said_once() {
    assertEquals(List.of("empty file"), read("").faults().stream().map(Fault::rule).toList());
  }
}

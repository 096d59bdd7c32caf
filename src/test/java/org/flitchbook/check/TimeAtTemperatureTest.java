package org.flitchbook.check;

import static org.flitchbook.check.Said.formulas;
import static org.flitchbook.check.Said.reasons;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.DynamicTest.dynamicTest;

import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalTime;
import java.time.format.DateTimeFormatter;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.flitchbook.message.Language;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The heat that a core was held at, against the tables of lethality. */
final class TimeAtTemperatureTest {

  private static final String TABLE = "us.a21.table-2.lethality-6.5";
  private static final Path PUBLISHED =
      Path.of("src", "test", "resources", "org", "flitchbook", "plan", "a21-tables.csv");
  private static final LocalTime START = LocalTime.of(9, 0);
  private static final DateTimeFormatter CLOCK =
      DateTimeFormatter.ofPattern("HH:mm:ss", Locale.ROOT);

  /** In the heat from 08:00 to 12:00. */
  private static Bench smoked(String limit) {
    return Bench.book()
        .rule(limit)
        .write(
            "smoke,08:00:00,into smoke,SM",
            "smoke,12:00:00,out of smoke",
            "chill,12:05,into chill,F2",
            "chill,18:00,out of chill");
  }

  private static String verdict(String instrument, String readings) {
    return smoked(TABLE).core("P1", instrument, readings).finding(TABLE).verdict().words();
  }

  /** Table 2 of FSIS-GD-2021-14, p. 35, the 6.5-log column. */
  @TestFactory
  Stream<DynamicTest> each_row_of_the_published_table_serves_at_its_edge() throws IOException {
    return Files.readAllLines(PUBLISHED).stream()
        .filter(line -> line.matches("1\\d\\d \\|.*"))
        .map(line -> Arrays.stream(line.split("\\|", -1)).map(String::strip).toList())
        .flatMap(cells -> row(cells.get(0), seconds(cells.get(2))));
  }

  private static long seconds(String time) {
    long number = Long.parseLong(time.substring(0, time.indexOf(' ')));
    return time.endsWith("min") ? number * 60 : number;
  }

  private static Stream<DynamicTest> row(String degrees, long seconds) {
    BigDecimal level = new BigDecimal(degrees);
    BigDecimal tenth = new BigDecimal("0.1");
    BigDecimal half = new BigDecimal("0.5");
    long held = Math.max(seconds, 10);
    String name = degrees + " °F, " + seconds + " s: ";
    Stream<DynamicTest> always =
        Stream.of(
            at(name + "at both edges", "met", "LG-0", level, held),
            at(name + "longer", "met", "LG-0", level, held + 1),
            at(name + "hotter", "met", "LG-0", level.add(tenth), held),
            at(name + "colder", "not met", "LG-0", level.subtract(tenth), held),
            at(name + "hot enough with U", "met", "LG-A", level.add(half), held),
            at(
                name + "only as written",
                "not shown",
                "LG-A",
                level.add(half).subtract(tenth),
                held));
    boolean instant = seconds == 0;
    return instant && !degrees.equals("158")
        ? always.filter(test -> !test.getDisplayName().matches(".*(colder|only as written)"))
        : Stream.concat(always, shorter(name, level, seconds));
  }

  private static Stream<DynamicTest> shorter(String name, BigDecimal level, long seconds) {
    return seconds == 0
        ? Stream.empty()
        : Stream.of(at(name + "shorter", "not met", "LG-0", level, seconds - 1));
  }

  /** A log of 10 s that holds a level for so many seconds, the last reading at their end. */
  private static DynamicTest at(
      String name, String verdict, String instrument, BigDecimal level, long seconds) {
    long whole = (seconds - 1) / 10 * 10;
    LocalTime last = START.plusSeconds(seconds);
    String readings =
        "08:00:00..08:59:50/10 40>110; 09:00:00.."
            + CLOCK.format(START.plusSeconds(whole))
            + "/10 "
            + level
            + "; "
            + CLOCK.format(last)
            + " "
            + level
            + "; "
            + CLOCK.format(last.plusSeconds(10))
            + ".."
            + CLOCK.format(last.plusSeconds(600))
            + "/10 110>100";
    return dynamicTest(name, () -> assertEquals(verdict, verdict(instrument, readings)));
  }

  /** A row of 0 s wants two readings running. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "not met | 09:00:00 130; 09:00:10 158.0; 09:00:20 130",
        "met     | 09:00:00 130; 09:00:10 158.0; 09:00:20 158.0; 09:00:30 130",
        "not met | 09:00:00 130; 09:00:10 158.0; 09:00:20 155; 09:00:30 158.0; 09:00:40 130",
      })
  void an_instant_row_wants_two_readings(String verdict, String readings) {
    assertEquals(verdict, verdict("LG-0", "08:00:00..08:59:50/10 40>110; " + readings));
  }

  /** By hand in a gap of the log, or beside its only reading. */
  @ParameterizedTest(name = "{1} {2}: {0}")
  @CsvSource(
      delimiter = '|',
      value = {
        "not shown | 09:05 158.0 HT-0 |",
        "not shown | 09:05 163.0 HT-0 |",
        "not met   | 09:05 157.9 HT-0 |",
        "not shown | 09:05 158.9 HT-1 |",
        "not met   | 09:05 157.9 HT-0 | 09:05 157.9 HT-1",
        // the same one written twice
        "not shown | 09:05 158.0 HT-0 | 09:05 158.0 HT-0",
        "not shown | 09:05 158.0 HT-0 | 09:05 160.0 HT-0",
        // read again, and checked with another thermometer
        "met       | 09:05 158.0 HT-0 | 09:06 158.0 HT-0",
        "met       | 09:05 158.0 HT-0 | 09:05 159.0 HT-1",
        "not shown | 09:05 158.0 HT-0 | 09:05 158.9 HT-1",
        "not shown | 09:05 158.0 HT-0 | 09:05 157.9 HT-1",
      })
  void an_instant_row_is_not_met_by_one_reading_by_hand(
      String verdict, String one, @Nullable String other) {
    String gap = "08:00:00..08:59:50/10 40>110; 09:00:00 130; 09:10:00 130";
    Bench bench = smoked(TABLE).core("P1", "LG-0", gap).write(byHand(one));
    if (other != null) {
      bench.write(byHand(other));
    }
    Finding found = bench.finding(TABLE);
    assertEquals(verdict, found.verdict().words(), reasons(found));
  }

  private static String byHand(String reading) {
    String[] words = reading.split(" ", -1);
    return "smoke,%s,internal temperature,,%s,°F,MA,%s".formatted(words[0], words[1], words[2]);
  }

  @ParameterizedTest
  @CsvSource({"158.0, met", "157.9, not met"})
  void one_reading_of_the_log_is_checked_by_hand(String hand, String verdict) {
    Bench bench =
        smoked(TABLE)
            .core(
                "P1",
                "LG-0",
                "08:00:00..08:59:50/10 40>110; 09:00:00 130; 09:00:10 158.0; 09:00:20 130")
            .write("smoke,09:00:10,internal temperature,," + hand + ",°F");
    assertEquals(verdict, bench.finding(TABLE).verdict().words());
  }

  @Test
  void one_reading_by_hand_says_what_it_takes() {
    Bench bench =
        smoked(TABLE)
            .write("smoke,09:05,internal temperature,,158.0,°F")
            .write("smoke,09:15,internal temperature,,150.0,°F");
    assertEquals(
        "hand: one reading by hand at or above 158 °F; 0 s there takes two readings, or its check"
            + " with another instrument",
        reasons(bench.finding(TABLE)));
  }

  /** 140 °F for 12 min of the published table; 60.0 °C is 140 °F. */
  @ParameterizedTest
  @CsvSource({"60.0, met", "59.99, not met", "60.01, met"})
  void a_log_in_celsius_is_judged_exactly(String level, String verdict) {
    Bench bench =
        smoked(TABLE)
            .log(
                "P1",
                "internal temperature",
                "°C",
                "LG-0",
                "\"lot\": \"A1\"",
                "08:00:00..08:59:00/60 5>40; 09:00:00..09:12:00/60 " + level + "; 09:13:00 40");
    assertEquals(verdict, bench.finding(TABLE).verdict().words());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        // 145 °F for 4 min
        "met     | 09:00:00..09:04:00/60 145.0",
        "not met | 09:00:00..09:02:00/60 145.0; 09:07:01..09:09:01/60 145.0",
        "met     | 09:00:00..09:02:00/60 145.0; 09:07:00..09:09:00/60 145.0",
        "not met | 09:00:00..09:02:00/60 145.0; 09:03:00 141; 09:04:00..09:07:00/60 145.0",
        "not met | 07:50:00..07:59:00/60 145.0; 08:00:00..08:03:00/60 145.0",
        "met     | 07:50:00..07:59:00/60 145.0; 08:00:00..08:04:00/60 145.0",
        "met     | 11:56:00..12:03:00/60 145.0",
        "not met | 11:57:00..12:09:00/60 145.0",
      })
  void the_run_is_unbroken_and_in_the_heat(String verdict, String readings) {
    boolean early = readings.startsWith("07");
    boolean late = readings.startsWith("11");
    String before = early ? "" : "08:00:00.." + (late ? "11:55:00" : "08:59:00") + "/60 40>110; ";
    String after = late ? "" : "; 09:30:00..09:40:00/60 100";
    assertEquals(verdict, verdict("LG-0", before + readings + after));
  }

  /** A hand reading bridges a gap. */
  @Test
  void a_hand_reading_joins_a_run_over_a_gap() {
    String readings =
        "08:00:00..08:59:00/60 40>110; 09:00:00..09:02:00/60 145.0; 09:10:00..09:12:00/60 145.0;"
            + " 09:13:00 90";
    Bench bench = smoked(TABLE).core("P1", "LG-0", readings);
    assertEquals("not met", bench.finding(TABLE).verdict().words());
    bench.write("smoke,09:06,internal temperature,,145.0,°F");
    assertEquals("met", bench.finding(TABLE).verdict().words());
  }

  /** A log written to the minute may have begun its run a minute later than it says. */
  @ParameterizedTest
  @CsvSource({"09:03, not met", "09:04, not shown", "09:05, met"})
  void a_time_written_to_the_minute_counts_at_its_worse_end(String end, String verdict) {
    Bench bench =
        smoked(TABLE)
            .core("P1", "LG-0", "08:00..08:59/60 40>110; 09:00.." + end + "/60 145.0; 09:20 90");
    assertEquals(verdict, bench.finding(TABLE).verdict().words());
  }

  @Test
  void what_only_the_curve_as_written_meets_is_printed_beside_what_is_shown() {
    Finding finding =
        smoked(TABLE)
            .core("P1", "LG-0", "08:00..08:59/60 40>110; 09:00..09:04/60 145.0; 09:20 90")
            .finding(TABLE);
    assertEquals(
        "only the curve as written meets a row (4 min at 145 °F); with the instrument's error and"
            + " the seconds that nobody wrote against the lot none is met",
        reasons(finding));
    assertEquals("3 min", finding.measured().orElseThrow().value().shown());
  }

  @Test
  void each_probe_is_judged_alone_and_the_worst_counts() {
    String hot = "08:00:00..08:59:00/60 40>110; 09:00:00..09:30:00/60 150.0";
    String cold = "08:00:00..08:59:00/60 40>110; 09:00:00..09:30:00/60 135.0";
    Finding finding = smoked(TABLE).core("P1", "LG-0", hot).core("P2", "LG-0", cold).finding(TABLE);
    assertEquals("not met", finding.verdict().words());
    assertTrue(reasons(finding).startsWith("P2"), reasons(finding));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        // us-retail, Food Code 3-401.11(A)(2) and (A)(1); published rows
        "us-retail.fc22.3-401.11-a-1.cooking | dry | met     | 09:00:00..09:00:15/5 145.0",
        "us-retail.fc22.3-401.11-a-1.cooking | dry | not met | 09:00:00..09:00:10/5 145.0",
        "us-retail.fc22.3-401.11-a-1.cooking | dry | not met | 09:00:00..09:00:15/5 144.9",
        "us-retail.fc22.3-401.11-a-2.cooking | pumped | met     | 09:00:00..09:00:17/1 155.0",
        "us-retail.fc22.3-401.11-a-2.cooking | pumped | not met | 09:00:00..09:00:16/1 155.0",
        "us-retail.fc22.3-401.11-a-2.cooking | pumped | met     | 09:00:00..09:03:00/10 145.0",
        "us-retail.fc22.3-401.11-a-2.cooking | pumped | not met | 09:00:00..09:02:50/10 145.0",
        "us-retail.fc22.3-401.11-a-2.cooking | pumped | met     | 09:00:00..09:01:00/10 150.0",
        "us-retail.fc22.3-401.11-a-2.cooking | pumped | not met | 09:00:00..09:00:50/10 150.0",
        // Food Code 3-401.11(B), whole roasts
        "us-retail.fc22.3-401.11-b.roast | dry | met     | 09:00:00..10:52:00/60 130.0",
        "us-retail.fc22.3-401.11-b.roast | dry | not met | 09:00:00..10:51:00/60 130.0",
        "us-retail.fc22.3-401.11-b.roast | dry | not met | 09:00:00..10:52:00/60 129.9",
        "us-retail.fc22.3-401.11-b.roast | dry | met     | 09:00:00..09:04:00/60 145.0",
        "us-retail.fc22.3-401.11-b.roast | dry | not met | 09:00:00..09:03:00/60 145.0",
        "us-retail.fc22.3-401.11-b.roast | dry | met     | 09:00:00..09:00:14/1 157.0",
        "us-retail.fc22.3-401.11-b.roast | dry | not met | 09:00:00..09:00:13/1 157.0",
        "us-retail.fc22.3-401.11-b.roast | dry | met     | 09:00:00..09:00:10/10 158.0",
        "us-retail.fc22.3-401.11-b.roast | dry | not met | 09:00:00..09:00:10/10 156.9",
        // FSIS-GD-2021-14, Table 2, 7-log
        "us.a21.table-2.lethality-7 | dry | met     | 09:00:00..09:15:00/60 139.0",
        "us.a21.table-2.lethality-7 | dry | not met | 09:00:00..09:14:00/60 139.0",
        "us.a21.table-2.lethality-7 | dry | met     | 09:00:00..09:00:15/1 157.0",
        "us.a21.table-2.lethality-7 | dry | not met | 09:00:00..09:00:14/1 157.0",
        // Table 6, 5-log, which the plan must confirm
        "us.a21.table-6.lethality-5 | dry | met     | 09:00:00..09:03:00/60 145.0",
        "us.a21.table-6.lethality-5 | dry | not met | 09:00:00..09:02:00/60 145.0",
        // former 9 CFR 318.10(c)(1), second-hand
        "us.318.10-c-1.trichina | dry | met     | 09:00:00..10:00:00/60 128.0",
        "us.318.10-c-1.trichina | dry | not met | 09:00:00..09:59:00/60 128.0",
      })
  void other_tables_are_judged_alike(String limit, String method, String verdict, String run) {
    Bench bench =
        smoked(limit)
            .product("cureMethod", "\"" + method + "\"")
            .product("cut", limit.endsWith("roast") ? "\"ham\"" : "\"belly\"")
            .core("P1", "LG-0", "08:00:00..08:59:00/60 40>110; " + run + "; 10:53:00 90");
    Verdict found = bench.finding(limit).verdict();
    boolean doubted = limit.matches(".*(trichina|lethality-5)") && found == Verdict.NOT_SHOWN;
    assertEquals(verdict, doubted ? "met" : found.words());
  }

  @ParameterizedTest
  @CsvSource({"09:03, pending", "13:00, not met"})
  void while_the_smoke_runs_a_short_run_is_pending(String at, String verdict) {
    Bench bench =
        smoked(TABLE)
            .core("P1", "LG-0", "08:00:00..08:59:00/60 40>110; 09:00:00..09:02:00/60 145.0");
    assertEquals(verdict, Bench.found(bench.judge(at), TABLE).verdict().words());
  }

  /** What was read before and after the heat is no peak of it. */
  @Test
  void a_miss_tells_the_peak_in_the_heat_and_where_it_was_read() {
    Finding finding =
        smoked(TABLE)
            .core("P1", "LG-A", "07:00:00 200; 09:00:00 120.4; 10:00:00 120.4; 12:00:01 200")
            .finding(TABLE);
    assertEquals(
        "P1: short on every row; it peaks at 120.4 °F, nearest is 112 min at 130 °F",
        reasons(finding));
    assertEquals("P1 − 0.5 °F at or above 130 °F: 0 min in one run", formulas(finding));
    assertEquals(
        List.of("2026-02-24/p1-log.csv:3:P1"),
        finding.evidence().stream().map(Object::toString).toList());
  }

  @Test
  void a_core_that_was_read_after_the_heat_only_shows_no_reading_in_it() {
    Finding finding = smoked(TABLE).core("P1", "LG-0", "12:00:01 200; 13:00:00 100").finding(TABLE);
    assertEquals(
        "P1: short on every row; no reading in the heat, nearest is 112 min at 130 °F",
        reasons(finding));
    assertEquals(List.of(), finding.evidence());
  }

  /** The peak at the very end of the heat counts to it. */
  @ParameterizedTest
  @CsvSource({"08:00:00, 120.4", "12:00:00, 120.4", "12:00:01, 100"})
  void the_ends_of_the_heat_belong_to_it(String at, String peak) {
    String other =
        at.startsWith("08") ? at + " 120.4; 10:00:00 100" : "10:00:00 100; " + at + " 120.4";
    Finding finding = smoked(TABLE).core("P1", "LG-0", other).finding(TABLE);
    assertTrue(reasons(finding).contains("it peaks at " + peak + " °F"), reasons(finding));
  }

  @Test
  void without_a_reading_nothing_is_shown() {
    assertEquals("not shown", smoked(TABLE).finding(TABLE).verdict().words());
    assertEquals("no internal temperature on record", reasons(smoked(TABLE).finding(TABLE)));
  }

  @Test
  void the_finding_names_the_rows_value_and_its_evidence() {
    Finding finding =
        smoked(TABLE)
            .core(
                "P1",
                "LG-A",
                "08:00:00..08:59:00/60 40>110; 09:00:00..09:06:00/60 145.5; 09:07:00 90")
            .finding(TABLE);
    Measured measured = finding.measured().orElseThrow();
    assertEquals("time at or above 145 °F", measured.quantity().in(Language.ENGLISH));
    assertEquals("6 min", measured.value().shown());
    assertEquals("2 min", measured.margin().shown());
    assertEquals(
        "P1 − 0.5 °F at or above 145 °F: 6 min in one run, from 09:00 to 09:06", formulas(finding));
    assertEquals(
        List.of("2026-02-24/p1-log.csv:62:P1", "2026-02-24/p1-log.csv:68:P1"),
        finding.evidence().stream().map(Object::toString).toList());
  }
}

package org.flitchbook.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.flitchbook.Golden;
import org.flitchbook.input.Fault;
import org.flitchbook.input.Severity;
import org.flitchbook.input.SourceFile;
import org.flitchbook.practice.ToolPractice;
import org.flitchbook.reading.Day;
import org.flitchbook.reading.Hand;
import org.flitchbook.reading.Readings;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What is seen in logs about which nothing is known, and what is asked about them. */
final class LookTest {

  private static final Path LOGS =
      Path.of("src", "test", "resources", "org", "flitchbook", "cli", "look");

  @TempDir private Path folder;

  @TestFactory
  Stream<DynamicTest> what_is_said_of_a_log() throws IOException {
    return logs()
        .map(
            log ->
                DynamicTest.dynamicTest(
                    log,
                    () -> Golden.check("cli/look/" + log + ".out", look(log).expect(0).out())));
  }

  @Test
  void the_same_is_said_to_programs() {
    Golden.check(
        "cli/look/oddities.csv.json",
        Ran.of("look", "--json", LOGS.resolve("oddities.csv")).expect(0).out());
  }

  private static Stream<String> logs() throws IOException {
    try (Stream<Path> files = Files.list(LOGS)) {
      return files
          .map(file -> String.valueOf(file.getFileName()))
          .filter(name -> name.endsWith(".csv"))
          .sorted()
          .toList()
          .stream();
    }
  }

  private static Ran look(String log) {
    return Ran.of("look", LOGS.resolve(log));
  }

  private static String entry(String log) {
    String out = look(log).out();
    return out.substring(out.indexOf("\n{") + 1);
  }

  /** Nothing is read by an entry that nobody has looked at. */
  @TestFactory
  Stream<DynamicTest> a_proposed_entry_is_JSON_and_is_refused_while_a_question_stands()
      throws IOException {
    return logs().map(log -> DynamicTest.dynamicTest(log, () -> refused(log)));
  }

  private static final Map<String, Long> QUESTIONS =
      Map.of(
          "autumn.csv", 10L,
          "elapsed.csv", 11L,
          "minutes.csv", 7L,
          "newest-first.csv", 8L,
          "no-halves.csv", 7L,
          "oddities.csv", 13L,
          "run.csv", 12L,
          "semicolons.csv", 9L,
          "serial.csv", 7L,
          "unix.csv", 5L);

  private static void refused(String log) throws IOException {
    JsonNode tree = Ran.json(entry(log));
    assertEquals(log, tree.at("/logs/0/files").asText());
    long questions = Stream.of(entry(log).split("\" : \"\\? |\" : \\[ \"\\? ", -1)).count() - 1;
    List<Fault> asked =
        read(log, entry(log)).faults().stream().filter(f -> f.rule().equals("question")).toList();
    assertEquals(questions, asked.size());
    assertEquals(QUESTIONS.get(log), questions, entry(log));
    assertTrue(asked.stream().allMatch(fault -> fault.is(Severity.BROKEN)));
  }

  private static Day read(String log, String logs) throws IOException {
    List<SourceFile> files =
        List.of(
            SourceFile.of("2026-12-30/logs.json", logs.getBytes(StandardCharsets.UTF_8)),
            SourceFile.of("2026-12-30/" + log, Files.readAllBytes(LOGS.resolve(log))));
    Hand hand = new Hand(ZoneId.of("America/New_York"), '.', ToolPractice.get());
    return Readings.read(LocalDate.of(2026, 12, 30), files, hand);
  }

  /** With its questions answered an entry reads the log. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          autumn.csv       |                       | 801
          semicolons.csv   | dd.MM.yyyy HH:mm:ss   | 12
          oddities.csv     | M/d/yyyy h:mm:ss a    | 15
          newest-first.csv |                       | 10
          elapsed.csv      |                       | 10
          unix.csv         |                       | 10
          serial.csv       |                       | 10
          minutes.csv      | yy-MM-dd HH:mm        | 18
          run.csv          |                       | 8
          """)
  void an_answered_entry_reads_the_log(String log, String pattern, int rows) throws IOException {
    String answered =
        entry(log)
            .replaceAll("\"\\? the clock's zone[^\"]*\"", "\"America/New_York\"")
            .replaceAll("\"\\? the logger[^\"]*\"", "\"LG-A\"")
            .replaceAll("\"\\? internal[^\"]*\"", "\"internal temperature\"")
            .replaceAll("\"\\? °F or[^\"]*\"", "\"°F\"")
            .replaceAll("\"\\? the probe's name\"", "\"P1\"")
            .replaceAll("\"\\? the lot(?:[^\"\\\\]|\\\\.)*\"", "\"A1\"")
            .replaceAll("\"\\? the place's[^\"]*\"", "\"F1\"")
            .replaceAll("\"\\? when it[^\"]*\"", "\"2026-02-03T08:02:00\"")
            .replaceAll("\"\\? h:mm:ss[^\"]*\"", "\"h:mm:ss\"")
            .replaceAll("\"\\? 1899[^\"]*\"", "\"1899-12-30\"")
            .replaceAll("\"\\? [^\"]*\"", "\"" + pattern + "\"");
    assertFalse(answered.contains("\"? "), answered);
    Day day = read(log, answered);
    assertEquals(
        List.of(),
        day.faults().stream().filter(f -> f.is(Severity.BROKEN) || f.is(Severity.STOP)).toList());
    assertEquals(rows, day.files().get(1).used(), day.faults().toString());
  }

  @Test
  void what_is_no_file_is_wrong_use() {
    Ran missing = Ran.of("look", folder.resolve("none.csv")).expect(2);
    assertEquals(
        "flitchbook: there is no file " + folder.resolve("none.csv") + "\n", missing.err());
    Ran directory = Ran.of("look", folder).expect(2);
    assertEquals("flitchbook: " + folder + " is a folder; name a probe log\n", directory.err());
  }

  /** Each is told in one line, and nothing is proposed. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          ''                                 | x.csv: found an empty file, expected a line of columns and rows under it
          '\\n\\n'                           | x.csv: found no rows of times and numbers, expected a log as the logger exports it, parted by comma, semicolon or tab
          'a,b\\nc,d\\n'                     | x.csv: found no rows of times and numbers, expected a log as the logger exports it, parted by comma, semicolon or tab
          'Dear Maud,\\nthe log, as asked.\\n' | x.csv: found no rows of times and numbers, expected a log as the logger exports it, parted by comma, semicolon or tab
          '2026-02-03 08:02:00\\n2026-02-03 08:03:00\\n' | x.csv: found no rows of times and numbers, expected a log as the logger exports it, parted by comma, semicolon or tab
          'PNG\\0\\0\\0\\rIHDR'              | x.csv:1: found a NUL byte, as in a file of the logger's own, expected text: choose CSV where the log is exported
          """)
  void what_is_no_log_is_refused(String content, String said) throws IOException {
    Path file = folder.resolve("x.csv");
    Files.writeString(file, content.replace("\\n", "\n").replace("\\r", "\r").replace("\\0", "\0"));
    Ran ran = Ran.of("look", file).expect(3);
    assertEquals(said + "\nNothing was judged and nothing was written.\n", ran.err());
    assertEquals("", ran.out());
  }

  @ParameterizedTest
  @ValueSource(ints = {0x81, 0x8D})
  void bytes_that_are_no_text_are_refused(int letter) throws IOException {
    Path file = folder.resolve("x.csv");
    Files.write(file, new byte[] {'T', ',', 'P', '\n', '1', ',', (byte) letter, '\n'});
    assertEquals(
        """
        x.csv:2: found bytes that are no text, expected UTF-8 or Windows-1252
        Nothing was judged and nothing was written.
        """,
        Ran.of("look", file).expect(3).err());
  }

  @Test
  void a_file_above_the_bound_is_refused() throws IOException {
    Path file = folder.resolve("x.csv");
    BadInputTest.sparse(file, 129L << 20);
    assertEquals(
        """
        x.csv: found 129 MB, expected at most 128 MB; cut the log by day
        Nothing was judged and nothing was written.
        """,
        Ran.of("look", file).expect(3).err());
  }

  @Test
  void a_quote_in_the_lines_before_the_heading_is_passed_over() throws IOException {
    Path file = folder.resolve("x.csv");
    Files.writeString(file, "\"Recorder\" 7\n\nTime,P1\n2026-02-24 08:02,1\n2026-02-24 08:03,2\n");
    assertEquals(2, Ran.of("look", "--json", file).expect(0).json().at("/logs/0/skip").asInt());
  }

  @Test
  void a_date_and_a_time_that_never_stand_in_one_row_are_asked_about() throws IOException {
    Path file = folder.resolve("x.csv");
    Files.writeString(file, "Date,Time,P1\n2026-02-24,,1\n,08:03,2\n");
    assertEquals(
        "? dates without a time of day can't be read",
        Ran.of("look", "--json", file).expect(0).json().at("/logs/0/time/pattern").asText());
  }

  @Test
  void UTF_16_without_a_mark_is_seen() throws IOException {
    Path file = folder.resolve("x.csv");
    String log = "Time,P1 (°F)\n2026-02-24 08:02,1\n2026-02-24 08:03,2\n";
    Files.write(file, log.getBytes(StandardCharsets.UTF_16BE));
    JsonNode seen = Ran.of("look", "--json", file).expect(0).json();
    assertEquals("utf-16be", seen.at("/logs/0/encoding").asText());
    assertEquals("°F", seen.at("/logs/0/columns/0/unit").asText());
  }

  /** A day's folder of a book, which holds a log and speaks the language of its plan. */
  private Path logIn(String plan) throws IOException {
    Files.writeString(folder.resolve("plan.json"), plan);
    Path day = Files.createDirectory(folder.resolve("2026-02-24"));
    return Files.copy(LOGS.resolve("oddities.csv"), day.resolve("oddities.csv"));
  }

  @Test
  void a_log_in_a_book_is_looked_at_in_the_language_of_the_book() throws IOException {
    String plan = Files.readString(Path.of("demo-data", "wrenfold", "plan.json"));
    Path log = logIn(plan.replace("\"paper\"", "\"language\": \"es\", \"paper\""));
    Golden.check("cli/look/oddities.csv.es", Ran.of("look", log).expect(0).out());
    JsonNode odd = Ran.of("look", "--json", log).expect(0).json().at("/odd/0");
    assertEquals("otra vez el encabezado", odd.get("found").asText());
    assertEquals("look.odd.heading", odd.get("id").asText());
  }

  @Test
  void a_log_beside_a_broken_plan_is_looked_at_in_English() throws IOException {
    assertEquals(look("oddities.csv").out(), Ran.of("look", logIn("{")).expect(0).out());
  }
}

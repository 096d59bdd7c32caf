package org.flitchbook.change;

import static java.nio.charset.StandardCharsets.UTF_16LE;
import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.flitchbook.input.SourceFile;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** What is said of two versions of a file. */
final class ChangesTest {

  private static final String SHEET =
      """
      lot,time,what,item,value,unit,by,instrument,note
      26047-B1,2026-02-24 09:00,into chill,fridge,,,MA,,
      26047-B1,2026-02-24 14:05,internal temperature,P2,68.3,F,MA,HT-3,
      26047-B1,2026-02-24 15:00,weight,,4222,g,MA,S-10,
      """;

  private static final String PLAN =
      """
      {"version": "3", "people": [
        {"initials": "MA", "name": "Maud Achterberg"},
        {"initials": "IQ", "name": "Ismet Quill"}],
       "weights": [1, 2]}
      """;

  private static final String LOG =
      "time,P1\n"
          + IntStream.range(0, 60)
              .mapToObj("2026-02-24 09:%02d,130.1%n"::formatted)
              .collect(Collectors.joining())
              .replace("\r", "");

  /** A row: a file before and now, and each change as it is said, without the file's name. */
  private record Case(String name, String file, String before, String now, List<String> said) {}

  private static Case sheet(String name, String now, String... said) {
    return new Case(name, "chill.csv", SHEET, now, List.of(said));
  }

  private static Case plan(String name, String now, String... said) {
    return new Case(name, "plan.json", PLAN, now, List.of(said));
  }

  private static Case log(String name, String now, String... said) {
    return new Case(name, "probes.csv", LOG, now, List.of(said));
  }

  @TestFactory
  Stream<DynamicTest> a_sheet_is_compared_row_by_row() {
    String row = "26047-B1,2026-02-24 15:00,weight,,4222,g,MA,S-10,\n";
    return tests(
        sheet("nothing", SHEET),
        sheet(
            "a value",
            SHEET.replace("4222", "4223"),
            ":4:value: changed from: 26047-B1, 2026-02-24 15:00, weight, 4222, g, MA, S-10; to:"
                + " 26047-B1, 2026-02-24 15:00, weight, 4223, g, MA, S-10"),
        sheet(
            "two cells, one of them emptied",
            SHEET.replace("68.3,F,MA,HT-3", "86.3,F,MA,"),
            ":3:value, instrument: changed from: 26047-B1, 2026-02-24 14:05, internal temperature,"
                + " P2, 68.3, F, MA, HT-3; to: 26047-B1, 2026-02-24 14:05, internal temperature,"
                + " P2, 86.3, F, MA"),
        sheet(
            "a row added at the end",
            SHEET + "26047-B1,2026-02-24 16:00,out of chill,,,,MA,,\n",
            ":5: added: 26047-B1, 2026-02-24 16:00, out of chill, MA"),
        sheet(
            "a row added before others",
            SHEET.replace(row, "26047-B1,2026-02-24 14:30,out of chill,,,,MA,,\n" + row),
            ":4: added: 26047-B1, 2026-02-24 14:30, out of chill, MA"),
        sheet(
            "a row taken out",
            SHEET.replace(row, ""),
            ":4: removed: 26047-B1, 2026-02-24 15:00, weight, 4222, g, MA, S-10"),
        sheet(
            "another row in its place",
            SHEET.replace(row, "26048-J1,2026-02-24 16:00,out of chill,,,,IQ,,\n"),
            ":4: removed: 26047-B1, 2026-02-24 15:00, weight, 4222, g, MA, S-10",
            ":4: added: 26048-J1, 2026-02-24 16:00, out of chill, IQ"),
        sheet(
            "a changed row that moved down",
            SHEET
                .replace(row, "26048-J1,2026-02-24 14:30,surface,,tacky,,IQ,,\n" + row)
                .replace("4222", "4223"),
            ":4: added: 26048-J1, 2026-02-24 14:30, surface, tacky, IQ",
            ":5:value (was line 4): changed from: 26047-B1, 2026-02-24 15:00, weight, 4222, g, MA,"
                + " S-10; to: 26047-B1, 2026-02-24 15:00, weight, 4223, g, MA, S-10"),
        sheet(
            "line ends of another kind",
            SHEET.replace("\n", "\r\n"),
            ": changed from: a file of 216 bytes, SHA-256 HASH …; to: a file of 220 bytes, SHA-256"
                + " HASH …"));
  }

  private static Stream<DynamicTest> tests(Case... rows) {
    return Stream.of(rows)
        .map(row -> DynamicTest.dynamicTest(row.name(), () -> assertEquals(row.said(), said(row))));
  }

  private static List<String> said(Case row) {
    return Changes.between(
            List.of(file(row.file(), row.before())), List.of(file(row.file(), row.now())))
        .stream()
        .map(change -> change.toString().substring(row.file().length()))
        .map(ChangesTest::hidden)
        .toList();
  }

  private static String hidden(String text) {
    return text.replaceAll("[0-9a-f]{12}", "HASH");
  }

  private static SourceFile file(String name, String text) {
    return SourceFile.of(name, text.getBytes(UTF_8));
  }

  @TestFactory
  Stream<DynamicTest> a_plan_is_compared_key_by_key() {
    return tests(
        plan(
            "a text", PLAN.replace("\"3\"", "\"4\""), ":1:version: changed from: \"3\"; to: \"4\""),
        plan(
            "white space",
            PLAN.replace(": ", ":"),
            ": changed from: a file of 144 bytes, SHA-256 HASH …; to: a file of 137 bytes, SHA-256"
                + " HASH …"),
        plan(
            "one more in a list of named ones",
            PLAN.replace("[\n  {", "[\n  {\"initials\": \"NN\", \"name\": \"Nona Nye\"},\n  {"),
            ":2:people[NN].initials: added: \"NN\"",
            ":2:people[NN].name: added: \"Nona Nye\""),
        plan(
            "a list's item",
            PLAN.replace("[1, 2]", "[1, 3, 4]"),
            ":4:weights[1]: changed from: 2; to: 3",
            ":4:weights[2]: added: 4"),
        plan(
            "the same number",
            PLAN.replace("[1, 2]", "[1, 2.0]"),
            ": changed from: a file of 144 bytes, SHA-256 HASH …; to: a file of 146 bytes, SHA-256"
                + " HASH …"),
        plan(
            "a key taken out",
            PLAN.replace("\"version\": \"3\", ", ""),
            ":1:version: removed: \"3\""));
  }

  @TestFactory
  Stream<DynamicTest> a_log_is_told_by_its_first_and_last_changed_row() {
    return tests(
        log(
            "one row",
            LOG.replace("09:07,130.1", "09:07,131.0"),
            ":9: changed from: 2026-02-24 09:07,130.1; to: 2026-02-24 09:07,131.0"),
        log(
            "two rows apart",
            LOG.replace("09:07,130.1", "09:07,131.0").replace("09:20,130.1", "09:20,131.1"),
            ":9: changed from: 14 rows, the first: 2026-02-24 09:07,130.1; the last: 2026-02-24"
                + " 09:20,130.1; to: 14 rows, the first: 2026-02-24 09:07,131.0; the last:"
                + " 2026-02-24 09:20,131.1"),
        log(
            "rows added at the end",
            LOG + "2026-02-24 10:00,129\n2026-02-24 10:01,128\n",
            ":62: added: 2 rows, the first: 2026-02-24 10:00,129; the last: 2026-02-24 10:01,128"),
        log(
            "a row taken out",
            LOG.replace("2026-02-24 09:30,130.1\n", ""),
            ":32: removed: 2026-02-24 09:30,130.1"),
        log(
            "cut off in a row",
            LOG.substring(0, LOG.length() - 4),
            ":61: changed from: 2026-02-24 09:59,130.1; to: 2026-02-24 09:59,13"),
        log(
            "all gone",
            "",
            ":1: removed: 61 rows, the first: time,P1; the last: 2026-02-24 09:59,130.1"));
  }

  @Test
  void a_log_in_utf_16_is_shown_in_letters() {
    List<Change> changes =
        Changes.between(
            List.of(SourceFile.of("a.csv", LOG.getBytes(UTF_16LE))),
            List.of(
                SourceFile.of(
                    "a.csv", LOG.replace("09:07,130.1", "09:07,131.0").getBytes(UTF_16LE))));
    assertEquals(
        "a.csv:9: changed from: 2026-02-24 09:07,130.1; to: 2026-02-24 09:07,131.0",
        changes.get(0).toString());
  }

  @Test
  void files_that_come_and_go_are_told() {
    assertEquals(
        List.of(
            "2026-02-24/a.csv: removed: a file of 1388 bytes, SHA-256 HASH …",
            "2026-02-24/chill.csv:2: added: 26047-B1, 2026-02-24 09:00, into chill, fridge, MA",
            "2026-02-24/chill.csv:3: added: 26047-B1, 2026-02-24 14:05, internal temperature, P2,"
                + " 68.3, F, MA, HT-3",
            "2026-02-24/chill.csv:4: added: 26047-B1, 2026-02-24 15:00, weight, 4222, g, MA, S-10",
            "2026-02-24/note.txt: added: a file of 3 bytes, SHA-256 HASH …",
            "2026-02-24/soak.csv: removed: a file of 49 bytes, SHA-256 HASH …"),
        Changes.between(
                List.of(
                    file("2026-02-24/soak.csv", SHEET.substring(0, SHEET.indexOf("26047"))),
                    file("2026-02-24/a.csv", LOG)),
                List.of(file("2026-02-24/chill.csv", SHEET), file("2026-02-24/note.txt", "dry")))
            .stream()
            .map(change -> hidden(change.toString()))
            .toList());
  }
}

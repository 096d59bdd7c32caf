package org.flitchbook.cli;

import static org.junit.jupiter.api.Assertions.assertAll;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.flitchbook.SeededRun;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.io.TempDir;

/**
 * Closes a spoilt copy of the example book into a folder: what is said, with which exit status, and
 * what is written. {@code ROOT} in a text stands for the folder that holds book and records.
 */
final class BadInputTest {

  private static final String CURE = "2026-02-16/cure.csv";
  private static final String GREEN = "green weight,,4812,g,MA,S-10,";
  private static final String SALT = "curing salt,C1-7741,11.5,g,MA,S-01,";

  /** What a stack trace, or the name of a Java class, looks like. */
  private static final Pattern OF_THE_PROGRAM =
      Pattern.compile("Exception|\\bat (org|java)\\.|java\\.|\\bnull\\b|Optional|@[0-9a-f]{5}");

  private static final List<String> RECORDS =
      List.of(
          "26047-B1.json",
          "26047-B1.pdf",
          "bundle.zip",
          "day.json",
          "day.pdf",
          "deviations.json",
          "deviations.pdf");

  /** The rows that are closed by default; the others are judged, and closed in the whole run. */
  private static final Set<String> CLOSED =
      Set.of("an unknown unit", "a lot named like a path", "a heading alone");

  @TempDir private Path folder;

  /** Something done to a book. */
  @FunctionalInterface
  private interface Spoil {
    void spoil(Path book) throws IOException;
  }

  /**
   * A row of the tables.
   *
   * @param said the whole of standard error; of a row that is judged, a line of standard output
   */
  private record Case(String name, Spoil spoil, String said) {}

  private static Case edit(String name, String old, String now, String said) {
    return new Case(name, book -> Tree.edit(book.resolve(CURE), old, now), said);
  }

  private static Case file(String name, String file, String text, String said) {
    return new Case(name, book -> Files.writeString(book.resolve(file), text), said);
  }

  private static String head() {
    return "lot,time,what,item,value,unit,by,instrument,note\n";
  }

  /** A row that can't be used stops its lot; the records are written all the same. */
  @TestFactory
  Stream<DynamicTest> a_row_that_cannot_be_used_is_told_and_stops_its_lot() {
    return Stream.of(
            edit(
                "a decimal comma in a file with commas",
                "4812,g,MA,S-10,",
                "4812,5,g,MA,S-10",
                "– stop (unit): 2026-02-16/cure.csv:6:unit: found 5, expected g, kg, oz or lb"),
            edit(
                "a quoted decimal comma",
                "4812",
                "\"4812,5\"",
                "– stop (value): 2026-02-16/cure.csv:6:value: found 4812,5, expected a mass, digits"
                    + " with a decimal point; a decimal comma is stated in the plan"),
            edit(
                "an unknown unit",
                GREEN,
                "green weight,,4812,stone,MA,S-10,",
                "– stop (unit): 2026-02-16/cure.csv:6:unit: found stone, expected g, kg, oz or lb"),
            edit(
                "no unit",
                GREEN,
                "green weight,,4812,,MA,S-10,",
                "– stop (unit): 2026-02-16/cure.csv:6:unit: found nothing, expected g, kg, oz or"
                    + " lb"),
            edit(
                "a time without a date",
                "2026-02-16 09:12",
                "09:12",
                "– stop (time): 2026-02-16/cure.csv:6:time: found 09:12, a time without a date,"
                    + " expected 2026-02-16 09:05 or the like"),
            edit(
                "initials that the plan lacks",
                GREEN,
                "green weight,,4812,g,XX,S-10,",
                "– stop (initials): 2026-02-16/cure.csv:6:by: found XX, expected initials in the"
                    + " plan: MA, IQ"),
            edit(
                "an instrument that the plan lacks",
                GREEN,
                "green weight,,4812,g,MA,S-99,",
                "– stop (instrument): 2026-02-16/cure.csv:6:instrument: found S-99, expected an"
                    + " instrument of the plan: S-10, S-01, S-001, HT-3, LG-A"),
            edit(
                "spoons of curing salt",
                SALT,
                "curing salt,C1-7741,2,tsp,MA,S-01,",
                "– stop (spoons): 2026-02-16/cure.csv:8:unit: found 2 tsp of curing salt, expected"
                    + " a weight in g, kg, oz or lb: one teaspoon of the same curing salt weighs"
                    + " anything from 4.2 to 7.1 g"),
            edit(
                "a lot named like a path",
                SALT,
                SALT + "\n../../x,2026-02-16 09:30,turned,,,,MA,,",
                "stop (lot): 2026-02-16/cure.csv:9:lot: found ../../x, expected letters, digits, -"
                    + " and _ only, 32 at most"),
            file(
                "a heading alone",
                CURE,
                head(),
                "note (no rows): 2026-02-16/cure.csv:1: found a heading alone, expected rows under"
                    + " the heading"))
        .map(row -> DynamicTest.dynamicTest(row.name(), () -> judged(row)));
  }

  private void judged(Case row) throws IOException {
    Path root = fresh();
    Path book = spoilt(root, row);
    Map<String, String> before = Tree.hashes(root);
    Path out = root.resolve("out");
    boolean closes = SeededRun.isWhole() || CLOSED.contains(row.name());
    Object[] close = {"close", book.resolve(Tree.DAY), "--out", out};
    Ran ran = closes ? Ran.of(close) : Ran.of("check", book.resolve(Tree.DAY));
    List<String> records = closes ? RECORDS : List.of();
    assertAll(
        () -> assertEquals(1, ran.status(), ran.out() + ran.err()),
        () -> assertEquals("", ran.err()),
        () -> assertTrue(ran.flat().contains(" " + row.said() + " "), ran.out()),
        () -> assertFalse(OF_THE_PROGRAM.matcher(ran.out()).find(), ran.out()),
        () -> assertEquals(records, Tree.names(out.resolve(Tree.DAY).resolve("r1"))),
        () -> assertEquals(records.size(), Tree.names(out).size()),
        () -> assertEquals(before, Tree.hashes(root, file -> !file.startsWith(out))));
  }

  /** A file that can't be parsed ends the job before anything is written. */
  @TestFactory
  Stream<DynamicTest> a_file_that_cannot_be_parsed_is_told_and_nothing_is_written() {
    return Stream.of(
            file(
                "an empty sheet",
                CURE,
                "",
                "2026-02-16/cure.csv: found an empty file, expected a line of columns and rows"
                    + " under it"),
            edit(
                "a missing column",
                "item,value,unit,by",
                "item,value,by",
                "2026-02-16/cure.csv:1:unit: found no column \"unit\" in lot, time, what, item,"
                    + " value, by, instrument, note, expected the columns lot, time, what, item,"
                    + " value, unit, by, instrument, note"),
            edit(
                "a quote that never closes",
                "4812",
                "\"4812",
                "2026-02-16/cure.csv:6: found a quote that never closes, expected \" at the end of"
                    + " the cell"),
            edit(
                "a NUL byte",
                "4812",
                "48\u000012",
                "2026-02-16/cure.csv:6: found a NUL byte, expected text"),
            new Case(
                "a plan cut off in the middle",
                book -> cut(book.resolve("plan.json")),
                "plan.json:17: found the end of the file inside an object, a list or a text,"
                    + " expected JSON"),
            file(
                "a plan nested 100,000 deep",
                "plan.json",
                "[".repeat(100_000),
                "plan.json:1: found nesting or a value beyond what is read (1,000 deep), expected"
                    + " JSON"),
            new Case(
                "a log of 129 MB",
                book -> sparse(book.resolve("2026-02-24/big.csv"), 129L << 20),
                "2026-02-24/big.csv: found 129 MB, expected at most 128 MB; cut the log by day"),
            new Case(
                "a line of 50 MB",
                book -> longLine(book.resolve("2026-02-24/probes-a.csv")),
                "2026-02-24/probes-a.csv:3: found more than 4 million letters in one row, expected"
                    + " a row that ends, and quotes that close"),
            new Case(
                "a folder called cure.csv",
                book -> {
                  Files.delete(book.resolve(CURE));
                  Files.createDirectory(book.resolve(CURE));
                },
                "2026-02-16/cure.csv: found a folder, expected a file that can be read, or"
                    + " nothing"),
            new Case(
                "a link to a file that is gone",
                book -> link(book.resolve("2026-02-24/smoker.csv"), "gone.csv"),
                "2026-02-24/smoker.csv: found a link that leads nowhere, expected a file that can"
                    + " be read, or nothing"),
            new Case(
                "a link to itself",
                book -> link(book.resolve("2026-02-24/loop"), "loop"),
                "2026-02-24/loop: found a link that leads nowhere, expected a file that can be"
                    + " read, or nothing"),
            file(
                "a file in the place of a day's folder",
                "2026-02-15",
                "",
                "2026-02-15: found a file, expected the folder of that day"))
        .map(row -> DynamicTest.dynamicTest(row.name(), () -> broken(row)));
  }

  static void sparse(Path file, long size) throws IOException {
    try (FileChannel channel =
        FileChannel.open(file, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE)) {
      channel.write(ByteBuffer.wrap(new byte[] {'a'}), size - 1);
    }
  }

  private static void longLine(Path log) throws IOException {
    byte[] cell = new byte[50_000_000];
    Arrays.fill(cell, (byte) '1');
    Files.writeString(log, "Time,P1,Air\n2026-02-24 08:02:00,39.2,70\n2026-02-24 08:03:00,");
    Files.write(log, cell, StandardOpenOption.APPEND);
  }

  private static void cut(Path plan) throws IOException {
    Files.writeString(plan, Files.readString(plan).substring(0, 900));
  }

  private static void link(Path link, String target) throws IOException {
    Files.createSymbolicLink(link, Path.of(target));
  }

  private void broken(Case row) throws IOException {
    Path root = fresh();
    Path book = spoilt(root, row);
    Path out = root.resolve("out");
    Ran ran = Ran.of("close", book.resolve(Tree.DAY), "--out", out);
    refused(3, row.said() + "\nNothing was judged and nothing was written.", ran);
    assertFalse(Files.exists(out), "something was written");
  }

  private static void refused(int status, String said, Ran ran) {
    assertAll(
        () -> assertEquals(said + "\n", ran.err()),
        () -> assertEquals(status, ran.status()),
        () -> assertEquals("", ran.out()));
  }

  @TestFactory
  Stream<DynamicTest> a_folder_in_a_day_is_none_of_its_files_even_if_it_leads_back() {
    return Stream.of(
            new Case("a folder", book -> Files.createDirectory(book.resolve("2026-02-24/p")), ""),
            new Case("a loop", book -> link(book.resolve("2026-02-24/loop"), "."), ""),
            new Case("a loop to the book", book -> link(book.resolve("2026-02-24/b"), ".."), ""))
        .map(row -> DynamicTest.dynamicTest(row.name(), () -> ignored(row)));
  }

  private void ignored(Case row) throws IOException {
    Path root = fresh();
    String before = Ran.of("check", Tree.example(root)).expect(0).out();
    row.spoil().spoil(root.resolve("book"));
    assertEquals(before, Ran.of("check", root.resolve("book")).expect(0).out());
  }

  /** A row of the table of wrong use: the words after the program's name, split at spaces. */
  private record Use(String words, String said) {}

  @TestFactory
  Stream<DynamicTest> wrong_use_is_told_in_one_line_and_nothing_is_written() {
    return Stream.of(
            new Use("close ROOT/none/2026-02-24", "there is no folder ROOT/none/2026-02-24"),
            new Use("close ROOT/book/2026-03-01", "there is no folder ROOT/book/2026-03-01"),
            new Use(
                "close ROOT/book/attic",
                "ROOT/book/attic is no day's folder; its name must be a date such as 2026-02-24"),
            new Use("close ROOT/empty", "no plan.json in ROOT/empty nor in the folder above it"),
            new Use(
                "close ROOT/book/2026-02-24/logs.json",
                "ROOT/book/2026-02-24/logs.json is a file; name a day's folder or a book's"),
            new Use("close ROOT/book", "ROOT/book is a book; name one of its days' folders"),
            new Use("plan check ROOT/none", "there is no folder ROOT/none"),
            new Use(
                "close ROOT/book/2026-02-24 --out ROOT/file",
                "can't write to ROOT/file/2026-02-24: ROOT/file is a file"),
            new Use(
                "close ROOT/book/2026-02-24 --out ROOT/file/deeper",
                "can't write to ROOT/file/deeper/2026-02-24: ROOT/file is a file"),
            new Use(
                "close ROOT/book/2026-02-24 --out ROOT/book",
                "--out ROOT/book lies in the book; leave --out away to write to the book's records,"
                    + " or name a folder outside of the book"),
            new Use(
                "close ROOT/book/2026-02-24 --out ROOT/out --at soon",
                "--at \"soon\" is no time; write one such as 2026-02-24T18:00"),
            new Use(
                "close ROOT/book/2026-02-24 --out ROOT/out --at 18:00",
                "--at \"18:00\" is no time; write one such as 2026-02-24T18:00"),
            new Use(
                "close ROOT/book/2026-02-24 --out ROOT/out --at 2026-02-10T09:00",
                "--at 2026-02-10T09:00 lies before 2026-02-24, the day to be judged; write one such"
                    + " as 2026-02-24T18:00"))
        .map(use -> DynamicTest.dynamicTest(use.words(), () -> misused(use)));
  }

  private void misused(Use use) throws IOException {
    Path root = fresh();
    Files.createDirectory(Tree.example(root).resolve("attic"));
    Files.createDirectory(root.resolve("empty"));
    Files.writeString(root.resolve("file"), "in the way");
    Map<String, String> before = Tree.hashes(root);
    Ran ran = Ran.of((Object[]) use.words().replace("ROOT", root.toString()).split(" ", -1));
    refused(2, "flitchbook: " + use.said().replace("ROOT", root.toString()), ran);
    assertEquals(before, Tree.hashes(root));
    assertFalse(Files.exists(root.resolve("out")));
  }

  @TestFactory
  Stream<DynamicTest> words_that_the_program_does_not_know_are_told_with_the_usage() {
    return Stream.of(
            new Use("close", "Missing required parameter: 'DAY'\nUsage: flitchbook close "),
            new Use("close x --colour", "Unknown option: '--colour'\nUsage: flitchbook close "),
            new Use("close x y", "Unmatched argument at index 2: 'y'\nUsage: flitchbook close "),
            new Use("check x --at", "Missing required parameter for option '--at' (TIME)\nUsage:"),
            new Use("plan", "Say what to do with the plan.\n\nUsage: flitchbook plan "),
            new Use("jowl", "Unmatched argument at index 0: 'jowl'\nUsage: flitchbook "))
        .map(use -> DynamicTest.dynamicTest(use.words(), () -> unknown(use)));
  }

  private static void unknown(Use use) {
    Ran ran = Ran.of((Object[]) use.words().split(" ", -1)).expect(2);
    assertTrue(ran.err().startsWith(use.said()), ran.err());
    assertFalse(OF_THE_PROGRAM.matcher(ran.err()).find(), ran.err());
    assertEquals("", ran.out());
  }

  @TestFactory
  Stream<DynamicTest> the_folders_that_out_names_are_made() {
    return Stream.of("out", "missing/out", "a/b/c/out")
        .map(name -> DynamicTest.dynamicTest(name, () -> made(name)));
  }

  private void made(String name) throws IOException {
    Path root = fresh();
    Path out = root.resolve(name);
    Ran.of("close", Tree.example(root).resolve(Tree.DAY), "--out", out).expect(0);
    assertEquals(RECORDS, Tree.names(out.resolve(Tree.DAY).resolve("r1")));
  }

  private Path fresh() throws IOException {
    return Files.createTempDirectory(folder, "root-").toRealPath();
  }

  private static Path spoilt(Path root, Case row) throws IOException {
    Path book = Tree.example(root);
    row.spoil().spoil(book);
    return book;
  }
}

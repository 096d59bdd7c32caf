package org.flitchbook.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.function.Consumer;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.flitchbook.SeededRun;
import org.flitchbook.ledger.Ledger;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.io.TempDir;

/** What a book proves: its ledger, each file against it, and what its signatures state of it. */
final class ProveBookTest {

  private static final int STEP = SeededRun.known(10, 1);

  @TempDir private static Path shared;
  private static Path signed;

  @TempDir private Path folder;
  private Path book;

  @BeforeAll
  static void sign() {
    signed = Smokeyard.signed(shared).book;
  }

  @BeforeEach
  void copy() {
    book = Tree.copy(signed, folder.resolve("book"));
  }

  private static Ran prove(Path book, int status, String... sentences) {
    Ran ran = Ran.of("prove", book).expect(status);
    for (String each : sentences) {
      assertTrue(ran.flat().contains(each), () -> each + " is not in\n" + ran.out());
    }
    return ran;
  }

  private List<String> lines() {
    return Tree.text(Chain.file(book)).lines().toList();
  }

  private void write(List<String> lines) {
    String text = String.join("\n", lines) + "\n";
    Tree.write(book, () -> Files.writeString(Chain.file(book), text));
  }

  @Test
  void an_untouched_book_is_proved() {
    prove(
        book,
        0,
        "✓ ledger.jsonl: The ledger's 3 lines follow from each other",
        "✓ records: All 7 files of the records are as the ledger lists them.",
        "✓ What was written down is as it was when the days were closed.",
        "has as MA's, Maud Achterberg.");
    JsonNode json = Ran.of("prove", book, "--json").expect(0).json();
    assertEquals("book", json.get("proves").asText());
    assertEquals(3, json.get("ledger").get("sequence").asInt());
  }

  @TestFactory
  Stream<DynamicTest> a_changed_byte_of_any_line_of_the_ledger_is_noticed() {
    return IntStream.range(0, 3)
        .mapToObj(
            line -> DynamicTest.dynamicTest("line " + (line + 1), () -> everyByteOfLine(line)));
  }

  /** Each byte, or each tenth, by the chain itself; one of them by the command as well. */
  private void everyByteOfLine(int number) {
    byte[] ledger = Tree.bytes(Chain.file(signed));
    List<String> lines = Tree.text(Chain.file(signed)).lines().toList();
    int from = lines.stream().limit(number).mapToInt(ProveBookTest::length).sum();
    int end = from + length(lines.get(number)) - 1;
    for (int at = from; at < end; at += STEP) {
      ledger[at] ^= 1;
      assertTrue(!Ledger.read(ledger).faults().isEmpty(), "byte " + at);
      ledger[at] ^= 1;
    }
    ledger[(from + end) / 2] ^= 1;
    Path touched = Tree.copy(signed, folder.resolve("line" + number));
    Tree.write(touched, () -> Files.write(Chain.file(touched), ledger));
    prove(touched, 1, "✗ ledger.jsonl: The ledger is broken: ledger.jsonl:" + (number + 1));
  }

  private static int length(String line) {
    return line.getBytes(StandardCharsets.UTF_8).length + 1;
  }

  @Test
  void a_line_taken_out_is_noticed() {
    List<String> lines = new ArrayList<>(lines());
    lines.remove(1);
    write(lines);
    prove(book, 1, "✗ ledger.jsonl: The ledger is broken: ledger.jsonl:2");
  }

  @Test
  void two_lines_that_changed_places_are_noticed() {
    List<String> lines = new ArrayList<>(lines());
    Collections.swap(lines, 1, 2);
    write(lines);
    prove(book, 1, "✗ ledger.jsonl: The ledger is broken: ledger.jsonl:2");
  }

  /** The chain of what is left holds; the signature of the reviewer states a line that is gone. */
  @Test
  void a_ledger_cut_off_is_shorter_than_a_signature_states() {
    write(lines().subList(0, 1));
    prove(
        book,
        1,
        "✓ ledger.jsonl: The ledger's only line is whole, up to hash ",
        "The signature in \"reviewed\" states line 2 of the ledger with hash",
        "and the ledger does not have it: lines were taken out, or written again.");
  }

  @Test
  void a_ledger_that_is_gone_is_noticed() throws Exception {
    Files.delete(Chain.file(book));
    prove(
        book,
        1,
        "– ledger.jsonl: The ledger has no line yet.",
        "✗ " + Smokeyard.RECORD + ": It lies among the records, and the ledger does not list it.");
  }

  @Test
  void a_line_that_was_cut_off_is_named() {
    Tree.write(
        book,
        () -> Files.writeString(Chain.file(book), Tree.text(Chain.file(book)) + "{\"about\":"));
    prove(book, 1, "✗ ledger.jsonl: The ledger is torn: ledger.jsonl:4");
  }

  private record Touched(String name, Consumer<Path> deed, int status, String said) {}

  @TestFactory
  Stream<DynamicTest> each_file_is_held_against_the_ledger() {
    String day = "records/" + Tree.DAY + "/r1/day.json";
    return Stream.of(
            new Touched(
                "a record changed",
                in -> Tree.write(in.resolve(day), "{}"),
                1,
                "✗ " + day + ": It is not the one that line 1 of the ledger lists."),
            new Touched(
                "a record missing", in -> delete(in, day), 1, "✗ " + day + ": It is missing"),
            new Touched(
                "a record that nobody made",
                in -> Tree.write(in.resolve("records/2026-02-24/r1/26099-X1.pdf"), "%PDF"),
                1,
                "26099-X1.pdf: It lies among the records, and the ledger does not list it."),
            new Touched(
                "a sheet changed after the close",
                in -> Tree.edit(in.resolve("2026-02-16/cure.csv"), "11.5", "11.6"),
                1,
                "✗ 2026-02-16/cure.csv: It was changed since line 1 of the ledger, with no close."),
            new Touched(
                "a sheet gone",
                in -> delete(in, "2026-02-16/cure.csv"),
                1,
                "✗ 2026-02-16/cure.csv: It is gone since line 1 of the ledger"),
            new Touched(
                "a sheet added to a closed day",
                in -> Tree.write(in.resolve("2026-02-17/lab.csv"), "lot,time,what\n"),
                1,
                "✗ 2026-02-17/lab.csv: It was added after its day was closed."),
            new Touched(
                "a sheet of a day to come",
                in -> Tree.write(in.resolve("2026-02-25/cure.csv"), "lot,time,what\n"),
                0,
                "– 2026-02-25/cure.csv: Its day is not closed yet."),
            new Touched(
                "what a signature left that was cut off",
                in -> Tree.write(in.resolve("records/2026-02-24/.new-day.pdf-1"), "%PDF"),
                0,
                "A close or a signature was cut off and left it; the next one clears it away."),
            new Touched(
                "the plan", in -> Tree.edit(in.resolve("plan.json"), "Maud", "Mary"), 0, "– plan"))
        .map(each -> DynamicTest.dynamicTest(each.name(), () -> touch(each)));
  }

  private void touch(Touched touched) {
    Path copy = Tree.copy(signed, folder.resolve(touched.name()));
    touched.deed().accept(copy);
    prove(copy, touched.status(), touched.said());
  }

  private static void delete(Path book, String name) {
    Tree.write(book, () -> Files.delete(book.resolve(name)));
  }

  @Test
  void a_plan_that_cannot_be_read_is_told_with_status_3() {
    Tree.write(book.resolve("plan.json"), "{");
    Ran.of("prove", book).expect(3);
  }
}

package org.flitchbook.cli;

import static org.junit.jupiter.api.Assertions.assertAll;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.io.TempDir;

/** A day is closed again: nothing new, or a revision with its reason and what changed. */
final class ClosingAgainTest {

  private static final String WHY = "The card says 4223 g";

  @TempDir private Path folder;
  private Path book;
  private Path day;
  private Path records;

  @BeforeEach
  void copyOfClosed() {
    book = Tree.closedExample(folder);
    day = book.resolve(Tree.DAY);
    records = book.resolve("records").resolve(Tree.DAY);
  }

  private Ran amend() {
    return Ran.of("close", day, "--as", "MA", "--reason", WHY);
  }

  private void misread() {
    Tree.edit(day.resolve("chill.csv"), "4222", "4223");
  }

  @Test
  void the_first_close_tells_the_ledger_its_inputs_and_outputs() {
    JsonNode line = Chain.last(book);
    Map<String, String> inputs = Chain.texts(line.get("inputs"));
    Map<String, String> book = Tree.hashes(this.book, file -> inputs.containsKey(name(file)));
    assertAll(
        () -> assertEquals(List.of("closed r1"), Chain.events(this.book)),
        () ->
            assertEquals(
                Tree.hashes(this.book, file -> file.startsWith(records)),
                Chain.texts(line.get("outputs"))),
        () -> assertEquals(17, book.size()),
        () -> book.forEach((name, hash) -> assertEquals(hash, inputs.get(name), name)),
        () -> assertTrue(inputs.containsKey("templates/limits/us.json")),
        () -> assertEquals("2026-02-25T05:00:00Z", line.get("facts").get("judged at").asText()),
        () -> assertEquals("met", line.get("facts").get("verdict of 26047-B1").asText()));
  }

  private String name(Path file) {
    return Tree.name(book, file);
  }

  @Test
  void the_end_of_the_chain_is_told_so_that_it_can_be_kept_elsewhere() {
    misread();
    String out = amend().expect(0).out();
    String hash = Chain.last(book).get("hash").asText();
    assertTrue(out.endsWith("\nThe ledger's last line is now 2, hash " + hash + "\n"), out);
  }

  @Test
  void unchanged_inputs_are_nothing_new() {
    Map<String, String> before = Tree.hashes(book);
    Ran again = Ran.of("close", day).expect(0);
    assertTrue(
        again
            .out()
            .endsWith("\nNothing new: " + records.resolve("r1") + " holds these very records.\n"),
        again.out());
    assertEquals(before, Tree.hashes(book));
  }

  @Test
  void changed_inputs_without_a_reason_are_refused_and_nothing_is_written() {
    misread();
    Map<String, String> before = Tree.hashes(book);
    Ran refused = Ran.of("close", day).expect(2);
    assertEquals(
        "flitchbook: this day was closed as r1, and since then:\n"
            + "    2026-02-24/chill.csv:6:value: changed from: 26047-B1, 2026-02-24 18:02, weight,"
            + " 4222, g, MA, S-10; to: 26047-B1, 2026-02-24 18:02, weight, 4223, g, MA, S-10\n"
            + "Say why with --reason \"…\" and who you are with --as INITIALS; r1 is kept as it is,"
            + " and nothing was written.\n",
        refused.err());
    assertEquals(before, Tree.hashes(book));
  }

  /** A row: the words behind {@code close DAY}, and what is said of them. */
  private record Lacking(String words, String said) {}

  @TestFactory
  Stream<DynamicTest> a_revision_needs_a_name_and_a_reason() {
    return Stream.of(
            new Lacking("--as MA", "Say why with --reason"),
            new Lacking("--reason why", "who you are with --as INITIALS"),
            new Lacking("--as MA --reason \u00a0", "Say why with --reason"),
            new Lacking("--as XX --reason why", "\"XX\" is nobody in the plan; it has MA, IQ"),
            new Lacking("--as MA --reason a\nb", "a reason stands on one line"))
        .map(row -> DynamicTest.dynamicTest(row.words(), () -> refused(row)));
  }

  private void refused(Lacking row) {
    Path copy = Tree.copy(book, folder.resolve("copy" + row.hashCode()));
    Tree.edit(copy.resolve(Tree.DAY).resolve("chill.csv"), "4222", "4223");
    Map<String, String> before = Tree.hashes(copy);
    String[] words = ("close " + copy.resolve(Tree.DAY) + " " + row.words()).split(" ", -1);
    Ran ran = Ran.of((Object[]) words).expect(2);
    assertTrue(ran.err().contains(row.said()), ran.err());
    assertEquals(before, Tree.hashes(copy));
  }

  @Test
  void a_revision_tells_the_ledger_who_and_why_and_leaves_the_first_alone() {
    Map<String, String> first = Tree.hashes(records.resolve("r1"));
    misread();
    amend().expect(0);
    JsonNode line = Chain.last(book);
    assertAll(
        () -> assertEquals(List.of("closed r1", "amended r2"), Chain.events(book)),
        () -> assertEquals("MA", line.get("by").asText()),
        () -> assertEquals(WHY, line.get("reason").asText()),
        () -> assertEquals(first, Tree.hashes(records.resolve("r1"))),
        () -> assertEquals(List.of(), Chain.faults(book)));
  }

  @Test
  void every_record_of_a_revision_prints_what_changed_and_why() {
    misread();
    amend().expect(0);
    for (String name : List.of("26047-B1", "day", "deviations")) {
      String text = Pdfs.text(records.resolve("r2").resolve(name + ".pdf")).replaceAll("\\s+", " ");
      assertAll(
          () -> assertTrue(text.contains(", revision 2"), name),
          () -> assertTrue(text.contains("Changes since r1 Reason: " + WHY), text),
          () -> assertTrue(text.contains("Amended by Maud Achterberg (MA)."), text),
          () -> assertTrue(text.contains("2026-02-24/chill.csv:6:value changed"), text));
    }
  }

  @Test
  void the_json_of_a_revision_holds_what_changed_and_why() {
    misread();
    amend().expect(0);
    JsonNode filing = Ran.json(Tree.text(records.resolve("r2").resolve("day.json"))).get("filing");
    JsonNode first = Chain.lines(book).get(0);
    JsonNode change = filing.get("changes").get(0);
    assertAll(
        () -> assertEquals(2, filing.get("revision").asInt()),
        () -> assertEquals(1, filing.get("amends").asInt()),
        () -> assertEquals(1, filing.get("ledger").get("sequence").asInt()),
        () -> assertEquals(first.get("hash"), filing.get("ledger").get("hash")),
        () -> assertEquals("MA", filing.get("by").asText()),
        () -> assertEquals(WHY, filing.get("reason").asText()),
        () -> assertEquals("changed", change.get("change").asText()),
        () -> assertEquals("2026-02-24/chill.csv", change.get("file").asText()),
        () -> assertEquals(6, change.get("line").asInt()),
        () -> assertEquals("value", change.get("column").asText()),
        () -> assertEquals(1, filing.get("changes").size()));
  }

  @Test
  void every_record_prints_the_end_of_the_ledger_before_its_close() {
    misread();
    amend().expect(0);
    String hash = Chain.lines(book).get(0).get("hash").asText().substring(0, 12);
    assertAll(
        () ->
            assertTrue(
                printed("r1").contains("Revision r1. Before this close the ledger had no line.")),
        () ->
            assertTrue(
                printed("r2")
                    .contains(
                        "Revision r2. Before this close the ledger's last line was line 1, with the"
                            + " hash "
                            + hash)));
  }

  private String printed(String revision) {
    Path file = records.resolve(revision).resolve("26047-B1.pdf");
    return Pdfs.text(file).replaceAll("\\s+", " ");
  }

  @Test
  void the_same_inputs_and_the_same_ledger_give_the_same_bytes() {
    Path copy = Tree.copy(book, folder.resolve("other").resolve("book"));
    misread();
    amend().expect(0);
    Tree.edit(copy.resolve(Tree.DAY).resolve("chill.csv"), "4222", "4223");
    Ran.of("close", copy.resolve(Tree.DAY), "--as", "MA", "--reason", WHY).expect(0);
    Path there = copy.resolve("records").resolve(Tree.DAY).resolve("r2");
    assertEquals(Tree.hashes(records.resolve("r2")), Tree.hashes(there));
  }

  @Test
  void another_moment_alone_needs_no_reason_and_says_what_it_is() {
    Ran.of("close", day, "--at", "2026-02-24T23:00").expect(0);
    JsonNode filing = Ran.json(Tree.text(records.resolve("r2").resolve("day.json"))).get("filing");
    assertEquals("judged as of another moment", filing.get("reason").asText());
    assertEquals("moment judged", filing.get("changes").get(0).get("file").asText());
    assertEquals("2026-02-24T23:00-05:00", filing.get("changes").get(0).get("now").asText());
  }

  @Test
  void a_changed_plan_and_log_are_told_by_key_and_by_row() throws Exception {
    Tree.edit(book.resolve("plan.json"), "\"version\": \"3\"", "\"version\": \"4\"");
    Path log = day.resolve("probes-a.csv");
    List<String> rows = Files.readAllLines(log);
    rows.remove(40);
    Files.write(log, rows);
    String said = Ran.of("close", day).expect(2).err();
    assertAll(
        () -> assertTrue(said.contains("    plan.json:"), said),
        () -> assertTrue(said.contains("version: changed from: \"3\"; to: \"4\"\n"), said),
        () -> assertTrue(said.contains("    2026-02-24/probes-a.csv:41: removed: "), said));
  }

  /** A row: what is done to a record, and what is found there. */
  private record Damage(String name, Deed deed, String found) {}

  @FunctionalInterface
  private interface Deed {
    void to(Path file) throws Exception;
  }

  @TestFactory
  Stream<DynamicTest> a_record_that_was_changed_or_lost_is_named() {
    return Stream.of(
            new Damage("lost", Files::delete, "no such file"),
            new Damage("changed", file -> Files.writeString(file, "x"), "another content"))
        .map(row -> DynamicTest.dynamicTest(row.name(), () -> damaged(row)));
  }

  private void damaged(Damage row) throws Exception {
    row.deed().to(records.resolve("r1").resolve("day.pdf"));
    Ran ran = Ran.of("close", day).expect(1);
    String hash = Chain.last(book).get("outputs").get("records/2026-02-24/r1/day.pdf").asText();
    assertEquals(
        "records/2026-02-24/r1/day.pdf: found "
            + row.found()
            + ", expected SHA-256 "
            + hash
            + ", as line 1 of the ledger has it\n",
        ran.err());
    assertTrue(ran.out().contains("Nothing new: "), ran.out());
  }

  @Test
  void without_the_bundle_changes_are_told_file_by_file() throws Exception {
    Files.delete(records.resolve("r1").resolve("bundle.zip"));
    misread();
    Ran ran = amend().expect(1);
    assertTrue(ran.err().startsWith("records/2026-02-24/r1/bundle.zip: found no such file"));
    JsonNode filing = Ran.json(Tree.text(records.resolve("r2").resolve("day.json"))).get("filing");
    assertTrue(
        filing.get("changes").get(0).get("now").asText().startsWith("a file with the SHA-256 "));
  }

  @Test
  void out_leaves_the_ledger_alone_and_the_print_says_so() {
    Map<String, String> before = Tree.hashes(book);
    misread();
    Path out = folder.resolve("out");
    Ran.of("close", day, "--out", out).expect(0);
    Tree.edit(day.resolve("chill.csv"), "4223", "4222");
    String text = Pdfs.text(out.resolve(Tree.DAY).resolve("r1").resolve("26047-B1.pdf"));
    assertEquals(before, Tree.hashes(book));
    assertTrue(
        text.replaceAll("\\s+", " ")
            .contains("Printed outside of the book's records: this print is not in the ledger."));
    assertFalse(
        Tree.text(out.resolve(Tree.DAY).resolve("r1").resolve("day.json")).contains("filing"));
  }

  @Test
  void a_reason_has_no_place_outside_of_the_book() {
    Ran ran = Ran.of("close", day, "--out", folder.resolve("out"), "--reason", WHY).expect(2);
    assertEquals(
        "flitchbook: --as and --reason are for the ledger, which --out leaves untouched\n",
        ran.err());
  }
}

package org.flitchbook.cli;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertAll;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.flitchbook.MarkdownPage;
import org.flitchbook.OutsideProgram;
import org.flitchbook.ledger.EventType;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Verifies a ledger as docs/ledger.md tells people to, with programs that nobody here wrote. */
final class LedgerPageTest {

  private static final Path PAGE = Path.of("docs", "ledger.md");

  @TempDir private static Path shared;
  private static Path closed;

  @TempDir private Path folder;
  private Path book;

  @BeforeAll
  static void closeTwice() {
    closed = Tree.closedExample(shared);
    Path day = closed.resolve(Tree.DAY);
    Tree.edit(day.resolve("chill.csv"), "4222", "4223");
    Ran.of("close", day, "--as", "MA", "--reason", "Ma\u00df \"neu\" \ud83d\ude00 \\").expect(0);
  }

  @BeforeEach
  void copy() {
    List.of("jq", "sha256sum", "sed", "tr", "cut").forEach(OutsideProgram::find);
    book = Tree.copy(closed, folder.resolve("book"));
  }

  private String run(int block) throws IOException, InterruptedException {
    String script = MarkdownPage.of(PAGE).blocks("sh").get(block);
    Process shell =
        new ProcessBuilder(OutsideProgram.find("sh").toString(), "-c", script)
            .directory(book.toFile())
            .redirectErrorStream(true)
            .start();
    String said = new String(shell.getInputStream().readAllBytes(), UTF_8);
    shell.waitFor();
    return said;
  }

  @Test
  void a_sound_ledger_is_found_sound() throws Exception {
    String hash = Chain.last(book).get("hash").asText();
    assertEquals("2 lines, the last hash is " + hash + "\n", run(0));
    assertEquals("", run(1));
    assertEquals("", run(2));
  }

  @Test
  void a_changed_line_is_found() throws Exception {
    Tree.edit(Chain.file(book), "\"revision\":1", "\"revision\":3");
    assertTrue(run(0).startsWith("line 1 is not what its hash says\n2 lines"));
  }

  @Test
  void a_line_left_out_is_found() throws Exception {
    List<String> lines = Files.readAllLines(Chain.file(book));
    Files.writeString(Chain.file(book), lines.get(1) + "\n");
    assertTrue(run(0).startsWith("line 1 does not follow the line before\n1 lines"));
  }

  @Test
  void a_line_that_lists_what_its_event_never_does_is_found() throws Exception {
    Tree.edit(Chain.file(book), "\"event\":\"amended\"", "\"event\":\"dispatched\"");
    assertTrue(run(1).startsWith("line 2 lists records/2026-02-24/r2/"), run(1));
  }

  @Test
  void a_changed_record_is_found() throws Exception {
    Files.writeString(book.resolve("records").resolve(Tree.DAY).resolve("r1/day.pdf"), "x");
    assertTrue(run(2).startsWith("records/2026-02-24/r1/day.pdf: FAILED\n"), run(2));
  }

  @Test
  void the_page_names_every_member_and_every_event() {
    String page = Tree.text(PAGE);
    List<String> members = List.copyOf(Chain.texts(Chain.last(book)).keySet());
    assertAll(
        Stream.concat(members.stream(), Stream.of(EventType.values()).map(EventType::word))
            .map(word -> () -> assertTrue(page.contains("`" + word + "`"), word)));
  }
}

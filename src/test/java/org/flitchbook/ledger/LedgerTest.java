package org.flitchbook.ledger;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertAll;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.flitchbook.input.Fault;
import org.flitchbook.input.SourceFile;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** The chain: what is written is read again, and what was touched is found, line by line. */
final class LedgerTest {

  @Test
  void no_bytes_are_a_ledger_without_lines() {
    Ledger empty = Ledger.read(new byte[0]);
    assertAll(
        () -> assertEquals(Head.NONE, empty.head()),
        () -> assertEquals(0, empty.length()),
        () -> assertEquals(List.of(), empty.faults()),
        () -> assertEquals(Optional.empty(), empty.torn()));
  }

  @Test
  void what_was_told_is_read_again() {
    Ledger ledger = Ledger.read(Chain.bytes());
    assertEquals(List.of(), ledger.faults());
    assertEquals(
        List.of(Chain.closed(), Chain.amended(), Chain.released()),
        ledger.lines().stream().map(LedgerLine::event).toList());
  }

  @Test
  void each_line_holds_the_hash_of_the_one_before_and_the_first_holds_zeros() {
    List<LedgerLine> lines = Ledger.read(Chain.bytes()).lines();
    assertEquals(
        List.of("0".repeat(64), lines.get(0).hash(), lines.get(1).hash()),
        lines.stream().map(LedgerLine::previous).toList());
  }

  @Test
  void the_hash_is_that_of_the_line_without_it() {
    for (LedgerLine line : Ledger.read(Chain.bytes()).lines()) {
      String text = Chain.lines().get((int) line.sequence() - 1);
      String without = text.replace("\"hash\":\"" + line.hash() + "\",", "");
      assertEquals(line.hash(), SourceFile.of("", without.getBytes(UTF_8)).sha256());
    }
  }

  @Test
  void the_form_of_a_line_never_changes() {
    assertEquals(
        "{\"about\":\"26047-B1\",\"at\":\"2026-02-24T23:13:05Z\",\"by\":\"\",\"day\":\"2026-02-24\",\"event\":\"released\",\"facts\":{\"reviewed"
            + " by\":\"IQ\"},"
            + "\"hash\":\"HASH\",\"inputs\":{},\"outputs\":{},\"previous\":\"HASH\",\"reason\":\"\","
            + "\"revision\":2,\"sequence\":3,\"tool\":\"0.2.0\"}",
        Chain.lines().get(2).replaceAll("[0-9a-f]{64}", "HASH"));
  }

  @Test
  void lines_told_one_by_one_are_those_told_at_once() {
    Ledger ledger = Ledger.read(new byte[0]);
    String text = "";
    for (Event event : List.of(Chain.closed(), Chain.amended(), Chain.released())) {
      byte[] line = ledger.append(List.of(event));
      text += new String(line, UTF_8);
      ledger = ledger.and(line);
    }
    assertEquals(Chain.text(), text);
    assertEquals(Ledger.read(Chain.bytes()).head(), ledger.head());
    assertEquals(Chain.bytes().length, ledger.length());
  }

  @Test
  void the_last_line_about_a_day_is_found_by_its_deeds() {
    Ledger ledger = Ledger.read(Chain.bytes());
    assertAll(
        () ->
            assertEquals(2, sequence(ledger.last(Chain.DAY, EventType.CLOSED, EventType.AMENDED))),
        () -> assertEquals(1, sequence(ledger.last(Chain.DAY, EventType.CLOSED))),
        () -> assertEquals(Optional.empty(), ledger.last(Chain.DAY.plusDays(1), EventType.CLOSED)));
  }

  private static long sequence(Optional<LedgerLine> line) {
    return line.orElseThrow().sequence();
  }

  @Test
  void the_same_words_have_the_same_bytes_however_they_were_typed() {
    Event composed = Chain.amended().by("MA", "Mor\u00e9");
    Event parted = Chain.amended().by("MA", "More\u0301");
    assertEquals(composed, parted);
  }

  @Test
  void two_spellings_of_one_file_are_refused() {
    Map<String, String> twice = Map.of("\u00e9.csv", Chain.SALT_HASH, "e\u0301.csv", "");
    assertThrows(IllegalArgumentException.class, () -> Chain.closed().files(twice, Map.of()));
  }

  /** A row: what is done to the text of the ledger, and the faults, each as line, key, found. */
  private record Touched(String name, String text, List<String> faults) {}

  @TestFactory
  Stream<DynamicTest> a_line_that_was_touched_is_named() {
    String text = Chain.text();
    List<String> lines = Chain.lines();
    return Stream.of(
            new Touched("a letter", text.replace("typed", "Typed"), List.of("2:hash")),
            new Touched(
                "an input's hash",
                text.replace(Chain.SALT_HASH, "ba".repeat(32)),
                List.of("1:hash")),
            new Touched("the time", text.replace("T22:13:05Z", "T22:13:06Z"), List.of("1:hash")),
            new Touched(
                "a line left out",
                joined(lines.get(0), lines.get(2)),
                List.of("2:sequence", "2:previous")),
            new Touched(
                "the first line left out",
                joined(lines.get(1), lines.get(2)),
                List.of("1:sequence", "1:previous", "2:sequence")),
            new Touched(
                "two lines exchanged",
                joined(lines.get(0), lines.get(2), lines.get(1)),
                List.of("2:sequence", "2:previous", "3:sequence", "3:previous")),
            new Touched(
                "a line doubled",
                joined(lines.get(0), lines.get(0), lines.get(1), lines.get(2)),
                List.of("2:sequence", "2:previous", "3:sequence", "4:sequence")),
            new Touched(
                "a space", text.replace("\"revision\":2", "\"revision\": 2"), List.of("2:", "3:")),
            new Touched("an escape", text.replace("typed", "\\u0074yped"), List.of("2:")),
            new Touched("an empty line", text + "\n", List.of("4:")),
            new Touched("a line of words", text + "closed by hand\n", List.of("4:")),
            new Touched("a list", text + "[]\n", List.of("4:")),
            new Touched(
                "a Windows line end", text.replace("\n", "\r\n"), List.of("1:", "2:", "3:")),
            new Touched(
                "a key twice",
                text.replace("\"by\":\"MA\"", "\"by\":\"MA\",\"by\":\"MA\""),
                List.of("2:")),
            new Touched(
                "a fraction",
                text.replace("\"revision\":1", "\"revision\":1.0"),
                List.of("1:revision")),
            new Touched(
                "below 0",
                text.replace("\"revision\":1", "\"revision\":-1"),
                List.of("1:revision")),
            new Touched(
                "too large",
                text.replace("\"revision\":1", "\"revision\":2147483648"),
                List.of("1:revision")),
            new Touched("null", text.replace("\"by\":\"MA\"", "\"by\":null"), List.of("2:by")),
            new Touched(
                "a list for a text",
                text.replace("\"by\":\"MA\"", "\"by\":[\"MA\"]"),
                List.of("2:by")),
            new Touched(
                "a text for a number",
                text.replace("\"revision\":1", "\"revision\":\"1\""),
                List.of("1:revision")),
            new Touched("a missing key", text.replace("\"by\":\"MA\",", ""), List.of("2:by")),
            new Touched(
                "no time", text.replace("2026-02-24T22:13:05Z", "yesterday"), List.of("1:at")),
            new Touched(
                "no day",
                text.replace("\"day\":\"2026-02-24\"", "\"day\":\"2026-02-30\""),
                List.of("1:day", "2:day", "3:day")),
            new Touched("half a letter", text.replace("typed", "\\ud83d"), List.of("2:reason")),
            new Touched("letters apart", text.replace("typed", "e\u0301"), List.of("2:reason")),
            new Touched(
                "a fact called hash", text.replace("reviewed by", "hash"), List.of("3:event")),
            new Touched(
                "an input that is no text",
                text.replace("\"" + Chain.SALT_HASH + "\"", "7"),
                List.of("1:inputs.2026-02-24/cure.csv")))
        .map(row -> DynamicTest.dynamicTest(row.name(), () -> found(row)));
  }

  private static String joined(String... lines) {
    return String.join("\n", lines) + "\n";
  }

  private static void found(Touched row) {
    Ledger ledger = Chain.read(row.text());
    assertEquals(row.faults(), ledger.faults().stream().map(LedgerTest::where).toList());
    assertThrows(IllegalStateException.class, () -> ledger.append(List.of(Chain.closed())));
  }

  private static String where(Fault fault) {
    return fault.place().line() + ":" + fault.place().column();
  }

  @Test
  void a_fault_says_what_was_found_and_what_was_expected() {
    String fault = Chain.read(Chain.text().replace("typed", "Typed")).faults().get(0).toString();
    assertTrue(
        fault.matches(
            "ledger\\.jsonl:2:hash: found [0-9a-f]{64}, expected [0-9a-f]{64}, the SHA-256 of what"
                + " the line says"),
        fault);
  }

  @Test
  void a_member_that_a_later_version_adds_is_held_by_the_hash() {
    String line =
        Chain.lines().get(0).replace("\"tool\":\"0.2.0\"", "\"tool\":\"9\",\"weather\":\"dry\"");
    String hash = Chain.read(line + "\n").faults().get(0).expected().toString().substring(0, 64);
    String sealed = line.replaceFirst("\"hash\":\"[0-9a-f]{64}\"", "\"hash\":\"" + hash + "\"");
    assertEquals(List.of(), Chain.read(sealed + "\n").faults());
    assertEquals(
        List.of("1:hash"),
        Chain.read(sealed.replace("dry", "wet") + "\n").faults().stream()
            .map(LedgerTest::where)
            .toList());
  }

  /**
   * Wherever a write is cut off, the lines before it hold and the rest is named, never believed.
   */
  @TestFactory
  Stream<DynamicTest> a_write_cut_off_at_any_byte_is_named() {
    byte[] whole = Chain.bytes();
    int before = joined(Chain.lines().get(0), Chain.lines().get(1)).length();
    return IntStream.range(before, whole.length)
        .mapToObj(
            length -> DynamicTest.dynamicTest("at " + length, () -> torn(whole, before, length)));
  }

  private static void torn(byte[] whole, int before, int length) {
    Ledger ledger = Ledger.read(java.util.Arrays.copyOf(whole, length));
    assertAll(
        () -> assertEquals(2, ledger.lines().size()),
        () -> assertEquals(before, ledger.length()),
        () -> assertEquals(List.of(), ledger.faults()),
        () -> assertEquals(length > before, ledger.torn().isPresent()),
        () ->
            assertArrayEquals(
                java.util.Arrays.copyOfRange(whole, before, whole.length),
                ledger.append(List.of(Chain.released()))));
  }

  @Test
  void zeros_that_a_power_cut_left_are_a_torn_line() {
    Ledger ledger = Chain.read(Chain.text() + "\0".repeat(100));
    assertEquals(
        "ledger.jsonl:4: found 100 bytes of a line that was never finished, expected a line feed at"
            + " its end",
        ledger.torn().orElseThrow().toString());
  }
}

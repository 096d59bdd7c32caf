package org.flitchbook.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import java.util.function.IntFunction;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The good lot of the example with another column in its log: a second probe, a battery. */
final class UnreadColumnsTest {

  @TempDir private Path folder;
  private Path book;
  private Path day;

  @BeforeEach
  void example() {
    book = Tree.example(folder);
    day = book.resolve(Tree.DAY);
  }

  private void column(String word, IntFunction<String> cell) {
    Path log = day.resolve("probes-a.csv");
    String[] lines = Tree.text(log).split("\n", -1);
    String wider =
        IntStream.range(0, lines.length)
            .filter(i -> !lines[i].isEmpty())
            .mapToObj(i -> lines[i].strip() + "," + (i == 0 ? word : cell.apply(i)) + "\n")
            .collect(Collectors.joining());
    Tree.write(log, wider);
  }

  private void leftOut(String why) {
    Tree.edit(
        day.resolve("logs.json"),
        "\"instrument\": \"LG-A\",",
        "\"instrument\": \"LG-A\", \"leftOut\": {\"P2\": \"" + why + "\"},");
  }

  private static JsonNode fault(Ran ran, String rule) {
    for (JsonNode each : ran.json().get("faults")) {
      if (each.get("rule").asText().equals(rule)) {
        return each;
      }
    }
    throw new AssertionError(rule + " is not in " + ran.out());
  }

  /** A probe in the thickest piece that stays at 90 °F all night, and that nobody named. */
  @Test
  void a_second_probe_that_nothing_reads_is_asked_about_in_its_lot() {
    column("P2", row -> 90 + row % 3 + ".4");
    Ran ran = Ran.of("check", day, "--json").expect(1);
    JsonNode asked = fault(ran, "column not read");
    assertEquals("ask 26047-B1", asked.get("severity").asText() + " " + asked.get("lot").asText());
    Ran.of("close", day).expect(1);
    Path records = book.resolve("records").resolve(Tree.DAY).resolve("r1");
    String print = Pdfs.text(records.resolve("26047-B1.pdf")).replaceAll("\\s+", " ");
    assertTrue(print.contains("numbers under \"P2\""), print);
    Ran.of("prove", records.resolve("26047-B1.pdf")).expect(0);
  }

  @Test
  void a_probe_that_is_left_out_for_a_reason_is_named_with_it() {
    column("P2", row -> 70 + row % 3 + ".4");
    leftOut("spare probe, in the air of the room");
    Ran ran = Ran.of("check", day, "--json").expect(0);
    JsonNode named = fault(ran, "column left out");
    assertEquals("note", named.get("severity").asText());
    assertEquals(
        "more columns: \"P2\": spare probe, in the air of the room", named.get("found").asText());
    Ran.of("close", day).expect(0);
    Path record = book.resolve("records").resolve(Tree.DAY).resolve("r1/26047-B1.pdf");
    String print = Pdfs.text(record).replaceAll("\\s+", " ");
    assertTrue(print.contains("spare probe, in"), print);
    Ran.of("prove", record).expect(0);
  }

  @Test
  void a_battery_is_named_and_asks_nothing() {
    column("Battery", row -> row < 200 ? "100" : "99");
    Ran ran = Ran.of("check", day, "--json").expect(0);
    assertEquals("more columns: \"Battery\"", fault(ran, "column left out").get("found").asText());
  }
}

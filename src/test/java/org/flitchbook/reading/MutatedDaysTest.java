package org.flitchbook.reading;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Random;
import java.util.TreeSet;
import org.flitchbook.SeededRun;
import org.flitchbook.input.Fault;
import org.flitchbook.input.Severity;
import org.flitchbook.input.SourceFile;
import org.junit.jupiter.api.Test;

/** The law: a row is used, or it is named in a fault. Nothing vanishes and nothing crashes. */
final class MutatedDaysTest {

  private static final int SEED = 20260216;
  private static final int MUTANTS = SeededRun.cases("Mutated days", SEED, 2_000);
  private static final String SHEET = "2026-02-16/cure.csv";
  private static final String[] PIECES = {
    ",",
    ";",
    "\t",
    "\"",
    "\"\"",
    "\n",
    "\r\n",
    "\r",
    "-",
    ".",
    "0",
    "9",
    "e9",
    " ",
    "°F",
    "g",
    "tsp",
    "\u0000",
    "\u00A0",
    "\uFEFF",
    "é",
    "𐐷",
    "26047-B1",
    "2026-11-01 01:30",
    "../",
    "cure.csv:3",
    "on"
  };

  private static String resource(String name) throws IOException {
    try (var stream =
        MutatedDaysTest.class.getResourceAsStream("/org/flitchbook/lot/book/" + name)) {
      return new String(stream.readAllBytes(), StandardCharsets.UTF_8);
    }
  }

  private static String mutant(String text, Random chance) {
    StringBuilder mutant = new StringBuilder(text);
    for (int edits = 1 + chance.nextInt(4); edits > 0; edits--) {
      int at = chance.nextInt(mutant.length());
      int length = Math.min(1 + chance.nextInt(8), mutant.length() - at);
      switch (chance.nextInt(3)) {
        case 0 -> mutant.insert(at, PIECES[chance.nextInt(PIECES.length)]);
        case 1 -> mutant.replace(at, at + length, PIECES[chance.nextInt(PIECES.length)]);
        default ->
            mutant.insert(chance.nextInt(mutant.length()), mutant.substring(at, at + length));
      }
    }
    return mutant.toString();
  }

  @Test
  void a_row_of_a_mutated_sheet_is_used_or_named() throws IOException {
    String good = resource(SHEET);
    Random chance = new Random(SEED);
    int broken = 0;
    for (int i = 0; i < MUTANTS; i++) {
      String text = mutant(good, chance);
      Day day =
          Days.read(Days.NEW_YORK, SourceFile.of(SHEET, text.getBytes(StandardCharsets.UTF_8)));
      if (day.faults().stream().anyMatch(fault -> fault.is(Severity.BROKEN))) {
        broken++;
      } else {
        assertEquals(day.files().get(0).rows(), accounted(day), text);
      }
    }
    assertEquals(SeededRun.known(43, 419), broken, "mutants that are broken");
  }

  /** How many rows an entry or a stop stands for. */
  private static int accounted(Day day) {
    TreeSet<Integer> lines = new TreeSet<>();
    day.entries().forEach(entry -> lines.add(entry.place().line()));
    day.faults().stream()
        .filter(fault -> fault.is(Severity.STOP))
        .map(Fault::place)
        .forEach(place -> lines.add(place.line()));
    return lines.size();
  }

  @Test
  void mutated_bytes_of_a_sheet_never_crash() throws IOException {
    byte[] good = resource(SHEET).getBytes(StandardCharsets.UTF_8);
    Random chance = new Random(SEED + 1);
    for (int i = 0; i < MUTANTS; i++) {
      byte[] bytes = good.clone();
      for (int edits = chance.nextInt(5); edits >= 0; edits--) {
        bytes[chance.nextInt(bytes.length)] = (byte) chance.nextInt(256);
      }
      Day day = Days.read(Days.NEW_YORK, SourceFile.of(SHEET, bytes));
      assertEquals(day.entries().size(), day.files().get(0).used());
    }
  }

  @Test
  void mutated_layouts_and_logs_never_crash() throws IOException {
    String layout = resource("2026-02-24/logs.json");
    String log =
        resource("2026-02-24/probes-a.csv").lines().limit(12).reduce("", (a, b) -> a + b + "\n");
    Random chance = new Random(SEED + 8);
    for (int i = 0; i < MUTANTS; i++) {
      String logs = i % 2 == 0 ? layout : mutant(layout, chance);
      String rows = i % 2 == 0 ? mutant(log, chance) : log;
      Day day =
          Days.read(Days.NEW_YORK, Days.file("logs.json", logs), Days.file("probes-a.csv", rows));
      FileRead read = day.files().get(1);
      assertTrue(read.used() <= read.rows(), rows);
      assertTrue(read.rows() == read.used() || !day.faults().isEmpty(), rows);
    }
  }
}

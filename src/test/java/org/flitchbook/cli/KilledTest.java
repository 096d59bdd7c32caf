package org.flitchbook.cli;

import static org.junit.jupiter.api.Assertions.assertAll;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Map;
import java.util.TreeMap;
import org.flitchbook.SeededRun;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A close or a signing that is killed leaves the old records or the new ones, never half. */
@Tag("machines")
final class KilledTest {

  private static final long SEED = 10;

  @TempDir private Path folder;

  @Test
  void kills_lose_nothing() throws Exception {
    int times = SeededRun.cases("Kills of a close or a signing", SEED, 20);
    Kills kills = Kills.of(Tree.example(folder), SEED, 0);
    kills.kill(times);
    held(kills.counts(), times);
  }

  /** Else the counts of the first test would prove nothing. */
  @Test
  void what_a_kill_must_not_leave_is_counted() throws Exception {
    Path book = Tree.closedExample(folder);
    Kills kills = Kills.ofClosed(book, SEED);
    Path print = book.resolve(Smokeyard.RECORD);
    kills.plant(() -> Files.write(print, Arrays.copyOf(Tree.bytes(print), 1000)));
    kills.plant(() -> Tree.edit(Chain.file(book), "\"revision\":1", "\"revision\":7"));
    kills.plant(() -> Files.createDirectory(print.getParent().resolveSibling(".new-r2-1")));
    assertEquals(
        Map.of(
            "kills", 3,
            "lost records", 1,
            "half files", 3,
            "broken chains", 2,
            "planted: left unfinished", 1,
            "planted: old state", 3),
        kills.counts());
  }

  /** Of the demo book, with a fresh copy from time to time: its revisions are large. */
  @Test
  @Tag("kills")
  void two_hundred_kills_of_the_demo_day_lose_nothing() throws Exception {
    Map<String, Integer> counts = new TreeMap<>();
    for (int round = 0; round < 10; round++) {
      Path book = Tree.demo(folder.resolve("round" + round));
      Kills kills = Kills.of(book, 200 + round, 1);
      kills.kill(20);
      kills.counts().forEach((what, number) -> counts.merge(what, number, Integer::sum));
      System.out.println("Kills during close and sign, so far: " + counts);
      Tree.delete(book);
    }
    held(counts, 200);
  }

  private static void held(Map<String, Integer> counts, int kills) {
    System.out.println("Kills during close and sign: " + counts);
    assertAll(
        () -> assertEquals(kills, counts.get("kills")),
        () -> assertEquals(0, counts.get("lost records")),
        () -> assertEquals(0, counts.get("half files")),
        () -> assertEquals(0, counts.get("broken chains")));
  }
}

package org.flitchbook.cli;

import static org.junit.jupiter.api.Assertions.assertAll;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Path;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A close or a signing that is killed leaves the old records or the new ones, never half. */
final class KilledTest {

  @TempDir private Path folder;

  @Test
  void ten_kills_lose_nothing() throws Exception {
    Kills kills = new Kills(Tree.example(folder), 10, 0);
    kills.kill(10);
    held(kills.counts(), 10);
  }

  /** Of the demo book, with a fresh copy from time to time: its revisions are large. */
  @Test
  @Tag("kills")
  void two_hundred_kills_of_the_demo_day_lose_nothing() throws Exception {
    Map<String, Integer> counts = new TreeMap<>();
    for (int round = 0; round < 10; round++) {
      Path book = Tree.demo(folder.resolve("round" + round));
      Kills kills = new Kills(book, 200 + round, 1);
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

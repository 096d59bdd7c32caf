package org.flitchbook.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.flitchbook.SeededRun;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The good lot of the example with one bad fact on file, drawn by chance: a row, a file or a key
 * that perhaps no limit looks at. It is never met with exit status 0.
 */
public final class OneBadFactTest {

  private static final long SEED = 20261130;
  public static final int FACTS = 6000;

  /** The facts of a build; all of them are tried in the whole run. */
  private static final int SHARE = 100;

  @TempDir private Path folder;

  @Test
  void a_lot_with_one_bad_fact_is_never_met_with_exit_0() throws IOException {
    List<String> unseen = new ArrayList<>();
    int facts = SeededRun.cases("One bad fact", SEED, FACTS, SHARE);
    for (int i = 0; i < facts; i++) {
      BadFact fact = new BadFact.Draw(SEED + i).fact(i);
      Path book = Tree.example(folder.resolve(String.valueOf(i)));
      fact.fileIn(book);
      if (Ran.of("check", book.resolve(Tree.DAY)).status() == 0) {
        unseen.add(i + " " + fact);
      }
      Tree.delete(book);
    }
    assertEquals(List.of(), unseen);
  }
}

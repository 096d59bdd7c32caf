package org.flitchbook.lot;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.flitchbook.SeededRun;
import org.flitchbook.input.SourceFile;
import org.junit.jupiter.api.Test;

/** Whatever stands in a book, lots come out of it, and what is told is told of a known lot. */
final class MutatedBooksTest {

  private static final int SEED = 26047;
  private static final int MUTANTS = SeededRun.cases("Mutated books", SEED, 300);

  @Test
  void a_book_with_lines_of_it_mixed_up_is_put_together() {
    List<SourceFile> files = Books.exampleFiles();
    Random chance = new Random(SEED);
    for (int i = 0; i < MUTANTS; i++) {
      List<SourceFile> mutated = new ArrayList<>(files);
      for (int edits = 1 + chance.nextInt(4); edits > 0; edits--) {
        int at = chance.nextInt(mutated.size());
        mutated.set(at, mutant(mutated.get(at), mutated.get(chance.nextInt(files.size())), chance));
      }
      Lots book = Books.of(mutated);
      for (Lot lot : book.lots()) {
        assertTrue(lot.faults().stream().allMatch(fault -> fault.lot().equals(lot.code())));
        assertTrue(lot.tracks().stream().allMatch(each -> isInOrder(each.track())), "in order");
      }
    }
  }

  /** A cell, a piece of a line or a whole line of another file is put in, or something goes. */
  private static SourceFile mutant(SourceFile file, SourceFile other, Random chance) {
    StringBuilder text = new StringBuilder(new String(file.bytes(), UTF_8));
    List<String> lines = new String(other.bytes(), UTF_8).lines().toList();
    String line = lines.get(chance.nextInt(lines.size()));
    String[] cells = line.split(",", -1);
    int at = chance.nextInt(text.length());
    int next = Math.max(at, text.indexOf("\n", at));
    switch (chance.nextInt(4)) {
      case 0 -> text.insert(next, "\n" + line);
      case 1 -> text.insert(at, cells[chance.nextInt(cells.length)]);
      case 2 -> text.replace(at, Math.min(text.length(), at + 1), "" + chance.nextInt(10));
      default -> text.delete(at, Math.min(text.length(), at + chance.nextInt(30)));
    }
    return SourceFile.of(file.name(), text.toString().getBytes(UTF_8));
  }

  private static boolean isInOrder(Track track) {
    for (int i = 1; i < track.size(); i++) {
      if (track.earliest(i) < track.earliest(i - 1)) {
        return false;
      }
    }
    return track.size() > 0;
  }
}

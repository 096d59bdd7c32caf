package org.flitchbook.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.function.Predicate;
import org.flitchbook.SeededRun;
import org.flitchbook.archive.Integrity;
import org.flitchbook.seal.PdfFile;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** No single bit of a signed record can change unnoticed. */
final class FlippedTest {

  private static final long SEED = 417;
  private static final int EACH =
      SeededRun.cases("Flipped bits of each of three records", SEED, 1_000);
  private static final int BITS = 8;
  private static final List<String> RECORDS = List.of("26047-B1.pdf", "day.pdf", "deviations.pdf");

  @TempDir private Path folder;

  @Test
  void every_flipped_bit_is_noticed() {
    Smokeyard yard = Smokeyard.closed(folder);
    SplittableRandom chance = new SplittableRandom(SEED);
    List<String> unnoticed = new ArrayList<>();
    for (String name : RECORDS) {
      byte[] pdf = Tree.bytes(yard.signedByBoth(name));
      assertTrue(Integrity.isUntouched(pdf), name);
      unnoticed(pdf, EACH, chance, Integrity::isUntouched)
          .forEach(bit -> unnoticed.add(name + ": bit " + bit));
    }
    assertEquals(List.of(), unnoticed);
  }

  /** Else the first test would prove nothing: the signatures are what notices. */
  @Test
  void reading_the_file_alone_misses_flipped_bits() {
    byte[] pdf = Tree.bytes(Smokeyard.signed(folder).record);
    List<Integer> missed =
        unnoticed(
            pdf, 20, new SplittableRandom(SEED), each -> PdfFile.signatures(each).isPresent());
    // Most of a record is compressed pages and fonts, which open as well with a bit flipped.
    assertTrue(missed.size() > 10, () -> missed.size() + " of 20");
  }

  private static List<Integer> unnoticed(
      byte[] pdf, int flips, SplittableRandom chance, Predicate<byte[]> isUntouched) {
    List<Integer> unnoticed = new ArrayList<>();
    for (int i = 0; i < flips; i++) {
      int bit = chance.nextInt(pdf.length * BITS);
      byte mask = (byte) (1 << (bit % BITS));
      pdf[bit / BITS] ^= mask;
      if (isUntouched.test(pdf)) {
        unnoticed.add(bit);
      }
      pdf[bit / BITS] ^= mask;
    }
    return unnoticed;
  }
}

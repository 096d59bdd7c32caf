package org.flitchbook.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.flitchbook.archive.Integrity;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** No single bit of a signed record can change unnoticed. */
final class FlippedTest {

  private static final int EACH = 1000;
  private static final int BITS = 8;

  @TempDir private Path folder;

  @Test
  void three_thousand_flipped_bits_are_noticed() {
    Smokeyard yard = Smokeyard.closed(folder);
    SplittableRandom chance = new SplittableRandom(417);
    List<String> unnoticed = new ArrayList<>();
    int flips = 0;
    for (String name : List.of("26047-B1.pdf", "day.pdf", "deviations.pdf")) {
      byte[] pdf = Tree.bytes(yard.signed(name));
      assertTrue(Integrity.isUntouched(pdf), name);
      for (int i = 0; i < EACH; i++, flips++) {
        int bit = chance.nextInt(pdf.length * BITS);
        if (isUntouchedBut(pdf, bit)) {
          unnoticed.add(name + ": bit " + bit);
        }
      }
    }
    System.out.println("Flipped bits: " + flips + ", unnoticed: " + unnoticed.size());
    assertEquals(3000, flips);
    assertEquals(List.of(), unnoticed);
  }

  private static boolean isUntouchedBut(byte[] pdf, int bit) {
    pdf[bit / BITS] ^= (byte) (1 << (bit % BITS));
    try {
      return Integrity.isUntouched(pdf);
    } finally {
      pdf[bit / BITS] ^= (byte) (1 << (bit % BITS));
    }
  }
}

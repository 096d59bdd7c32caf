package org.flitchbook.reading;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

final class LongsTest {

  /** What is held in few bytes, what is not, and what is not there. */
  @ParameterizedTest
  @CsvSource({"1, 1000", "1000000, 1000000", "1000000, 7", "1, 4000000000", "500, 250"})
  void numbers_come_back_as_they_were_put_in(long grain, long step) {
    Random chance = new Random(grain + step);
    Longs list = new Longs(grain);
    long[] put = new long[20_000];
    for (int i = 0; i < put.length; i++) {
      boolean none = chance.nextInt(50) == 0;
      put[i] = none ? Longs.NONE : 1_771_938_120_000L + step * chance.nextInt(3000);
      list.add(put[i]);
    }
    for (int i = 0; i < put.length; i += 7) {
      put[i] = chance.nextBoolean() ? Longs.NONE : chance.nextLong() / 4;
      list.set(i, put[i]);
    }
    assertEquals(put.length, list.size());
    for (int i = 0; i < put.length; i++) {
      assertEquals(put[i], list.get(i), "at " + i);
    }
  }
}

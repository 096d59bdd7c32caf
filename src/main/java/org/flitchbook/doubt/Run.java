package org.flitchbook.doubt;

import java.util.BitSet;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * Readings that follow each other.
 *
 * @param first the index of the first
 * @param last the index of the last, which may be the first
 */
record Run(int first, int last) {

  /** The longest runs of readings that a test holds for. */
  static Stream<Run> where(int size, IntPredicate test) {
    BitSet found =
        IntStream.range(0, size).filter(test).collect(BitSet::new, BitSet::set, BitSet::or);
    return IntStream.iterate(
            found.nextSetBit(0),
            first -> first >= 0,
            first -> found.nextSetBit(found.nextClearBit(first)))
        .mapToObj(first -> new Run(first, found.nextClearBit(first) - 1));
  }

  /** All readings, in the longest runs in which each is as the one before it. */
  static Stream<Run> alike(int size, IntPredicate isAsBefore) {
    int[] starts = IntStream.range(0, size).filter(i -> i == 0 || !isAsBefore.test(i)).toArray();
    return IntStream.range(0, starts.length)
        .mapToObj(i -> new Run(starts[i], (i + 1 < starts.length ? starts[i + 1] : size) - 1));
  }

  int size() {
    return last - first + 1;
  }
}

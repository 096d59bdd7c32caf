package org.flitchbook.reading;

import java.util.ArrayList;
import java.util.List;

/** A list of numbers that grows by blocks, so that a long one is never held twice. */
final class Longs {

  private static final int BITS = 13;
  private static final int MASK = (1 << BITS) - 1;

  private final List<long[]> blocks = new ArrayList<>();
  private int size;

  int size() {
    return size;
  }

  void add(long value) {
    if ((size & MASK) == 0) {
      blocks.add(new long[1 << BITS]);
    }
    size++;
    set(size - 1, value);
  }

  long get(int index) {
    return blocks.get(index >> BITS)[index & MASK];
  }

  void set(int index, long value) {
    blocks.get(index >> BITS)[index & MASK] = value;
  }

  void reverse() {
    for (int low = 0, high = size - 1; low < high; low++, high--) {
      long kept = get(low);
      set(low, get(high));
      set(high, kept);
    }
  }
}

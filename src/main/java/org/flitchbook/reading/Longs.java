package org.flitchbook.reading;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A list of whole numbers that lie close together, such as the times or the levels of a log. It
 * grows by blocks, so that a long one is never held twice, and takes four bytes a number where the
 * numbers of a block differ by few enough grains from its first.
 */
final class Longs {

  /** In the place of a number that is not there. */
  static final long NONE = Long.MIN_VALUE;

  private static final int BITS = 12;
  private static final int SIZE = 1 << BITS;

  private final long grain;
  private final List<Block> blocks = new ArrayList<>();
  private int size;

  /**
   * Makes an empty list.
   *
   * @param grain what numbers mostly differ by, or a part of it
   */
  Longs(long grain) {
    this.grain = grain;
  }

  int size() {
    return size;
  }

  void add(long value) {
    if (size % SIZE == 0) {
      blocks.add(new Block(grain));
    }
    size++;
    set(size - 1, value);
  }

  long get(int index) {
    return blocks.get(index >> BITS).get(index & (SIZE - 1));
  }

  void set(int index, long value) {
    blocks.get(index >> BITS).set(index & (SIZE - 1), value);
  }

  private static final class Block {

    private static final int NOT_THERE = Integer.MIN_VALUE;

    private final long grain;
    private final int[] grains = new int[SIZE];
    private long base = NONE;
    private long @Nullable [] whole;

    Block(long grain) {
      this.grain = grain;
    }

    long get(int index) {
      if (whole != null) {
        return whole[index];
      }
      return grains[index] == NOT_THERE ? NONE : base + grains[index] * grain;
    }

    void set(int index, long value) {
      if (whole == null && value != NONE) {
        base = base == NONE ? value : base;
        if (!isNear(value)) {
          widen();
        }
      }
      if (whole != null) {
        whole[index] = value;
      } else {
        grains[index] = value == NONE ? NOT_THERE : (int) ((value - base) / grain);
      }
    }

    private boolean isNear(long value) {
      long away = value - base;
      return away % grain == 0 && Math.abs(away / grain) < Integer.MAX_VALUE;
    }

    private void widen() {
      long[] all = new long[SIZE];
      for (int i = 0; i < SIZE; i++) {
        all[i] = get(i);
      }
      whole = all;
    }
  }
}

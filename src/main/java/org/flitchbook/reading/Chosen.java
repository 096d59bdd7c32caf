package org.flitchbook.reading;

import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/** Rows that were chosen, in order; those that follow each other are held as a stretch. */
final class Chosen {

  private int first;
  private int size;
  private int @Nullable [] rows;

  void add(int row) {
    if (rows == null && size > 0 && row != first + size) {
      rows = new int[Math.max(256, size * 2)];
      for (int i = 0; i < size; i++) {
        rows[i] = first + i;
      }
    }
    if (size == 0) {
      first = row;
    }
    if (rows != null) {
      rows = size == rows.length ? Arrays.copyOf(rows, size * 2) : rows;
      rows[size] = row;
    }
    size++;
  }

  int size() {
    return size;
  }

  int get(int index) {
    return rows == null ? first + index : rows[index];
  }
}

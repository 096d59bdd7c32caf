package org.flitchbook.pdf;

import org.jspecify.annotations.Nullable;

/**
 * A piece of a page across its whole width, never cut.
 *
 * @param before room above it, left out at the top of a page
 * @param height without the room above
 * @param sticks whether the next strip must stand on the same page
 * @param again what is drawn above it where it begins a page, such as the head of its table
 */
record Strip(double before, double height, boolean sticks, @Nullable Strip again, Drawing drawing) {

  static Strip of(double before, double height, boolean sticks, Drawing drawing) {
    return new Strip(before, height, sticks, null, drawing);
  }
}

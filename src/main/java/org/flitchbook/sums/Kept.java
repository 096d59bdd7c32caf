package org.flitchbook.sums;

import java.util.List;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;

/** A curve without the readings by hand beside a live log that would count for the product. */
record Kept(Curve curve, List<Integer> indices) implements Curve {

  Kept {
    indices = List.copyOf(indices);
  }

  /** With all readings that stand by themselves, and of the others those that count against it. */
  static Kept of(Curve curve, IntPredicate against) {
    return new Kept(
        curve,
        IntStream.range(0, curve.size())
            .filter(index -> curve.stands(index) || against.test(index))
            .boxed()
            .toList());
  }

  /** Whether a reading by hand is cooler than what the log says before and after it. */
  static boolean isCooler(Curve curve, Shift shift, int index) {
    int before = Math.max(0, curve.loggedAtOrBefore(index));
    int after = Math.min(curve.size() - 1, curve.loggedAtOrAfter(index));
    long beside = Math.min(curve.level(before, shift), curve.level(after, shift));
    return curve.level(index, shift) < beside;
  }

  @Override
  public int size() {
    return indices.size();
  }

  @Override
  public long earliest(int index) {
    return curve.earliest(indices.get(index));
  }

  @Override
  public long latest(int index) {
    return curve.latest(indices.get(index));
  }

  @Override
  public long level(int index, Shift shift) {
    return curve.level(indices.get(index), shift);
  }

  @Override
  public boolean byHand(int index) {
    return curve.byHand(indices.get(index));
  }

  @Override
  public long interval() {
    return curve.interval();
  }

  @Override
  public long longestStep() {
    return curve.longestStep();
  }

  @Override
  public long longestStep(int from, int to) {
    return curve.longestStep(indices.get(from), indices.get(to));
  }
}

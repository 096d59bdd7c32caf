package org.flitchbook.sums;

import java.util.ArrayList;
import java.util.List;
import org.flitchbook.measure.Quantity;

/**
 * What each step left of the weight before it, and all of them of the green weight; in %.
 *
 * @param steps one for each weight after the first; their product is the total
 * @param total the last weight of the first
 */
public record Yields(List<Worked> steps, Worked total) {

  public Yields {
    steps = List.copyOf(steps);
  }

  /**
   * The yields of a lot: each weight ÷ the one before × 100, and last ÷ green × 100.
   *
   * @param weights the green weight first, then one a step in the order of time, all more than 0
   * @throws IllegalArgumentException where there are fewer than two weights, or one of them is none
   */
  public static Yields of(List<Quantity> weights) {
    if (weights.size() < 2 || weights.stream().anyMatch(each -> each.value().signum() <= 0)) {
      throw new IllegalArgumentException(weights + " are no weights of a lot over its steps");
    }
    List<Worked> steps = new ArrayList<>();
    for (int i = 1; i < weights.size(); i++) {
      steps.add(Sums.yieldOf(weights.get(i), weights.get(i - 1)));
    }
    return new Yields(steps, Sums.yieldOf(weights.get(weights.size() - 1), weights.get(0)));
  }
}

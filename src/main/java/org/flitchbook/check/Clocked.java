package org.flitchbook.check;

import java.util.Comparator;
import java.util.List;
import org.flitchbook.input.Place;
import org.flitchbook.measure.Ratio;

/** One stage with one probe; the least in order is the worst. */
record Clocked(Part part, String formula, List<Place> evidence, List<Rest> rests)
    implements Comparable<Clocked> {

  @Override
  public int compareTo(Clocked other) {
    return Comparator.comparing((Clocked each) -> each.part().verdict())
        .thenComparing(Clocked::left)
        .compare(this, other);
  }

  private Ratio left() {
    return part()
        .measured()
        .map(measured -> measured.margin().value())
        .orElse(Ratio.of(Long.MAX_VALUE));
  }
}

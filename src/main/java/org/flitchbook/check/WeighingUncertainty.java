package org.flitchbook.check;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Ratio;
import org.flitchbook.measure.Unit;
import org.flitchbook.plan.Figure;
import org.flitchbook.plan.Plan;
import org.flitchbook.reading.Entry;
import org.flitchbook.sums.Sums;
import org.flitchbook.sums.Weighed;
import org.flitchbook.sums.Weighing;
import org.flitchbook.sums.Worked;

/**
 * What the scales can prove of one piece's cure: the expanded uncertainty of its sum, every
 * weighing counted, the strength of the cure taken as exact.
 */
record WeighingUncertainty(Plan plan, CureStrength strength) {

  private static final Ratio TAKEN_OFF = Ratio.ONE.negate();

  /**
   * How far the sum may be off for all that the scales show, with k = 2.
   *
   * @param bases the meat, and the pickle that it came to rest with; none where no scale can tell
   * @param rind the weighing of what was taken off the meat
   * @return in the unit of the sum; empty where a scale is not known, or nothing was weighed
   */
  Optional<Quantity> prove(
      Worked worked, Figure figure, List<Entry> cures, List<Entry> bases, Optional<Entry> rind) {
    Optional<Weighed> cure = sum(cures, each -> strength.of(figure, each).orElseThrow().inBase());
    Optional<Weighed> whole = sum(bases, each -> Ratio.ONE);
    Optional<Weighed> meat =
        rind.isEmpty() ? whole : whole.flatMap(sum -> and(sum, rind.get(), TAKEN_OFF));
    return cure.filter(sum -> sum.net().signum() > 0 && !bases.isEmpty())
        .flatMap(sum -> meat.map(weighed -> proved(worked.value(), sum, weighed)));
  }

  private Optional<Weighed> sum(List<Entry> entries, Function<Entry, Ratio> factor) {
    Optional<Weighed> sum = Optional.of(Weighed.NOTHING);
    for (Entry each : entries) {
      sum = sum.flatMap(before -> and(before, each, factor.apply(each)));
    }
    return sum;
  }

  private static Quantity proved(Quantity value, Weighed cure, Weighed meat) {
    return Sums.uncertainty(value.in(Unit.PPM), cure, meat, Optional.empty()).in(value.unit());
  }

  /** Nothing weighed brought nothing in, and no doubt either. */
  private Optional<Weighed> and(Weighed sum, Entry entry, Ratio factor) {
    return entry.amount().value().signum() == 0
        ? Optional.of(sum)
        : weighing(entry).map(weighing -> sum.and(weighing, factor));
  }

  private Optional<Weighing> weighing(Entry entry) {
    return plan.instrument(entry.instrument())
        .flatMap(
            scale ->
                scale
                    .readability()
                    .map(
                        step ->
                            scale
                                .repeatability()
                                .map(scatter -> new Weighing(entry.amount(), step, scatter))
                                .orElseGet(() -> Weighing.of(entry.amount(), step))));
  }
}

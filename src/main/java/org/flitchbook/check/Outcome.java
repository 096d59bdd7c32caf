package org.flitchbook.check;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.flitchbook.input.Fault;
import org.flitchbook.input.Place;
import org.flitchbook.measure.Ratio;

/**
 * What one kind of limit finds, before the conditions of the limit and the doubts of the data are
 * looked at.
 *
 * @param rests the readings that it rests on
 */
record Outcome(
    Verdict verdict,
    Optional<Measured> measured,
    String formula,
    String reason,
    List<Place> evidence,
    List<Part> parts,
    List<Rest> rests) {

  static Outcome of(Verdict verdict, String reason) {
    return new Outcome(verdict, Optional.empty(), "", reason, List.of(), List.of(), List.of());
  }

  static Outcome pending(String reason) {
    return of(Verdict.PENDING, reason);
  }

  static Outcome notShown(String reason) {
    return of(Verdict.NOT_SHOWN, reason);
  }

  Outcome measured(Measured value, String sum) {
    return new Outcome(verdict, Optional.of(value), sum, reason, evidence, parts, rests);
  }

  Outcome measured(Optional<Measured> value, String sum) {
    return new Outcome(verdict, value, sum, reason, evidence, parts, rests);
  }

  Outcome from(List<Place> places) {
    return from(places, places.stream().map(Rest::on).toList());
  }

  Outcome from(List<Place> places, List<Rest> restsOn) {
    return new Outcome(verdict, measured, formula, reason, places, parts, restsOn);
  }

  Outcome parts(List<Part> stages) {
    return new Outcome(verdict, measured, formula, reason, evidence, stages, rests);
  }

  /** The same with a worse verdict and one more reason. */
  Outcome but(Verdict worse, String why) {
    String all = reason.isEmpty() ? why : reason + "; " + why;
    return new Outcome(worse, measured, formula, all, evidence, parts, rests);
  }

  boolean isTouchedBy(Fault fault) {
    return rests.stream().anyMatch(rest -> rest.isTouchedBy(fault));
  }

  /**
   * The outcome that counts of two: the worse verdict, then the smaller share of the limit left.
   */
  Outcome orWorse(Outcome other) {
    if (verdict != other.verdict) {
      return other.verdict.isWorseThan(verdict) ? other : this;
    }
    return left(other).compareTo(left(this)) < 0 ? other : this;
  }

  private static Ratio left(Outcome outcome) {
    return outcome
        .measured
        .map(measured -> measured.margin().value())
        .orElse(Ratio.of(Long.MAX_VALUE));
  }

  static Outcome worst(List<Outcome> outcomes) {
    return outcomes.stream()
        .reduce(Outcome::orWorse)
        .orElseThrow(() -> new AssertionError("no outcome to choose from"));
  }

  /** The worst of some, with the evidence and the readings of all. */
  static Outcome worstOfAll(List<Outcome> outcomes) {
    Outcome worst = worst(outcomes);
    List<Rest> rests = new ArrayList<>();
    outcomes.forEach(each -> rests.addAll(each.rests));
    return worst.from(worst.evidence, rests.stream().distinct().toList());
  }
}

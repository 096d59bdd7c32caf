package org.flitchbook.check;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.flitchbook.input.Fault;
import org.flitchbook.input.Place;
import org.flitchbook.measure.Ratio;
import org.flitchbook.message.Message;

/**
 * What one kind of limit finds, before the conditions of the limit and the doubts of the data are
 * looked at.
 *
 * @param dependsOn the entries and readings without which it would be another
 */
record Outcome(
    Verdict verdict,
    Optional<Measured> measured,
    List<Message> formulas,
    List<Message> reasons,
    List<Place> evidence,
    List<Part> parts,
    List<Dependency> dependsOn) {

  /** The worse verdict first, then the smaller share of the limit left. */
  static final Comparator<Outcome> WORST_FIRST =
      Comparator.comparing(Outcome::verdict).thenComparing(Outcome::left);

  static Outcome of(Verdict verdict, List<Message> reasons) {
    return new Outcome(
        verdict, Optional.empty(), List.of(), reasons, List.of(), List.of(), List.of());
  }

  static Outcome met() {
    return of(Verdict.MET, List.of());
  }

  static Outcome pending(Message reason) {
    return of(Verdict.PENDING, List.of(reason));
  }

  static Outcome notShown(Message reason) {
    return of(Verdict.NOT_SHOWN, List.of(reason));
  }

  static Outcome notMet(Message reason) {
    return of(Verdict.NOT_MET, List.of(reason));
  }

  Outcome measured(Measured value, Message formula) {
    return measured(Optional.of(value), List.of(formula));
  }

  Outcome measured(Optional<Measured> value, List<Message> sums) {
    return new Outcome(verdict, value, sums, reasons, evidence, parts, dependsOn);
  }

  Outcome from(List<Place> places) {
    return from(places, places.stream().map(Dependency::on).toList());
  }

  Outcome from(List<Place> places, List<Dependency> dependencies) {
    return new Outcome(verdict, measured, formulas, reasons, places, parts, dependencies);
  }

  Outcome parts(List<Part> stages) {
    return new Outcome(verdict, measured, formulas, reasons, evidence, stages, dependsOn);
  }

  /** The same with a worse verdict and one more reason. */
  Outcome but(Verdict worse, Message why) {
    List<Message> all = new ArrayList<>(reasons);
    all.add(why);
    return new Outcome(worse, measured, formulas, all, evidence, parts, dependsOn);
  }

  /** The same, of entries that were looked at too. */
  Outcome beside(Stream<Dependency> lookedAt) {
    return from(evidence, Stream.concat(dependsOn.stream(), lookedAt).distinct().toList());
  }

  /** The rows of the sheets that it uses. */
  Set<Place> rows() {
    return dependsOn.stream()
        .map(Dependency::place)
        .filter(place -> place.line() > 0)
        .collect(Collectors.toUnmodifiableSet());
  }

  boolean isTouchedBy(Fault fault) {
    return dependsOn.stream().anyMatch(each -> each.isTouchedBy(fault));
  }

  private Ratio left() {
    return measured.map(value -> value.margin().value()).orElse(Ratio.of(Long.MAX_VALUE));
  }

  /** The outcome that counts of some, at least one. */
  static Outcome worst(List<Outcome> outcomes) {
    return Collections.min(outcomes, WORST_FIRST);
  }

  /** The worst of some, with the evidence of that one and the dependencies of all. */
  static Outcome worstOfAll(List<Outcome> outcomes) {
    Outcome worst = worst(outcomes);
    List<Dependency> all =
        outcomes.stream().flatMap(each -> each.dependsOn.stream()).distinct().toList();
    return worst.from(worst.evidence, all);
  }
}

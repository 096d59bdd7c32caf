package org.flitchbook.doubt;

import java.time.Duration;
import java.util.Optional;
import org.flitchbook.input.Place;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Ratio;
import org.flitchbook.measure.Unit;
import org.flitchbook.plan.Instrument;
import org.flitchbook.reading.Entry;

/**
 * An entry in doubt, and another beside it: of the same measure, by another instrument, with the
 * same result; or, where nothing was measured, by another person.
 */
final class Beside {

  private final Rule rule;
  private final Subject subject;
  private final Doubted others;
  private final Entry doubted;

  /**
   * @param others what else is in doubt
   */
  Beside(Rule rule, Subject subject, Doubted others, Entry doubted) {
    this.rule = rule;
    this.subject = subject;
    this.others = others;
    this.doubted = doubted;
  }

  /** Why the other does not bear it out; empty where it does. */
  String lacks(Place named, Optional<Entry> other) {
    if (other.isEmpty() || other.get().equals(doubted)) {
      return subject.say("doubt.evidence.no-entry", "{0} is no other entry of the lot", named);
    }
    if (others.holds(other.get().place())) {
      return subject.say("doubt.evidence.in-doubt", "{0} is in doubt itself", named);
    }
    if (isFar(other.get())) {
      return subject.say(
          "doubt.evidence.far-from-entry",
          "{0} is not within {1} of it",
          named,
          rule.number(Explaining.WITHIN));
    }
    return doubted.quantity().isEmpty() ? person(named, other.get()) : reading(named, other.get());
  }

  private boolean isFar(Entry other) {
    Duration apart = Duration.between(doubted.time().earliest(), other.time().earliest()).abs();
    return apart.compareTo(rule.time(Explaining.WITHIN)) > 0;
  }

  private String person(Place named, Entry other) {
    return other.by().equals(doubted.by())
        ? subject.say("doubt.evidence.same-person", "{0} was written by the same person", named)
        : "";
  }

  private String reading(Place named, Entry other) {
    if (!other.is(doubted.what()) || !other.piece().equals(doubted.piece())) {
      return subject.say(
          "doubt.evidence.no-other",
          "{0} is no other {1} of it",
          named,
          subject.what(doubted.what()));
    }
    if (other.instrument().equals(doubted.instrument())) {
      return subject.say(
          "doubt.evidence.same-instrument", "{0} was read with the same instrument", named);
    }
    return agrees(other)
        ? ""
        : subject.say("doubt.evidence.disagrees-with-it", "{0} does not agree with it", named);
  }

  private boolean agrees(Entry other) {
    Ratio apart = other.amount().inBase().minus(doubted.amount().inBase()).abs();
    return !apart.isAbove(half(doubted).plus(half(other)));
  }

  /** How far an entry's true value may lie from it, in the base unit. */
  private Ratio half(Entry entry) {
    return subject
        .plan()
        .instrument(entry.instrument())
        .flatMap(instrument -> half(instrument, entry.amount()))
        .orElse(Ratio.ZERO);
  }

  private static Optional<Ratio> half(Instrument instrument, Quantity amount) {
    return switch (amount.dimension()) {
      case MASS -> instrument.readability().map(Quantity::inBase);
      case TEMPERATURE ->
          instrument.accuracy().map(exact -> exact.differenceIn(Unit.CELSIUS).value());
      default -> instrument.accuracyFor(amount.dimension()).map(Quantity::inBase);
    };
  }
}

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
  private final Entry doubted;

  Beside(Rule rule, Subject subject, Entry doubted) {
    this.rule = rule;
    this.subject = subject;
    this.doubted = doubted;
  }

  /** Why the other does not bear it out; empty where it does. */
  String lacks(Place named, Optional<Entry> other) {
    if (other.isEmpty() || other.get().equals(doubted)) {
      return named + " is no other entry of the lot";
    }
    if (isFar(other.get())) {
      return named + " is not within " + rule.number(Explaining.WITHIN) + " of it";
    }
    return doubted.quantity().isEmpty() ? person(named, other.get()) : reading(named, other.get());
  }

  private boolean isFar(Entry other) {
    Duration apart = Duration.between(doubted.time().earliest(), other.time().earliest()).abs();
    return apart.compareTo(rule.time(Explaining.WITHIN)) > 0;
  }

  private String person(Place named, Entry other) {
    return other.by().equals(doubted.by()) ? named + " was written by the same person" : "";
  }

  private String reading(Place named, Entry other) {
    if (!other.is(doubted.what()) || !other.piece().equals(doubted.piece())) {
      return named + " is no other " + doubted.what().word() + " of it";
    }
    if (other.instrument().equals(doubted.instrument())) {
      return named + " was read with the same instrument";
    }
    return agrees(other) ? "" : named + " does not agree with it";
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

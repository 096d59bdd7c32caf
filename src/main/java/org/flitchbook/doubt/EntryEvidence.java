package org.flitchbook.doubt;

import static org.flitchbook.message.Message.say;

import java.time.Duration;
import java.util.Optional;
import org.flitchbook.input.Place;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Ratio;
import org.flitchbook.measure.Unit;
import org.flitchbook.message.Message;
import org.flitchbook.plan.Instrument;
import org.flitchbook.reading.Entry;

/**
 * Whether another entry bears one out that is in doubt: of the same measure, by another instrument,
 * with the same result; or, where nothing was measured, by another person.
 */
record EntryEvidence(Evidence evidence, Entry doubted) {

  /** Why the other does not bear it out; empty where it does. */
  Optional<Message> lacks(Place named, Optional<Entry> other) {
    if (other.isEmpty() || other.get().equals(doubted)) {
      return Optional.of(say("doubt.evidence.no-entry", "{0} is no other entry of the lot", named));
    }
    if (evidence.isInDoubt(other.get().place())) {
      return Optional.of(Evidence.inDoubt(named));
    }
    if (isFar(other.get())) {
      return Optional.of(
          say(
              "doubt.evidence.far-from-entry",
              "{0} is not within {1} of it",
              named,
              Subject.length(evidence.rule().within())));
    }
    return doubted.quantity().isEmpty() ? person(named, other.get()) : reading(named, other.get());
  }

  private boolean isFar(Entry other) {
    Duration apart = Duration.between(doubted.time().earliest(), other.time().earliest()).abs();
    return apart.compareTo(evidence.rule().within()) > 0;
  }

  private Optional<Message> person(Place named, Entry other) {
    return other.by().equals(doubted.by())
        ? Optional.of(
            say("doubt.evidence.same-person", "{0} was written by the same person", named))
        : Optional.empty();
  }

  private Optional<Message> reading(Place named, Entry other) {
    if (!other.is(doubted.what()) || !other.piece().equals(doubted.piece())) {
      return Optional.of(
          say("doubt.evidence.no-other", "{0} is no other {1} of it", named, doubted.what()));
    }
    if (other.instrument().equals(doubted.instrument())) {
      return Optional.of(Evidence.sameInstrument(named));
    }
    return agrees(other)
        ? Optional.empty()
        : Optional.of(say("doubt.evidence.disagrees-with-it", "{0} does not agree with it", named));
  }

  private boolean agrees(Entry other) {
    Ratio apart = other.amount().inBase().minus(doubted.amount().inBase()).abs();
    return !apart.isAbove(half(doubted).plus(half(other)));
  }

  /** How far an entry's true value may lie from it, in the base unit. */
  private Ratio half(Entry entry) {
    return evidence
        .subject()
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

package org.flitchbook.doubt;

import static org.flitchbook.message.Message.say;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import org.flitchbook.input.Place;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Ratio;
import org.flitchbook.measure.Unit;
import org.flitchbook.message.Message;
import org.flitchbook.plan.Instrument;
import org.flitchbook.reading.Entry;

/**
 * What bears on an entry that is in doubt: another of the same, by another instrument, with the
 * same result; where nothing was measured, by another person; of an instrument that was not in
 * force, a later good check.
 */
record EntryBearing(Evidence evidence, Entry doubted, boolean byCheck) implements Bearing {

  @Override
  public Optional<Message> lacks(List<Place> named) {
    return named.stream().flatMap(each -> lacks(each).stream()).findFirst();
  }

  private Optional<Message> lacks(Place named) {
    if (byCheck && evidence.isGoodCheck(doubted.instrument(), doubted.time().earliest(), named)) {
      return Optional.empty();
    }
    Optional<Entry> found = evidence.entry(named).filter(other -> !other.equals(doubted));
    if (found.isEmpty()) {
      return Optional.of(say("doubt.evidence.no-entry", "{0} is no other entry of the lot", named));
    }
    Entry other = found.get();
    if (evidence.isInDoubt(other.place())) {
      return Optional.of(Evidence.inDoubt(named));
    }
    Duration apart = Duration.between(doubted.time().earliest(), other.time().earliest()).abs();
    if (apart.compareTo(evidence.rule().within()) > 0) {
      return Optional.of(
          say("doubt.evidence.far-from-entry", "{0} is not within {1} of it", named, within()));
    }
    if (!other.is(doubted.what()) || !other.piece().equals(doubted.piece())) {
      return Optional.of(
          say("doubt.evidence.no-other", "{0} is no other {1} of it", named, doubted.what()));
    }
    return doubted.quantity().isPresent()
        ? measured(other, named)
        : Evidence.when(
            other.by().equals(doubted.by()),
            say("doubt.evidence.same-person", "{0} was written by the same person", named));
  }

  private Quantity within() {
    return Subject.length(evidence.rule().within());
  }

  private Optional<Message> measured(Entry other, Place named) {
    if (other.instrument().equals(doubted.instrument())) {
      return Optional.of(Evidence.sameInstrument(named));
    }
    Ratio apart = other.amount().inBase().minus(doubted.amount().inBase()).abs();
    return Evidence.when(
        apart.isAbove(half(doubted).plus(half(other))),
        say("doubt.evidence.disagrees-with-it", "{0} does not agree with it", named));
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
      case MASS -> instrument.readability(amount.unit()).map(Quantity::inBase);
      case TEMPERATURE ->
          instrument.accuracy().map(exact -> exact.differenceIn(Unit.CELSIUS).value());
      default -> instrument.accuracyFor(amount.dimension()).map(Quantity::inBase);
    };
  }

  @Override
  public Message counts() {
    Message another =
        doubted.quantity().isPresent()
            ? say(
                "doubt.counts.measured",
                "the same {0} by another instrument, within {1} of it",
                doubted.what(),
                within())
            : say(
                "doubt.counts.written",
                "the same {0} by another person, within {1} of it",
                doubted.what(),
                within());
    return byCheck
        ? say("doubt.counts.or-check", "{0}; or a later good check of its instrument", another)
        : another;
  }
}

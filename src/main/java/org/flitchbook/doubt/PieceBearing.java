package org.flitchbook.doubt;

import static org.flitchbook.message.Message.say;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.flitchbook.lot.Track;
import org.flitchbook.measure.Quantity;
import org.flitchbook.message.Message;
import org.flitchbook.reading.Entry;
import org.flitchbook.sheet.Step;
import org.flitchbook.sheet.What;

/**
 * A thicker piece than the one that a probe sat in: readings of that piece, at the finish no colder
 * than the log, and while it cools no warmer, nor as warm as the log was a while before.
 */
record PieceBearing(Evidence evidence, Track log) implements LogBearing {

  @Override
  public Optional<Message> lacks(NamedReading reading) {
    if (reading.entry().filter(entry -> thickest().contains(entry.piece())).isEmpty()) {
      return Optional.of(
          say("doubt.evidence.other-piece", "{0} is not of the thickest piece", reading.place()));
    }
    Optional<Integer> beside = beside(reading);
    if (beside.isEmpty()) {
      return Optional.of(farFromReadings(reading));
    }
    return Evidence.when(
        isInChill(reading) ? reading.isAbove(beside.get()) : reading.isBelow(beside.get()),
        say("doubt.evidence.lags", "{0} lags behind the log", reading.place()));
  }

  /** The pieces that are as thick as the thickest. */
  private Set<String> thickest() {
    List<Entry> measured = evidence.subject().lot().all(What.THICKNESS);
    Optional<Quantity> most = measured.stream().map(Entry::amount).max(Comparator.naturalOrder());
    return measured.stream()
        .filter(entry -> !entry.amount().isBelow(most.orElseThrow()))
        .map(Entry::piece)
        .collect(Collectors.toSet());
  }

  private boolean isInChill(NamedReading reading) {
    return evidence.subject().endOf(Step.SMOKE).filter(out -> reading.at() > out).isPresent();
  }

  private boolean isAtFinish(NamedReading reading) {
    return !isInChill(reading) && isNear(reading, evidence.subject().endOf(Step.SMOKE));
  }

  private boolean isCooling(NamedReading reading) {
    return isInChill(reading) && reading.isApartFrom(-near().toMillis());
  }

  @Override
  public Optional<Message> lacksYet(List<NamedReading> readings) {
    boolean cools = !evidence.subject().coolingBounds().isEmpty();
    Predicate<Predicate<NamedReading>> has = when -> readings.stream().anyMatch(when);
    return Evidence.when(
        !has.test(this::isAtFinish) || (cools && !has.test(this::isCooling)),
        cools
            ? say(
                "doubt.evidence.piece-part",
                "it shows the piece at the finish or while it cools, not both")
            : say("doubt.evidence.piece-finish", "it does not show the piece at the finish"));
  }

  @Override
  public Message counts() {
    return say(
        "doubt.counts.piece",
        "readings of the thickest piece by another thermometer, with the piece named: one in the"
            + " last {0} of the smoke, no colder than the log, and one while it cools, no warmer",
        Subject.length(within()));
  }
}

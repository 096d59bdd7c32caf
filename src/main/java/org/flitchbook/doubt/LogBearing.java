package org.flitchbook.doubt;

import static org.flitchbook.message.Message.say;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.flitchbook.input.Explained.Choice;
import org.flitchbook.input.Place;
import org.flitchbook.input.Stretch;
import org.flitchbook.lot.Track;
import org.flitchbook.measure.Quantity;
import org.flitchbook.message.Message;
import org.flitchbook.sheet.Step;
import org.flitchbook.sheet.What;

/** What bears on a fault of a log: readings by another instrument, or of another probe. */
sealed interface LogBearing extends Bearing
    permits LogBearing.OfReadings,
        ClockBearing,
        PieceBearing,
        MomentBearing,
        LogBearing.OfInstrument {

  Evidence evidence();

  Track log();

  /** Why an independent reading bears nothing out. */
  Optional<Message> lacks(NamedReading reading);

  /** Why all of them together do not yet, where each of them does. */
  default Optional<Message> lacksYet(List<NamedReading> readings) {
    return Optional.empty();
  }

  @Override
  default Optional<Message> lacks(List<Place> named) {
    return named.stream()
        .flatMap(each -> lacks(each).stream())
        .findFirst()
        .or(
            () ->
                lacksYet(
                    named.stream()
                        .flatMap(each -> NamedReading.of(subject(), log(), each).stream())
                        .toList()));
  }

  private Optional<Message> lacks(Place named) {
    Optional<NamedReading> found = NamedReading.of(subject(), log(), named);
    if (found.isEmpty()) {
      return Optional.of(NamedReading.none(log(), named));
    }
    NamedReading reading = found.get();
    if (reading.isBySameInstrument()) {
      return Optional.of(Evidence.sameInstrument(named));
    }
    return evidence().isInDoubt(reading) ? Optional.of(Evidence.inDoubt(named)) : lacks(reading);
  }

  private Subject subject() {
    return evidence().subject();
  }

  default Duration near() {
    return evidence().rule().near();
  }

  default Duration within() {
    return evidence().rule().within();
  }

  /** Why it does not agree with the log at its time; empty where it does. */
  default Optional<Message> disagreement(NamedReading reading) {
    Optional<Integer> beside = beside(reading);
    if (beside.isEmpty()) {
      return Optional.of(farFromReadings(reading));
    }
    return reading.agrees(beside.get())
        ? Optional.empty()
        : Optional.of(
            say("doubt.evidence.disagrees", "{0} does not agree with them", reading.place()));
  }

  default Optional<Integer> beside(NamedReading reading) {
    return reading.nearest(i -> true).filter(logged -> reading.apart(logged) <= near().toMillis());
  }

  default Message farFromReadings(NamedReading reading) {
    return say(
        "doubt.evidence.far-from-readings",
        "{0} is not within {1} of the readings in doubt",
        reading.place(),
        Subject.length(near()));
  }

  /** Whether it was read near a time, as far as anybody wrote that. */
  default boolean isNear(NamedReading reading, Optional<Long> time) {
    return time.filter(at -> reading.isWithin(within().toMillis(), at)).isPresent();
  }

  /**
   * Readings of a log in doubt. To confirm them another must agree, soon after they began; to
   * exclude them it must disagree.
   *
   * @param stuck they are alike, so that another must agree with the last of them
   */
  record OfReadings(Evidence evidence, Track log, Stretch stretch, Choice choice, boolean stuck)
      implements LogBearing {

    @Override
    public Optional<Message> lacks(NamedReading reading) {
      Optional<Integer> beside =
          reading
              .nearest(i -> stretch.holds(log.earliest(i)))
              .filter(i -> reading.apart(i) <= near().toMillis());
      if (beside.isEmpty()) {
        return Optional.of(farFromReadings(reading));
      }
      Optional<Message> wrongTime =
          choice == Choice.CONFIRMED ? wrongTime(reading) : Optional.empty();
      if (wrongTime.isPresent()) {
        return wrongTime;
      }
      boolean agrees = reading.agrees(beside.get());
      return Evidence.when(
          agrees != (choice == Choice.CONFIRMED),
          agrees
              ? say("doubt.evidence.agrees", "{0} agrees with them", reading.place())
              : say("doubt.evidence.disagrees", "{0} does not agree with them", reading.place()));
    }

    private Optional<Message> wrongTime(NamedReading reading) {
      if (stuck) {
        return Evidence.when(
            !reading.isWithin(near().toMillis(), stretch.until().toEpochMilli()),
            say(
                "doubt.evidence.not-at-end",
                "{0} is not within {1} of the last of them",
                reading.place(),
                Subject.length(near())));
      }
      long late = reading.at() - stretch.from().toEpochMilli();
      return Evidence.when(
          late > within().toMillis(),
          say(
              "doubt.evidence.too-late",
              "{0} is more than {1} after they began",
              reading.place(),
              Subject.length(within())));
    }

    @Override
    public Message counts() {
      Quantity near = Subject.length(near());
      if (stuck && choice == Choice.CONFIRMED) {
        return say(
            "doubt.counts.stuck",
            "a reading by another thermometer or probe that agrees with the last of them, within"
                + " {0} of it",
            near);
      }
      return choice == Choice.CONFIRMED
          ? say(
              "doubt.counts.confirmed",
              "a reading by another thermometer or probe that agrees with them, within {0} of one"
                  + " of them and {1} after they began",
              near,
              Subject.length(within()))
          : say(
              "doubt.counts.excluded",
              "a reading by another thermometer or probe within {0} of one of them that does not"
                  + " agree with it",
              near);
    }
  }

  /**
   * The instrument of a log, or a log as a whole: a reading that agrees, in the heat near its end,
   * since all instruments agree about cold meat.
   */
  record OfInstrument(Evidence evidence, Track log, boolean byCheck) implements LogBearing {

    @Override
    public Optional<Message> lacks(List<Place> named) {
      Optional<Message> lacks = LogBearing.super.lacks(named);
      return byCheck && named.stream().allMatch(each -> evidence.isGoodCheck(log, each))
          ? Optional.empty()
          : lacks;
    }

    @Override
    public Optional<Message> lacks(NamedReading reading) {
      Optional<Long> out = evidence.subject().endOf(Step.SMOKE);
      boolean isOfHeat =
          Set.of(What.INTERNAL_TEMPERATURE, What.CHAMBER_TEMPERATURE).contains(log.what());
      return disagreement(reading)
          .or(
              () ->
                  Evidence.when(
                      isOfHeat && out.isPresent() && !isNear(reading, out),
                      say(
                          "doubt.evidence.not-hot",
                          "{0} is not within {1} of the end of the smoke",
                          reading.place(),
                          Subject.length(within()))));
    }

    @Override
    public Message counts() {
      Quantity within = Subject.length(within());
      return byCheck
          ? say(
              "doubt.counts.instrument",
              "a good check of it after its last use, or a reading by another instrument that"
                  + " agrees with it within {0} of the end of the smoke",
              within)
          : say(
              "doubt.counts.log",
              "a reading by another instrument that agrees with the log within {0} of the end of"
                  + " the smoke",
              within);
    }
  }
}

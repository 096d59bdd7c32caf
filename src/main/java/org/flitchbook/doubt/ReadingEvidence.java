package org.flitchbook.doubt;

import static org.flitchbook.message.Message.say;

import java.time.Duration;
import java.util.Comparator;
import java.util.Optional;
import java.util.stream.IntStream;
import org.flitchbook.input.Explained.Choice;
import org.flitchbook.input.Place;
import org.flitchbook.input.Stretch;
import org.flitchbook.lot.Lot;
import org.flitchbook.lot.Track;
import org.flitchbook.message.Message;
import org.flitchbook.sums.Shift;

/** Whether another reading of the same bears readings of a log out that are in doubt. */
record ReadingEvidence(Evidence evidence, Track doubted, Stretch stretch) {

  /** Another reading: by hand, or of another probe. */
  private record Other(Track track, int index) {

    long at() {
      return track.earliest(index);
    }
  }

  /** Why a named reading does not bear a choice out; empty where it does. */
  Optional<Message> lacks(Choice choice, Place named) {
    Optional<Other> other = other(named);
    if (other.isEmpty()) {
      return Optional.of(
          say(
              "doubt.evidence.no-reading",
              "{0} is no reading of another {1} of the lot",
              named,
              doubted.what()));
    }
    if (isOfSameInstrument(other.get())) {
      return Optional.of(Evidence.sameInstrument(named));
    }
    return evidence.isInDoubt(other.get().track(), other.get().index())
        ? Optional.of(Evidence.inDoubt(named))
        : lacks(choice, named, other.get());
  }

  private Optional<Message> lacks(Choice choice, Place named, Other other) {
    Duration near = evidence.rule().near();
    Duration within = evidence.rule().within();
    Optional<Integer> beside = nearest(other).filter(i -> apart(other, i) <= near.toMillis());
    if (beside.isEmpty()) {
      return Optional.of(
          say(
              "doubt.evidence.far-from-readings",
              "{0} is not within {1} of the readings in doubt",
              named,
              Subject.length(near)));
    }
    long late = other.at() - stretch.from().toEpochMilli();
    if (choice == Choice.CONFIRMED && late > within.toMillis()) {
      return Optional.of(
          say(
              "doubt.evidence.too-late",
              "{0} is more than {1} after they began",
              named,
              Subject.length(within)));
    }
    boolean agrees = agrees(other, beside.get());
    if (agrees == (choice == Choice.CONFIRMED)) {
      return Optional.empty();
    }
    return Optional.of(
        agrees
            ? say("doubt.evidence.agrees", "{0} agrees with them", named)
            : say("doubt.evidence.disagrees", "{0} does not agree with them", named));
  }

  /** Another probe of the same logger is another probe all the same. */
  private boolean isOfSameInstrument(Other other) {
    return other
        .track()
        .entry(other.index())
        .filter(entry -> entry.instrument().equals(doubted.instrument()))
        .isPresent();
  }

  private Optional<Other> other(Place named) {
    return evidence.subject().lot().tracks().stream()
        .map(Lot.StepTrack::track)
        .filter(track -> track.what() == doubted.what())
        .flatMap(
            track ->
                IntStream.range(0, track.size())
                    .filter(i -> isAt(track.place(i), named))
                    .filter(i -> !track.origin().equals(doubted.origin()) || track.byHand(i))
                    .mapToObj(i -> new Other(track, i)))
        .findFirst();
  }

  private static boolean isAt(Place place, Place named) {
    boolean column = named.column().isEmpty() || place.column().equals(named.column());
    return column && Evidence.isSameLine(place, named);
  }

  /** The reading in doubt that is nearest to it in time. */
  private Optional<Integer> nearest(Other other) {
    return IntStream.range(0, doubted.size())
        .filter(i -> !doubted.byHand(i) && stretch.holds(doubted.earliest(i)))
        .boxed()
        .min(Comparator.comparing(i -> apart(other, i)));
  }

  private long apart(Other other, int index) {
    return Math.abs(doubted.earliest(index) - other.at());
  }

  /** Whether one true value is within the uncertainty of both. */
  private boolean agrees(Other other, int index) {
    Track track = other.track();
    return track.level(other.index(), Shift.DOWN) <= doubted.level(index, Shift.UP)
        && track.level(other.index(), Shift.UP) >= doubted.level(index, Shift.DOWN);
  }
}

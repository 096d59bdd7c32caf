package org.flitchbook.doubt;

import java.util.Comparator;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.flitchbook.input.Explained.Choice;
import org.flitchbook.input.Place;
import org.flitchbook.input.Stretch;
import org.flitchbook.lot.Lot;
import org.flitchbook.lot.Track;
import org.flitchbook.sums.Shift;

/** Readings of a log in doubt, held against another reading of the same. */
final class Against {

  private final Rule rule;
  private final Subject subject;
  private final Doubted others;
  private final Track doubted;
  private final Stretch stretch;

  /**
   * @param others what else is in doubt
   */
  Against(Rule rule, Subject subject, Doubted others, Track doubted, Stretch stretch) {
    this.rule = rule;
    this.subject = subject;
    this.others = others;
    this.doubted = doubted;
    this.stretch = stretch;
  }

  /** Another reading: by hand, or of another probe. */
  private record Other(Track track, int index) {}

  /** Why a named reading does not bear a choice out; empty where it does. */
  String lacks(Choice choice, Place named) {
    Optional<Other> other = other(named);
    if (other.isEmpty()) {
      return subject.say(
          "doubt.evidence.no-reading",
          "{0} is no reading of another {1} of the lot",
          named,
          subject.what(doubted.what()));
    }
    if (isOfSameInstrument(other.get())) {
      return subject.say(
          "doubt.evidence.same-instrument", "{0} was read with the same instrument", named);
    }
    if (others.holds(other.get().track(), other.get().index())) {
      return subject.say("doubt.evidence.in-doubt", "{0} is in doubt itself", named);
    }
    Optional<Integer> beside = beside(other.get());
    if (beside.isEmpty()) {
      return subject.say(
          "doubt.evidence.far-from-readings",
          "{0} is not within {1} of the readings in doubt",
          named,
          rule.number(Explaining.NEAR));
    }
    if (choice == Choice.CONFIRMED && isLate(other.get())) {
      return subject.say(
          "doubt.evidence.too-late",
          "{0} is more than {1} after they began",
          named,
          rule.number(Explaining.WITHIN));
    }
    boolean agrees = agrees(other.get(), beside.get());
    if (agrees == (choice == Choice.CONFIRMED)) {
      return "";
    }
    return agrees
        ? subject.say("doubt.evidence.agrees", "{0} agrees with them", named)
        : subject.say("doubt.evidence.disagrees", "{0} does not agree with them", named);
  }

  private boolean isOfDoubted(Other other) {
    return other.track().origin().equals(doubted.origin());
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
    Stream<Track> all =
        subject.lot().tracks().stream()
            .map(Lot.StepTrack::track)
            .filter(track -> track.what() == doubted.what());
    return all.flatMap(
            track ->
                IntStream.range(0, track.size())
                    .filter(i -> isAt(track.place(i), named))
                    .mapToObj(i -> new Other(track, i)))
        .filter(other -> !isOfDoubted(other) || other.track().byHand(other.index()))
        .findFirst();
  }

  private static boolean isAt(Place place, Place named) {
    boolean column = named.column().isEmpty() || place.column().equals(named.column());
    return column && place.file().equals(named.file()) && place.line() == named.line();
  }

  /** The reading in doubt that is nearest to it in time. */
  private Optional<Integer> beside(Other other) {
    long at = at(other);
    return IntStream.range(0, doubted.size())
        .filter(i -> !doubted.byHand(i) && stretch.holds(doubted.earliest(i)))
        .boxed()
        .min(Comparator.comparing(i -> Math.abs(doubted.earliest(i) - at)))
        .filter(i -> Math.abs(doubted.earliest(i) - at) <= rule.time(Explaining.NEAR).toMillis());
  }

  private static long at(Other other) {
    return other.track().earliest(other.index());
  }

  private boolean isLate(Other other) {
    long began = stretch.from().toEpochMilli();
    return at(other) - began > rule.time(Explaining.WITHIN).toMillis();
  }

  /** Whether one true value is within the uncertainty of both. */
  private boolean agrees(Other other, int index) {
    Track track = other.track();
    return track.level(other.index(), Shift.DOWN) <= doubted.level(index, Shift.UP)
        && track.level(other.index(), Shift.UP) >= doubted.level(index, Shift.DOWN);
  }
}

package org.flitchbook.doubt;

import static org.flitchbook.message.Message.say;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.flitchbook.input.Explained.Choice;
import org.flitchbook.input.Fault;
import org.flitchbook.input.Place;
import org.flitchbook.input.Severity;
import org.flitchbook.input.Stretch;
import org.flitchbook.lot.Lot;
import org.flitchbook.lot.Register;
import org.flitchbook.lot.Track;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Ratio;
import org.flitchbook.measure.Unit;
import org.flitchbook.message.Message;
import org.flitchbook.plan.Instrument;
import org.flitchbook.reading.Entry;
import org.flitchbook.sums.Shift;

/**
 * Whether what an explanation names exists, is independent of what is in doubt, and bears on it: a
 * reading by another instrument or another probe near it in time that agrees with the readings in
 * doubt where they are confirmed, and disagrees where they are excluded; for a fault that is about
 * no stretch, a reading that agrees, or a later good check of the instrument.
 */
record Evidence(Explanations.Explanation rule, Subject subject, List<Fault> faults) {

  Evidence(Explanations.Explanation rule, Subject subject) {
    this(rule, subject, new ArrayList<>());
  }

  /** What is in doubt bears nothing out. */
  void doubt(List<Fault> found) {
    faults.addAll(found);
  }

  /** Why a fault is not borne out; empty where it is. */
  Optional<Message> lacks(Fault fault, Optional<Choice> choice, List<Place> evidence) {
    if (evidence.isEmpty()) {
      return Optional.of(say("doubt.evidence.none", "no other evidence is named"));
    }
    if (fault.stretch().isPresent() && choice.isEmpty()) {
      return Optional.of(say("doubt.evidence.no-choice", "it says neither confirmed nor excluded"));
    }
    return evidence.stream().flatMap(named -> lacks(fault, choice, named).stream()).findFirst();
  }

  private static Optional<Message> when(boolean holds, Message message) {
    return holds ? Optional.of(message) : Optional.empty();
  }

  private Optional<Message> lacks(Fault fault, Optional<Choice> choice, Place named) {
    Optional<Stretch> stretch = fault.stretch();
    Optional<Entry> entry = entry(fault.place());
    Place column = new Place(fault.place().file(), 0, fault.place().column());
    Place origin = stretch.map(Stretch::origin).orElse(column);
    Optional<Track> track =
        subject.lot().tracks().stream()
            .map(Lot.StepTrack::track)
            .filter(each -> each.origin().equals(origin))
            .findFirst();
    if (stretch.isPresent() && track.isPresent()) {
      return new Readings(this, track.get(), stretch.get()).lacks(choice.orElseThrow(), named);
    }
    if (entry.isPresent()) {
      return isGoodCheck(entry.get().instrument(), entry.get().time().earliest(), named)
          ? Optional.empty()
          : lacks(entry.get(), named);
    }
    return track.isPresent()
        ? ofColumn(track.get(), named)
        : Optional.of(say("doubt.evidence.nothing", "{0} can't be held against it", named));
  }

  private Optional<Message> ofColumn(Track track, Place named) {
    Instant first = Instant.ofEpochMilli(track.earliest(0));
    Instant last = Instant.ofEpochMilli(track.earliest(track.size() - 1));
    Stretch all = new Stretch(track.origin(), first, last, Stretch.Standing.IN_DOUBT);
    return isGoodCheck(track.instrument(), last, named)
        ? Optional.empty()
        : new Readings(this, track, all).lacks(Choice.CONFIRMED, named);
  }

  /** A check of that instrument that was good, after it was used. */
  private boolean isGoodCheck(String instrument, Instant used, Place named) {
    return subject.register().checks().stream()
        .filter(check -> check.instrument().id().equals(instrument))
        .filter(check -> check.passed() && !check.at().isBefore(used))
        .anyMatch(check -> check.entry().place().isSameLine(named));
  }

  private Optional<Entry> entry(Place place) {
    return Stream.concat(
            subject.lot().entries().stream(),
            subject.register().checks().stream().map(Register.Check::entry))
        .filter(entry -> entry.place().isSameLine(place))
        .findFirst();
  }

  /** Whether an entry was asked about. */
  private boolean isInDoubt(Place entry) {
    return faults.stream()
        .filter(fault -> !fault.is(Severity.NOTE))
        .anyMatch(fault -> fault.place().isSameLine(entry));
  }

  private static Message inDoubt(Place named) {
    return say("doubt.evidence.in-doubt", "{0} is in doubt itself", named);
  }

  private static Message sameInstrument(Place named) {
    return say("doubt.evidence.same-instrument", "{0} was read with the same instrument", named);
  }

  /**
   * Why another entry does not bear one out that is in doubt. It does where it is of the same
   * measure, by another instrument, with the same result; or, where nothing was measured, by
   * another person.
   */
  private Optional<Message> lacks(Entry doubted, Place named) {
    Optional<Entry> found = entry(named).filter(other -> !other.equals(doubted));
    if (found.isEmpty()) {
      return Optional.of(say("doubt.evidence.no-entry", "{0} is no other entry of the lot", named));
    }
    Entry other = found.get();
    Duration apart = Duration.between(doubted.time().earliest(), other.time().earliest()).abs();
    if (isInDoubt(other.place())) {
      return Optional.of(inDoubt(named));
    }
    if (apart.compareTo(rule.within()) > 0) {
      Quantity within = Subject.length(rule.within());
      return Optional.of(
          say("doubt.evidence.far-from-entry", "{0} is not within {1} of it", named, within));
    }
    return doubted.quantity().isPresent()
        ? reading(doubted, other, named)
        : when(
            other.by().equals(doubted.by()),
            say("doubt.evidence.same-person", "{0} was written by the same person", named));
  }

  private Optional<Message> reading(Entry doubted, Entry other, Place named) {
    if (!other.is(doubted.what()) || !other.piece().equals(doubted.piece())) {
      return Optional.of(
          say("doubt.evidence.no-other", "{0} is no other {1} of it", named, doubted.what()));
    }
    if (other.instrument().equals(doubted.instrument())) {
      return Optional.of(sameInstrument(named));
    }
    Ratio apart = other.amount().inBase().minus(doubted.amount().inBase()).abs();
    return when(
        apart.isAbove(half(doubted).plus(half(other))),
        say("doubt.evidence.disagrees-with-it", "{0} does not agree with it", named));
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
      case MASS -> instrument.readability(amount.unit()).map(Quantity::inBase);
      case TEMPERATURE ->
          instrument.accuracy().map(exact -> exact.differenceIn(Unit.CELSIUS).value());
      default -> instrument.accuracyFor(amount.dimension()).map(Quantity::inBase);
    };
  }

  /** Another reading: by hand, or of another probe. */
  private record Other(Track track, int index) {

    long at() {
      return track.earliest(index);
    }

    Optional<Entry> entry() {
      return track.entry(index);
    }
  }

  /** Readings of a log that are in doubt. */
  private record Readings(Evidence evidence, Track doubted, Stretch stretch) {

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
      // Another probe of the same logger is another probe all the same.
      Optional<String> byHand = other.get().entry().map(Entry::instrument);
      if (byHand.equals(Optional.of(doubted.instrument()))) {
        return Optional.of(sameInstrument(named));
      }
      return isInDoubt(other.get())
          ? Optional.of(inDoubt(named))
          : lacks(choice, named, other.get());
    }

    private Optional<Message> lacks(Choice choice, Place named, Other other) {
      Optional<Integer> beside =
          nearest(other).filter(i -> apart(other, i) <= evidence.rule.near().toMillis());
      if (beside.isEmpty()) {
        return Optional.of(
            say(
                "doubt.evidence.far-from-readings",
                "{0} is not within {1} of the readings in doubt",
                named,
                Subject.length(evidence.rule.near())));
      }
      long late = other.at() - stretch.from().toEpochMilli();
      if (choice == Choice.CONFIRMED && late > evidence.rule.within().toMillis()) {
        return Optional.of(
            say(
                "doubt.evidence.too-late",
                "{0} is more than {1} after they began",
                named,
                Subject.length(evidence.rule.within())));
      }
      boolean agrees = agrees(other, beside.get());
      return when(
          agrees != (choice == Choice.CONFIRMED),
          agrees
              ? say("doubt.evidence.agrees", "{0} agrees with them", named)
              : say("doubt.evidence.disagrees", "{0} does not agree with them", named));
    }

    /** Whether a reading was asked about, or left out because it is none. */
    private boolean isInDoubt(Other other) {
      Track track = other.track();
      return track.byHand(other.index())
          ? evidence.isInDoubt(track.place(other.index()))
          : evidence.faults.stream()
              .flatMap(fault -> fault.stretch().stream())
              .filter(each -> each.standing() != Stretch.Standing.SILENCE)
              .filter(each -> each.origin().equals(track.origin()))
              .anyMatch(each -> each.holds(other.at()));
    }

    private Optional<Other> other(Place named) {
      return evidence.subject.lot().tracks().stream()
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
      return place.isSameLine(named)
          && (named.column().isEmpty() || place.column().equals(named.column()));
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
}

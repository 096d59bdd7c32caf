package org.flitchbook.doubt;

import static org.flitchbook.message.Message.say;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.flitchbook.input.Explained.Choice;
import org.flitchbook.input.Fault;
import org.flitchbook.input.Place;
import org.flitchbook.input.Severity;
import org.flitchbook.input.Stretch;
import org.flitchbook.lot.Lot;
import org.flitchbook.lot.Register;
import org.flitchbook.lot.Track;
import org.flitchbook.message.Message;
import org.flitchbook.reading.Entry;

/**
 * Whether what an explanation names exists, is independent of what is in doubt, and bears on it: a
 * reading by another instrument or another probe near it in time that agrees with the readings in
 * doubt where they are confirmed, and disagrees where they are excluded; for a fault that is about
 * no stretch, a reading that agrees, or a later good check of the instrument.
 */
final class Evidence {

  private final Explanation rule;
  private final Subject subject;
  private final List<Fault> faults = new ArrayList<>();

  Evidence(Explanation rule, Subject subject) {
    this.rule = rule;
    this.subject = subject;
  }

  Explanation rule() {
    return rule;
  }

  Subject subject() {
    return subject;
  }

  /** What is in doubt bears nothing out. */
  void doubt(List<Fault> found) {
    faults.addAll(found);
  }

  /** Whether a reading was asked about, or left out because it is none. */
  boolean isInDoubt(Track track, int index) {
    return track.byHand(index)
        ? isInDoubt(track.place(index))
        : faults.stream()
            .flatMap(fault -> fault.stretch().stream())
            .filter(stretch -> stretch.standing() != Stretch.Standing.SILENCE)
            .filter(stretch -> stretch.origin().equals(track.origin()))
            .anyMatch(stretch -> stretch.holds(track.earliest(index)));
  }

  /** Whether an entry was asked about. */
  boolean isInDoubt(Place entry) {
    return faults.stream()
        .filter(fault -> !fault.is(Severity.NOTE))
        .anyMatch(fault -> isSameLine(fault.place(), entry));
  }

  /** Of whatever column. */
  static boolean isSameLine(Place place, Place named) {
    return place.file().equals(named.file()) && place.line() == named.line();
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

  private Optional<Message> lacks(Fault fault, Optional<Choice> choice, Place named) {
    Optional<Stretch> stretch = fault.stretch();
    Optional<Entry> entry = entry(fault.place());
    Optional<Track> track = track(stretch.map(Stretch::origin).orElse(column(fault.place())));
    if (stretch.isPresent() && track.isPresent()) {
      return new ReadingEvidence(this, track.get(), stretch.get())
          .lacks(choice.orElseThrow(), named);
    }
    if (entry.isPresent()) {
      return isGoodCheck(entry.get().instrument(), entry.get().time().earliest(), named)
          ? Optional.empty()
          : new EntryEvidence(this, entry.get()).lacks(named, entry(named));
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
        : new ReadingEvidence(this, track, all).lacks(Choice.CONFIRMED, named);
  }

  /** A check of that instrument that was good, after it was used. */
  private boolean isGoodCheck(String instrument, Instant used, Place named) {
    return subject.register().checks().stream()
        .filter(check -> check.instrument().id().equals(instrument))
        .filter(check -> check.passed() && !check.at().isBefore(used))
        .anyMatch(check -> isSameLine(check.entry().place(), named));
  }

  private static Place column(Place place) {
    return new Place(place.file(), 0, place.column());
  }

  private Optional<Track> track(Place origin) {
    return subject.lot().tracks().stream()
        .map(Lot.StepTrack::track)
        .filter(track -> track.origin().equals(origin))
        .findFirst();
  }

  private Optional<Entry> entry(Place place) {
    return Stream.concat(
            subject.lot().entries().stream(),
            subject.register().checks().stream().map(Register.Check::entry))
        .filter(entry -> isSameLine(entry.place(), place))
        .findFirst();
  }

  static Message inDoubt(Place named) {
    return say("doubt.evidence.in-doubt", "{0} is in doubt itself", named);
  }

  static Message sameInstrument(Place named) {
    return say("doubt.evidence.same-instrument", "{0} was read with the same instrument", named);
  }
}

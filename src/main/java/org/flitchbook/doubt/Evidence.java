package org.flitchbook.doubt;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.flitchbook.input.Explained.Choice;
import org.flitchbook.input.Fault;
import org.flitchbook.input.Place;
import org.flitchbook.input.Stretch;
import org.flitchbook.lot.Lot;
import org.flitchbook.lot.Register;
import org.flitchbook.lot.Track;
import org.flitchbook.reading.Entry;

/**
 * Whether what an explanation names exists, is independent of what is in doubt, and bears on it: a
 * reading by another instrument or another probe near it in time that agrees with the readings in
 * doubt where they are confirmed, and disagrees where they are excluded; for a fault that is about
 * no stretch, a reading that agrees, or a later good check of the instrument.
 */
final class Evidence {

  private final Rule rule;
  private final Subject subject;
  private final Doubted doubted = new Doubted();

  Evidence(Rule rule, Subject subject) {
    this.rule = rule;
    this.subject = subject;
  }

  /** What is in doubt bears nothing out. */
  void doubt(List<Fault> faults) {
    doubted.add(faults);
  }

  /** Why a fault is not borne out; empty where it is. */
  String lacks(Fault fault, Optional<Choice> choice, List<Place> evidence) {
    if (evidence.isEmpty()) {
      return subject.say("doubt.evidence.none", "no other evidence is named");
    }
    if (fault.stretch().isPresent() && choice.isEmpty()) {
      return subject.say("doubt.evidence.no-choice", "it says neither confirmed nor excluded");
    }
    return evidence.stream()
        .map(named -> lacks(fault, choice, named))
        .filter(why -> !why.isEmpty())
        .findFirst()
        .orElse("");
  }

  private String lacks(Fault fault, Optional<Choice> choice, Place named) {
    Optional<Stretch> stretch = fault.stretch();
    Optional<Entry> entry = entry(fault.place());
    Optional<Track> track = track(stretch.map(Stretch::origin).orElse(column(fault.place())));
    if (stretch.isPresent() && track.isPresent()) {
      return new Against(rule, subject, doubted, track.get(), stretch.get())
          .lacks(choice.orElseThrow(), named);
    }
    if (entry.isPresent()) {
      return isGoodCheck(entry.get().instrument(), entry.get().time().earliest(), named)
          ? ""
          : new Beside(rule, subject, doubted, entry.get()).lacks(named, entry(named));
    }
    return track
        .map(each -> ofColumn(each, named))
        .orElseGet(
            () -> subject.say("doubt.evidence.nothing", "{0} can't be held against it", named));
  }

  private String ofColumn(Track track, Place named) {
    Instant first = Instant.ofEpochMilli(track.earliest(0));
    Instant last = Instant.ofEpochMilli(track.earliest(track.size() - 1));
    Stretch all = new Stretch(track.origin(), first, last, Stretch.Standing.IN_DOUBT);
    return isGoodCheck(track.instrument(), last, named)
        ? ""
        : new Against(rule, subject, doubted, track, all).lacks(Choice.CONFIRMED, named);
  }

  /** A check of that instrument that was good, after it was used. */
  private boolean isGoodCheck(String instrument, Instant used, Place named) {
    return subject.register().checks().stream()
        .filter(check -> check.instrument().id().equals(instrument))
        .filter(check -> check.passed() && !check.at().isBefore(used))
        .anyMatch(check -> isSame(check.entry().place(), named));
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
        .filter(entry -> isSame(entry.place(), place))
        .findFirst();
  }

  /** The same line, of whatever column. */
  private static boolean isSame(Place place, Place named) {
    return place.file().equals(named.file()) && place.line() == named.line();
  }
}

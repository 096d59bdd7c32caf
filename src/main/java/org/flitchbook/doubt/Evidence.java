package org.flitchbook.doubt;

import static org.flitchbook.message.Message.say;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
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
import org.flitchbook.message.Message;
import org.flitchbook.reading.Entry;

/**
 * Whether what an explanation names exists, is independent of what is in doubt, and bears on it.
 * What bears on it depends on what the rule asks: a reading that agrees about cold meat shows
 * neither a clock, nor another piece, nor which of two probes is right.
 */
record Evidence(Explanations.Explanation rule, Subject subject, List<Fault> faults) {

  Evidence(Explanations.Explanation rule, Subject subject) {
    this(rule, subject, new ArrayList<>());
  }

  /** What is in doubt bears nothing out. */
  void doubt(List<Fault> found) {
    faults.addAll(found);
  }

  /** Why a fault is not borne out, and what would do it; empty where it is. */
  Optional<Message> lacks(Fault fault, Optional<Choice> choice, List<Place> evidence) {
    Optional<Bearing> bearing = bearing(fault, choice);
    Optional<Message> why =
        evidence.isEmpty()
            ? Optional.of(say("doubt.evidence.none", "no other evidence is named"))
            : fault.stretch().isPresent() && choice.isEmpty()
                ? Optional.of(
                    say("doubt.evidence.no-choice", "it says neither confirmed nor excluded"))
                : bearing
                    .map(each -> each.lacks(evidence))
                    .orElseGet(() -> Optional.of(nothing(evidence.get(0))));
    return why.map(
        lack ->
            bearing
                .map(
                    each ->
                        say("doubt.evidence.lacks", "{0}; what counts: {1}", lack, each.counts()))
                .orElse(lack));
  }

  private static Message nothing(Place named) {
    return say("doubt.evidence.nothing", "{0} can't be held against it", named);
  }

  static Optional<Message> when(boolean holds, Message message) {
    return holds ? Optional.of(message) : Optional.empty();
  }

  static Message inDoubt(Place named) {
    return say("doubt.evidence.in-doubt", "{0} is in doubt itself", named);
  }

  static Message sameInstrument(Place named) {
    return say("doubt.evidence.same-instrument", "{0} was read with the same instrument", named);
  }

  /** What bears on a fault; empty where nothing can. */
  private Optional<Bearing> bearing(Fault fault, Optional<Choice> choice) {
    Optional<Rule.Numbers> asks =
        subject.rules().stream()
            .filter(each -> each.name().equals(fault.rule()))
            .map(Rule::numbers)
            .findFirst();
    Place column = new Place(fault.place().file(), 0, fault.place().column());
    Place origin = fault.stretch().map(Stretch::origin).orElse(column);
    Optional<Track> log =
        subject.lot().tracks().stream()
            .map(Lot.StepTrack::track)
            .filter(each -> each.origin().equals(origin))
            .findFirst();
    if (fault.stretch().isPresent() && log.isPresent()) {
      return Optional.of(
          new LogBearing.OfReadings(
              this,
              log.get(),
              fault.stretch().get(),
              choice.orElse(Choice.CONFIRMED),
              is(asks, CoreAirRule.Stuck.class)));
    }
    boolean byCheck = is(asks, InstrumentRule.NotInForce.class);
    return entry(fault.place())
        .<Bearing>map(entry -> new EntryBearing(this, entry, byCheck))
        .or(() -> log.map(each -> ofLog(asks, each, fault.place(), byCheck)));
  }

  private Bearing ofLog(Optional<Rule.Numbers> asks, Track log, Place place, boolean byCheck) {
    if (is(asks, ClockOff.class) || is(asks, TimeElsewhere.class)) {
      return new ClockBearing(this, log);
    }
    if (is(asks, ProbeRule.UnprobedPiece.class)) {
      return new PieceBearing(this, log);
    }
    Optional<Integer> at =
        IntStream.range(0, log.size())
            .filter(i -> log.place(i).isSameLine(place))
            .boxed()
            .findFirst();
    return is(asks, InstrumentRule.class) || at.isEmpty()
        ? new LogBearing.OfInstrument(this, log, byCheck)
        : new MomentBearing(this, log, at.get(), others(asks, log), disputed(asks));
  }

  private static boolean is(Optional<Rule.Numbers> asks, Class<?> kind) {
    return asks.filter(kind::isInstance).isPresent();
  }

  /** Of probes that disagree any may be right: each counts where it counts against the lot. */
  private List<Track> others(Optional<Rule.Numbers> asks, Track log) {
    return is(asks, ProbeRule.ProbesDisagree.class)
        ? subject.cores().stream().map(ProbeLog::track).filter(each -> !each.equals(log)).toList()
        : List.of();
  }

  private static Duration disputed(Optional<Rule.Numbers> asks) {
    return asks.filter(FinalRule.HandDisagrees.class::isInstance)
        .map(each -> ((FinalRule.HandDisagrees) each).near())
        .orElse(Duration.ZERO);
  }

  boolean isGoodCheck(Track log, Place named) {
    long last = log.earliest(log.size() - 1);
    return isGoodCheck(log.instrument(), Instant.ofEpochMilli(last), named);
  }

  /** A check of that instrument that was good, after it was used. */
  boolean isGoodCheck(String instrument, Instant used, Place named) {
    return subject.register().checks().stream()
        .filter(check -> check.instrument().id().equals(instrument))
        .filter(check -> check.passed() && !check.at().isBefore(used))
        .anyMatch(check -> check.entry().place().isSameLine(named));
  }

  Optional<Entry> entry(Place place) {
    return Stream.concat(
            subject.lot().entries().stream(),
            subject.register().checks().stream().map(Register.Check::entry))
        .filter(entry -> entry.place().isSameLine(place))
        .findFirst();
  }

  /** Whether an entry was asked about. */
  boolean isInDoubt(Place entry) {
    return faults.stream()
        .filter(fault -> !fault.is(Severity.NOTE))
        .anyMatch(fault -> fault.place().isSameLine(entry));
  }

  /** Whether a reading was asked about, or left out because it is none. */
  boolean isInDoubt(NamedReading reading) {
    return reading.entry().isPresent()
        ? isInDoubt(reading.place())
        : faults.stream()
            .flatMap(fault -> fault.stretch().stream())
            .filter(each -> each.standing() != Stretch.Standing.SILENCE)
            .filter(each -> each.origin().equals(reading.track().origin()))
            .anyMatch(each -> each.holds(reading.at()));
  }
}

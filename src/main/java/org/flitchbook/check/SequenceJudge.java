package org.flitchbook.check;

import static org.flitchbook.message.Message.say;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.flitchbook.input.Place;
import org.flitchbook.lot.Stay;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Unit;
import org.flitchbook.message.Argument;
import org.flitchbook.message.Message;
import org.flitchbook.message.Time;
import org.flitchbook.reading.Entry;
import org.flitchbook.reading.Moment;
import org.flitchbook.sheet.Step;

/** Judges that the planned steps follow each other without one missing and without a long pause. */
record SequenceJudge(JudgedLot judged) {

  Outcome steps() {
    List<Message> missing = new ArrayList<>();
    List<Place> evidence = new ArrayList<>();
    for (Step step : judged.product().steps()) {
      JudgedLot.Phase phase = judged.phase(step);
      Optional<Stay> stay = judged.lot().stay(step);
      stay.ifPresent(each -> evidence.add(each.into().place()));
      stay.flatMap(Stay::out).ifPresent(out -> evidence.add(out.place()));
      if (phase == JudgedLot.Phase.MISSING) {
        missing.add(JudgedLot.passed(step.into()));
      } else if (phase == JudgedLot.Phase.OVER && stay.flatMap(Stay::out).isEmpty()) {
        missing.add(JudgedLot.passed(step.outOf()));
      }
    }
    overlaps().forEach(missing::add);
    boolean over =
        judged.product().steps().stream()
            .allMatch(step -> judged.phase(step) == JudgedLot.Phase.OVER);
    Outcome outcome = over ? Outcome.met() : moreToCome();
    return (missing.isEmpty() ? outcome : Outcome.of(Verdict.NOT_SHOWN, missing))
        .from(evidence)
        .beside(judged.product().steps().stream().flatMap(this::lookedAt));
  }

  /**
   * Each time it went in or to another place, and each time it came out before it went in again or,
   * piece by piece, for good. In twice or out twice without the other between is neither.
   */
  private Stream<Dependency> lookedAt(Step step) {
    Stream<Entry> outs =
        judged.lot().all(step.outOf()).stream().filter(out -> !out.piece().isEmpty());
    List<Stay.Absence> absences = judged.lot().stay(step).map(Stay::absences).orElse(List.of());
    Set<Entry> again = absences.stream().map(Stay.Absence::again).collect(Collectors.toSet());
    List<Entry> into = new ArrayList<>();
    for (Entry entry : judged.lot().all(step.into())) {
      boolean stays =
          into.stream()
              .filter(before -> before.piece().equals(entry.piece()))
              .reduce((earlier, later) -> later)
              .filter(before -> before.item().equals(entry.item()))
              .isPresent();
      if (!stays || again.contains(entry)) {
        into.add(entry);
      }
    }
    return Stream.of(into.stream(), outs, absences.stream().map(Stay.Absence::out))
        .flatMap(each -> each)
        .map(Entry::place)
        .map(Dependency::lookedAt);
  }

  private static Outcome moreToCome() {
    return Outcome.pending(say("check.steps.to-come", "more steps are to come"));
  }

  /** The longest pause between two steps, or out of one, of at most that. */
  Outcome between(Quantity atMost) {
    return pauses()
        .max(Comparator.comparing(Pause::time))
        .map(longest -> judged(longest, atMost))
        .orElseGet(
            () -> Outcome.pending(say("check.between.none-yet", "the first step has not ended")));
  }

  private Outcome judged(Pause pause, Quantity atMost) {
    Quantity value = JudgedLot.time(pause.time(), atMost.unit());
    return compared(pause, value, atMost)
        .measured(
            Measured.of(
                say("check.between.longest", "longest time between steps"), value, true, atMost),
            formula(pause, atMost.unit()))
        .from(pause.evidence());
  }

  private Outcome compared(Pause pause, Quantity value, Quantity atMost) {
    if (value.isAbove(atMost)) {
      return Outcome.notShown(
          pause.within()
              ? say("check.between.out-of", "{0} out of the step {1}", value, pause.after())
              : say("check.between.after", "{0} after the step {1}", value, pause.after()));
    }
    boolean toCome = judged.product().steps().stream().anyMatch(judged::isToCome);
    return toCome ? moreToCome() : Outcome.met();
  }

  private Message formula(Pause pause, Unit unit) {
    Time from = judged.date(pause.from().earliest());
    Time to = judged.date(pause.to().earliest());
    Argument time = JudgedLot.time(pause.written(), pause.time(), unit);
    return pause.within()
        ? say(
            "check.between.away",
            "out of the step {0}, from {1} to {2}: {3}",
            pause.after(),
            from,
            to,
            time)
        : say(
            "check.between.formula",
            "after the step {0}, from {1} to {2}: {3}",
            pause.after(),
            from,
            to,
            time);
  }

  /**
   * A time in no step.
   *
   * @param within whether it went into the same step again after it
   */
  private record Pause(Step after, boolean within, Moment from, Moment to, List<Place> evidence) {
    Duration time() {
      Duration time = from.longestTo(to);
      return time.isNegative() ? Duration.ZERO : time;
    }

    Duration written() {
      return time().isZero() ? Duration.ZERO : from.writtenTo(to);
    }
  }

  private Stream<Pause> pauses() {
    List<Step> steps = judged.product().steps();
    return Stream.concat(
        steps.stream().limit(steps.size() - 1L).flatMap(this::pauses),
        judged.lot().stays().stream().flatMap(SequenceJudge::absences));
  }

  /** The times that it was out of a step before it went into the same again. */
  private static Stream<Pause> absences(Stay stay) {
    return stay.absences().stream()
        .map(
            absence ->
                new Pause(
                    stay.step(),
                    true,
                    absence.out().time(),
                    absence.again().time(),
                    List.of(absence.out().place(), absence.again().place())));
  }

  /** From one step to a later one, of each piece that was written by itself. */
  private Stream<Pause> pauses(Step after) {
    return passages(after)
        .map(
            passed ->
                new Pause(
                    after,
                    false,
                    passed.out().time(),
                    passed.into().map(Entry::time).orElse(Moment.exactly(judged.moment())),
                    Stream.concat(Stream.of(passed.out()), passed.into().stream())
                        .map(Entry::place)
                        .toList()));
  }

  /** The steps that a piece went into before it came out of the one before. */
  private Stream<Message> overlaps() {
    return judged.product().steps().stream()
        .flatMap(this::passages)
        .filter(passed -> passed.into().filter(into -> isBefore(into, passed.out())).isPresent())
        .map(
            passed ->
                say(
                    "check.steps.overlap",
                    "\"{0}\" ({1}) before \"{2}\" ({3})",
                    passed.into().orElseThrow().what(),
                    passed.into().orElseThrow().place(),
                    passed.out().what(),
                    passed.out().place()));
  }

  private static boolean isBefore(Entry one, Entry other) {
    return one.time().latest().isBefore(other.time().earliest());
  }

  /**
   * A piece that came out of a step for good, and went into a later one.
   *
   * @param into empty where it has not yet
   */
  private record Passage(Entry out, Optional<Entry> into) {}

  private Stream<Passage> passages(Step after) {
    if (judged.lot().stay(after).flatMap(Stay::out).isEmpty()) {
      return Stream.empty();
    }
    Map<String, Entry> outs = new LinkedHashMap<>();
    judged.lot().all(after.outOf()).forEach(out -> outs.put(out.piece(), out));
    Map<String, Entry> intos = new LinkedHashMap<>();
    judged.lot().laterThan(after).stream()
        .flatMap(later -> judged.lot().all(later.step().into()).stream())
        .forEach(into -> intos.putIfAbsent(into.piece(), into));
    return outs.values().stream().flatMap(out -> passages(out, outs, intos));
  }

  /** Of an entry for no piece, all pieces that did not come out by one of their own. */
  private static Stream<Passage> passages(
      Entry out, Map<String, Entry> outs, Map<String, Entry> intos) {
    Optional<Entry> own =
        Optional.ofNullable(intos.get(out.piece())).or(() -> Optional.ofNullable(intos.get("")));
    return out.piece().isEmpty() && !intos.isEmpty()
        ? intos.values().stream()
            .filter(into -> into.piece().isEmpty() || !outs.containsKey(into.piece()))
            .map(into -> new Passage(out, Optional.of(into)))
        : Stream.of(new Passage(out, own));
  }
}

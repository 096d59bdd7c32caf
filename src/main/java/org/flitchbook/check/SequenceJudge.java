package org.flitchbook.check;

import static org.flitchbook.message.Message.say;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.flitchbook.input.Place;
import org.flitchbook.lot.Stay;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Unit;
import org.flitchbook.message.Message;
import org.flitchbook.reading.Entry;
import org.flitchbook.reading.Moment;
import org.flitchbook.sheet.Step;

/** Judges that the planned steps follow each other without one missing and without a long pause. */
final class SequenceJudge {

  private final JudgedLot judged;

  SequenceJudge(JudgedLot judged) {
    this.judged = judged;
  }

  Outcome steps() {
    List<Message> missing = new ArrayList<>();
    List<Place> evidence = new ArrayList<>();
    for (Step step : judged.product().steps()) {
      JudgedLot.Phase phase = judged.phase(step);
      Optional<Stay> stay = judged.lot().stay(step);
      stay.ifPresent(each -> evidence.add(each.into().place()));
      stay.flatMap(Stay::out).ifPresent(out -> evidence.add(out.place()));
      if (phase == JudgedLot.Phase.MISSING) {
        missing.add(CommonReasons.passed(step.into()));
      } else if (phase == JudgedLot.Phase.OVER && stay.flatMap(Stay::out).isEmpty()) {
        missing.add(CommonReasons.passed(step.outOf()));
      }
    }
    Outcome outcome = allOver() ? Outcome.met() : moreToCome();
    return (missing.isEmpty() ? outcome : Outcome.of(Verdict.NOT_SHOWN, missing)).from(evidence);
  }

  private static Outcome moreToCome() {
    return Outcome.pending(say("check.steps.to-come", "more steps are to come"));
  }

  private boolean allOver() {
    return judged.product().steps().stream()
        .allMatch(step -> judged.phase(step) == JudgedLot.Phase.OVER);
  }

  private boolean isMoreToCome() {
    return judged.product().steps().stream()
        .map(judged::phase)
        .anyMatch(phase -> phase == JudgedLot.Phase.NOT_BEGUN || phase == JudgedLot.Phase.RUNNING);
  }

  /** The longest pause between two steps, of at most that. */
  Outcome between(Quantity atMost) {
    Optional<Pause> longest = pauses().stream().reduce(Pause::orLonger);
    if (longest.isEmpty()) {
      return Outcome.pending(say("check.between.none-yet", "the first step has not ended"));
    }
    Pause pause = longest.get();
    Quantity value = JudgedLot.time(pause.time(), atMost.unit());
    return compared(pause, atMost)
        .measured(
            Measured.of(
                say("check.between.longest", "longest time between steps"), value, true, atMost),
            formula(pause, atMost.unit()))
        .from(pause.evidence());
  }

  private Outcome compared(Pause pause, Quantity atMost) {
    if (JudgedLot.time(pause.time(), Unit.SECOND).isAbove(atMost)) {
      Quantity value = JudgedLot.time(pause.time(), atMost.unit());
      return Outcome.notShown(
          say("check.between.after", "{0} after the step {1}", value, pause.after()));
    }
    return isMoreToCome() ? moreToCome() : Outcome.met();
  }

  private Message formula(Pause pause, Unit unit) {
    return say(
        "check.between.formula",
        "after the step {0}, from {1} to {2}: {3}",
        pause.after(),
        judged.date(pause.from().earliest()),
        judged.date(pause.to().earliest()),
        JudgedLot.time(pause.written(), pause.time(), unit));
  }

  private record Pause(Step after, Moment from, Moment to, List<Place> evidence) {
    Duration time() {
      Duration time = from.longestTo(to);
      return time.isNegative() ? Duration.ZERO : time;
    }

    Duration written() {
      return time().isZero() ? Duration.ZERO : from.writtenTo(to);
    }

    Pause orLonger(Pause other) {
      return other.time().compareTo(time()) > 0 ? other : this;
    }
  }

  private List<Pause> pauses() {
    List<Pause> pauses = new ArrayList<>();
    List<Step> steps = judged.product().steps();
    for (int i = 0; i + 1 < steps.size(); i++) {
      Step step = steps.get(i);
      Optional<Entry> out = judged.lot().stay(step).flatMap(Stay::out);
      Optional<Entry> next = judged.lot().laterThan(step).map(Stay::into);
      out.ifPresent(from -> pauses.add(pause(step, from, next)));
    }
    return pauses;
  }

  private Pause pause(Step after, Entry from, Optional<Entry> next) {
    Moment to = next.map(Entry::time).orElse(Moment.exactly(judged.moment()));
    List<Place> evidence = new ArrayList<>(List.of(from.place()));
    next.ifPresent(entry -> evidence.add(entry.place()));
    return new Pause(after, from.time(), to, evidence);
  }
}

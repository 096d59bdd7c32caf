package org.flitchbook.check;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.flitchbook.input.Place;
import org.flitchbook.lot.Stay;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Unit;
import org.flitchbook.reading.Entry;
import org.flitchbook.reading.Moment;
import org.flitchbook.sheet.Step;
import org.flitchbook.sheet.What;

/** Judges that the planned steps follow each other without one missing and without a long pause. */
final class Sequence {

  private final Case judged;

  Sequence(Case judged) {
    this.judged = judged;
  }

  Outcome steps() {
    List<String> missing = new ArrayList<>();
    List<Place> evidence = new ArrayList<>();
    for (Step step : judged.product().steps()) {
      Case.Phase phase = judged.phase(step);
      Optional<Stay> stay = judged.lot().stay(step);
      stay.ifPresent(each -> evidence.add(each.into().place()));
      stay.flatMap(Stay::out).ifPresent(out -> evidence.add(out.place()));
      if (phase == Case.Phase.MISSING) {
        missing.add(passed(step.into()));
      } else if (phase == Case.Phase.OVER && stay.flatMap(Stay::out).isEmpty()) {
        missing.add(passed(step.outOf()));
      }
    }
    if (!missing.isEmpty()) {
      return Outcome.notShown(String.join("; ", missing)).from(evidence);
    }
    return (allOver()
            ? Outcome.of(Verdict.MET, "")
            : Outcome.pending(judged.say("check.steps.to-come", "more steps are to come")))
        .from(evidence);
  }

  private String passed(What what) {
    return judged.say(
        "check.step.passed", "no \"{0}\" entry, though a later step has begun", judged.what(what));
  }

  private boolean allOver() {
    return judged.product().steps().stream()
        .allMatch(step -> judged.phase(step) == Case.Phase.OVER);
  }

  private boolean isMoreToCome() {
    return judged.product().steps().stream()
        .map(judged::phase)
        .anyMatch(phase -> phase == Case.Phase.NOT_BEGUN || phase == Case.Phase.RUNNING);
  }

  /** The longest pause between two steps, of at most that. */
  Outcome between(Quantity atMost) {
    Optional<Pause> longest = pauses().stream().reduce(Pause::orLonger);
    if (longest.isEmpty()) {
      return Outcome.pending(judged.say("check.between.none-yet", "the first step has not ended"));
    }
    Pause pause = longest.get();
    Quantity value = Case.time(pause.time(), atMost.unit());
    boolean tooLong = Case.time(pause.time(), Unit.SECOND).isAbove(atMost);
    Verdict verdict = tooLong ? Verdict.NOT_SHOWN : isMoreToCome() ? Verdict.PENDING : Verdict.MET;
    String reason =
        switch (verdict) {
          case NOT_SHOWN ->
              judged.say(
                  "check.between.after",
                  "{0} after the step {1}",
                  value.shown(),
                  judged.step(pause.after()));
          case PENDING -> judged.say("check.steps.to-come", "more steps are to come");
          default -> "";
        };
    return Outcome.of(verdict, reason)
        .measured(
            Measured.of(
                judged.say("check.between.longest", "longest time between steps"),
                value,
                true,
                atMost),
            judged.say(
                "check.between.formula",
                "after the step {0}, from {1} to {2}: {3}",
                judged.step(pause.after()),
                judged.date(pause.from().earliest()),
                judged.date(pause.to().earliest()),
                judged.time(pause.written(), pause.time(), atMost.unit())))
        .from(pause.evidence());
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

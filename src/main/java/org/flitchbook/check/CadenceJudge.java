package org.flitchbook.check;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.flitchbook.input.Place;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Unit;
import org.flitchbook.plan.Kind;
import org.flitchbook.reading.Entry;
import org.flitchbook.reading.Moment;
import org.flitchbook.sheet.Step;

/** Judges that something was done at least every so often while the step ran. */
final class CadenceJudge {

  private final Case judged;
  private final Kind.Cadence cadence;
  private final Step step;

  CadenceJudge(Case judged, Kind.Cadence cadence, Step step) {
    this.judged = judged;
    this.cadence = cadence;
    this.step = step;
  }

  /** The longest time between two of them. */
  private record Pause(Moment from, Moment to, List<Place> between) {
    Duration written() {
      return from.writtenTo(to);
    }
  }

  Outcome judge() {
    Optional<Outcome> without = judged.withoutStay(step);
    if (without.isPresent()) {
      return without.get();
    }
    List<Entry> done = judged.lot().all(cadence.what());
    Entry into = judged.stay(step).orElseThrow().into();
    Pause longest = longest(into, done);
    boolean over = judged.phase(step) == Case.Phase.OVER;
    if (done.isEmpty()) {
      return over || isTooLong(longest.written())
          ? Outcome.notShown(judged.noEntry(cadence.what())).from(List.of(into.place()))
          : Outcome.pending(
              judged.say(
                  "check.cadence.none-so-far",
                  "no \"{0}\" entry so far",
                  judged.what(cadence.what())));
    }
    return told(verdict(longest, over), longest, done);
  }

  private Verdict verdict(Pause longest, boolean over) {
    if (isTooLong(longest.written())) {
      return Verdict.NOT_MET;
    }
    if (isTooLong(longest.from().longestTo(longest.to()))) {
      return Verdict.NOT_SHOWN;
    }
    return over ? Verdict.MET : Verdict.PENDING;
  }

  private boolean isTooLong(Duration time) {
    return Case.time(time, Unit.SECOND).isAbove(cadence.every());
  }

  private Pause longest(Entry into, List<Entry> done) {
    Moment before = into.time();
    Place at = into.place();
    Pause longest = new Pause(before, before, List.of(at));
    for (Entry entry : done) {
      longest = longer(longest, new Pause(before, entry.time(), List.of(at, entry.place())));
      before = entry.time();
      at = entry.place();
    }
    return longer(longest, new Pause(before, judged.endOf(step), List.of(at)));
  }

  private static Pause longer(Pause a, Pause b) {
    return b.written().compareTo(a.written()) > 0 ? b : a;
  }

  private Outcome told(Verdict verdict, Pause longest, List<Entry> done) {
    Quantity value = Case.time(longest.from().longestTo(longest.to()), cadence.every().unit());
    String reason =
        switch (verdict) {
          case NOT_MET ->
              judged.say(
                  "check.cadence.too-long",
                  "{0} between two, of at most {1}",
                  value.shown(),
                  cadence.every());
          case NOT_SHOWN ->
              judged.say(
                  "check.worse-minutes",
                  "{0} if both minutes are taken at their worse end",
                  value.shown());
          case PENDING -> judged.runs(step);
          case MET -> "";
        };
    List<Rest> rests = new ArrayList<>(longest.between().stream().map(Rest::on).toList());
    done.forEach(entry -> rests.add(Rest.on(entry.place())));
    return Outcome.of(verdict, reason)
        .measured(
            Measured.of(
                judged.say(
                    "check.cadence.longest",
                    "longest time between \"{0}\"",
                    judged.what(cadence.what())),
                value,
                true,
                cadence.every()),
            judged.say(
                "check.cadence.entries",
                "{0} entries; the longest pause is {1}",
                done.size(),
                shown(longest)))
        .from(longest.between(), rests);
  }

  private String shown(Pause pause) {
    return judged.say(
        "check.cadence.pause",
        "from {0} to {1}: {2}",
        judged.date(pause.from().earliest()),
        judged.date(pause.to().earliest()),
        judged.time(pause.written(), pause.from().longestTo(pause.to()), cadence.every().unit()));
  }
}

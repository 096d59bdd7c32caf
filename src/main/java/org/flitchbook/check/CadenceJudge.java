package org.flitchbook.check;

import static org.flitchbook.message.Message.say;

import java.time.Duration;
import java.util.List;
import java.util.stream.Stream;
import org.flitchbook.input.Place;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Unit;
import org.flitchbook.message.Message;
import org.flitchbook.plan.Kind;
import org.flitchbook.reading.Entry;
import org.flitchbook.reading.Moment;
import org.flitchbook.sheet.Step;

/** Judges that something was done at least every so often while the step ran. */
record CadenceJudge(JudgedLot judged, Kind.Cadence cadence, Step step) {

  private record Pause(Moment from, Moment to, List<Place> between) {

    Duration written() {
      return from.writtenTo(to);
    }

    /** The longest time that both minutes allow. */
    Duration worst() {
      return from.longestTo(to);
    }

    Pause orLonger(Pause other) {
      return other.written().compareTo(written()) > 0 ? other : this;
    }
  }

  Outcome judge() {
    return judged.withoutStay(step).orElseGet(this::ofStay);
  }

  private Outcome ofStay() {
    Entry into = judged.stay(step).orElseThrow().into();
    List<Entry> done =
        judged.lot().all(cadence.what()).stream().filter(entry -> isDuring(into, entry)).toList();
    Pause longest = longest(into, done);
    boolean over = judged.phase(step) == JudgedLot.Phase.OVER;
    if (done.isEmpty()) {
      return over || isTooLong(longest.written())
          ? Outcome.notShown(JudgedLot.noEntry(cadence.what())).from(List.of(into.place()))
          : Outcome.pending(
              say("check.cadence.none-so-far", "no \"{0}\" entry so far", cadence.what()));
    }
    Stream<Place> dependsOn =
        Stream.concat(longest.between().stream(), done.stream().map(Entry::place));
    return compared(longest, over)
        .measured(measured(longest), formula(longest, done.size()))
        .from(longest.between(), dependsOn.map(Dependency::on).toList());
  }

  /** What was done before it went in or after it came out was done to something else. */
  private boolean isDuring(Entry into, Entry entry) {
    return !entry.time().isBefore(into.time())
        && !entry.time().earliest().isAfter(judged.endOf(step).latest());
  }

  private Outcome compared(Pause longest, boolean over) {
    Quantity worst = value(longest);
    if (isTooLong(longest.written())) {
      return Outcome.notMet(
          say(
              "check.cadence.too-long",
              "{0} between two, of at most {1}",
              worst,
              cadence.every().asWritten()));
    }
    if (isTooLong(longest.worst())) {
      return Outcome.notShown(JudgedLot.worseMinutes(worst));
    }
    return over ? Outcome.met() : Outcome.pending(JudgedLot.runs(step));
  }

  private boolean isTooLong(Duration time) {
    return JudgedLot.time(time, Unit.SECOND).isAbove(cadence.every());
  }

  private Pause longest(Entry into, List<Entry> done) {
    Entry before = into;
    Pause longest = new Pause(into.time(), into.time(), List.of(into.place()));
    for (Entry entry : done) {
      longest =
          longest.orLonger(
              new Pause(before.time(), entry.time(), List.of(before.place(), entry.place())));
      before = entry;
    }
    return longest.orLonger(new Pause(before.time(), judged.endOf(step), List.of(before.place())));
  }

  private Quantity value(Pause longest) {
    return JudgedLot.time(longest.worst(), cadence.every().unit());
  }

  private Measured measured(Pause longest) {
    return Measured.of(
        say("check.cadence.longest", "longest time between \"{0}\"", cadence.what()),
        value(longest),
        true,
        cadence.every());
  }

  private Message formula(Pause longest, int entries) {
    Message pause =
        say(
            "check.cadence.pause",
            "from {0} to {1}: {2}",
            judged.date(longest.from().earliest()),
            judged.date(longest.to().earliest()),
            JudgedLot.time(longest.written(), longest.worst(), cadence.every().unit()));
    return say("check.cadence.entries", "{0} entries; the longest pause is {1}", entries, pause);
  }
}

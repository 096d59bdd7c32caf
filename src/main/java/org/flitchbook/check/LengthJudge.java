package org.flitchbook.check;

import static org.flitchbook.message.Message.say;

import java.time.Duration;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Unit;
import org.flitchbook.message.Argument;
import org.flitchbook.message.Message;
import org.flitchbook.plan.Kind;
import org.flitchbook.reading.Entry;
import org.flitchbook.reading.Moment;
import org.flitchbook.sheet.Step;

/** Judges the time between two events; one written to the minute counts as its worse bound. */
record LengthJudge(JudgedLot judged, Kind.Length length, Step step) {

  Outcome judge() {
    Map<String, Entry> begun = new LinkedHashMap<>();
    judged.lot().all(length.from()).forEach(entry -> begun.putIfAbsent(entry.piece(), entry));
    if (begun.isEmpty()) {
      return judged.without(step, JudgedLot.noEntry(length.from()));
    }
    return Outcome.worstOfAll(
        begun.values().stream()
            .map(from -> to(from).map(end -> between(from, end)).orElseGet(() -> running(from)))
            .toList());
  }

  /** The last such event of its piece; of a lot without pieces, that of its worst piece. */
  private Optional<Entry> to(Entry from) {
    Map<String, Entry> ended = new LinkedHashMap<>();
    judged.lot().all(length.to()).stream()
        .filter(entry -> Pieces.isOf(entry, from.piece()) && !wentOn(from, entry))
        .forEach(entry -> ended.put(entry.piece(), entry));
    Comparator<Entry> time = Comparator.comparing(entry -> entry.time().earliest());
    return ended.values().stream().min(length.atLeast() ? time : time.reversed());
  }

  /** Whether the same began again after it, as where a piece is carried to another cooler. */
  private boolean wentOn(Entry from, Entry end) {
    return judged.lot().all(length.from()).stream()
        .filter(again -> Pieces.isOf(end, again.piece()) && Pieces.isOf(again, from.piece()))
        .anyMatch(again -> end.time().isBefore(again.time()));
  }

  private Outcome between(Entry from, Entry to) {
    Duration worst =
        length.atLeast() ? from.time().shortestTo(to.time()) : from.time().longestTo(to.time());
    return measured(compared(worst, from.time().writtenTo(to.time())), from, to.time(), worst)
        .from(List.of(from.place(), to.place()));
  }

  private Outcome compared(Duration worst, Duration written) {
    if (holds(worst)) {
      return Outcome.met();
    }
    return holds(written)
        ? Outcome.notShown(JudgedLot.worseMinutes(value(worst)))
        : Outcome.notMet(missed(value(worst)));
  }

  private boolean holds(Duration time) {
    Quantity value = JudgedLot.time(time, Unit.SECOND);
    return length.atLeast() ? !value.isBelow(length.limit()) : !value.isAbove(length.limit());
  }

  private Outcome running(Entry from) {
    Duration sofar = Duration.between(from.time().earliest(), judged.moment());
    Moment now = Moment.exactly(judged.moment());
    if (!length.atLeast() && !holds(sofar)) {
      return measured(Outcome.notMet(missed(value(sofar))), from, now, sofar)
          .from(List.of(from.place()));
    }
    if (judged.phase(step) == JudgedLot.Phase.OVER) {
      return Outcome.notShown(JudgedLot.noEntry(length.to())).from(List.of(from.place()));
    }
    Message toCome = say("check.length.to-come", "\"{0}\" is to come", length.to());
    return measured(Outcome.pending(toCome), from, now, sofar).from(List.of(from.place()));
  }

  private Quantity value(Duration time) {
    return JudgedLot.time(time, length.limit().unit());
  }

  private Outcome measured(Outcome outcome, Entry from, Moment to, Duration worst) {
    Message what = say("check.length.what", "{0} to {1}", length.from(), length.to());
    return outcome.measured(
        Measured.of(what, value(worst), !length.atLeast(), length.limit()),
        say(
            "check.length.formula",
            "{0}, from {1} to {2}: {3}",
            what,
            judged.date(from.time().earliest()),
            judged.date(to.earliest()),
            JudgedLot.time(from.time().writtenTo(to), worst, length.limit().unit())));
  }

  private Message missed(Quantity value) {
    Argument limit = length.limit().asWritten();
    return length.atLeast()
        ? say("check.length.too-short", "{0} of at least {1}", value, limit)
        : say("check.length.too-long", "{0} of at most {1}", value, limit);
  }
}

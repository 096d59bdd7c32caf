package org.flitchbook.check;

import java.time.Duration;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Unit;
import org.flitchbook.plan.Kind;
import org.flitchbook.reading.Entry;
import org.flitchbook.reading.Moment;
import org.flitchbook.sheet.Step;

/** Judges the time between two events; one written to the minute counts at its worse end. */
final class LengthJudge {

  private final Case judged;
  private final Kind.Length length;
  private final Step step;

  LengthJudge(Case judged, Kind.Length length, Step step) {
    this.judged = judged;
    this.length = length;
    this.step = step;
  }

  Outcome judge() {
    Map<String, Entry> begun = new LinkedHashMap<>();
    judged.lot().all(length.from()).forEach(entry -> begun.putIfAbsent(entry.piece(), entry));
    if (begun.isEmpty()) {
      return judged
          .withoutStep(step)
          .orElseGet(() -> judged.missing(step, judged.noEntry(length.from())));
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
        .filter(entry -> isOfPiece(entry, from.piece()))
        .forEach(entry -> ended.put(entry.piece(), entry));
    Comparator<Entry> time = Comparator.comparing(entry -> entry.time().earliest());
    return ended.values().stream().min(length.atLeast() ? time : time.reversed());
  }

  private static boolean isOfPiece(Entry entry, String piece) {
    return piece.isEmpty() || entry.piece().isEmpty() || entry.piece().equals(piece);
  }

  private Outcome between(Entry from, Entry to) {
    Duration worst =
        length.atLeast() ? from.time().shortestTo(to.time()) : from.time().longestTo(to.time());
    Duration written = from.time().writtenTo(to.time());
    return told(verdict(worst, written), from, to.time(), worst)
        .from(List.of(from.place(), to.place()));
  }

  private Verdict verdict(Duration worst, Duration written) {
    if (holds(worst)) {
      return Verdict.MET;
    }
    return holds(written) ? Verdict.NOT_SHOWN : Verdict.NOT_MET;
  }

  private boolean holds(Duration time) {
    Quantity value = Case.time(time, Unit.SECOND);
    return length.atLeast() ? !value.isBelow(length.limit()) : !value.isAbove(length.limit());
  }

  private Outcome running(Entry from) {
    Duration sofar = Duration.between(from.time().earliest(), judged.moment());
    Moment now = Moment.exactly(judged.moment());
    if (!length.atLeast() && !holds(sofar)) {
      return told(Verdict.NOT_MET, from, now, sofar).from(List.of(from.place()));
    }
    return judged.phase(step) == Case.Phase.OVER
        ? Outcome.notShown(judged.noEntry(length.to())).from(List.of(from.place()))
        : told(Verdict.PENDING, from, now, sofar).from(List.of(from.place()));
  }

  private Outcome told(Verdict verdict, Entry from, Moment to, Duration time) {
    Quantity value = Case.time(time, length.limit().unit());
    String what =
        judged.say(
            "check.length.what",
            "{0} to {1}",
            judged.what(length.from()),
            judged.what(length.to()));
    String reason =
        switch (verdict) {
          case NOT_MET -> missed(value);
          case NOT_SHOWN ->
              judged.say(
                  "check.worse-minutes",
                  "{0} if both minutes are taken at their worse end",
                  value.shown());
          case PENDING ->
              judged.say("check.length.to-come", "\"{0}\" is to come", judged.what(length.to()));
          case MET -> "";
        };
    return Outcome.of(verdict, reason)
        .measured(
            Measured.of(what, value, !length.atLeast(), length.limit()),
            judged.say(
                "check.length.formula",
                "{0}, from {1} to {2}: {3}",
                what,
                judged.date(from.time().earliest()),
                judged.date(to.earliest()),
                judged.time(from.time().writtenTo(to), time, length.limit().unit())));
  }

  private String missed(Quantity value) {
    return length.atLeast()
        ? judged.say("check.length.too-short", "{0} of at least {1}", value.shown(), length.limit())
        : judged.say("check.length.too-long", "{0} of at most {1}", value.shown(), length.limit());
  }
}

package org.flitchbook.lot;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.flitchbook.input.Fault;
import org.flitchbook.input.Place;
import org.flitchbook.reading.Entry;
import org.flitchbook.reading.Moment;
import org.flitchbook.reading.Series;
import org.flitchbook.sheet.Step;
import org.flitchbook.sheet.What;
import org.flitchbook.words.Words;

/** A lot while its steps and tracks are being worked out. */
final class LotDraft {

  private final List<Entry> entries;
  private final List<Fault> faults = new ArrayList<>();
  private final List<Stay> stays;
  private final Timeline timeline;

  LotDraft(Timeline timeline, List<Entry> entries) {
    this.timeline = timeline;
    this.entries = entries;
    this.stays = Step.ofWork().stream().flatMap(step -> stay(step).stream()).toList();
  }

  List<Stay> stays() {
    return stays;
  }

  List<Fault> faults() {
    return faults;
  }

  /** The series that name it. */
  List<Series> logs(String code) {
    return timeline.series().stream().filter(series -> series.lots().contains(code)).toList();
  }

  List<Lot.StepTrack> tracks() {
    return new TrackMaker(timeline, entries, stays).tracks();
  }

  /** The probes that logs name for the lot and of which nothing was read in the heat. */
  List<Fault> silent(String code) {
    List<Stay.Visit> heat =
        stays.stream()
            .filter(stay -> stay.step() == Step.SMOKE || stay.step() == Step.CHILL)
            .filter(stay -> stay.out().isPresent())
            .flatMap(stay -> stay.visits().stream())
            .toList();
    return timeline.series().stream()
        .filter(series -> !heat.isEmpty() && series.what() == What.INTERNAL_TEMPERATURE)
        .filter(series -> series.lots().contains(code))
        .filter(series -> heat.stream().noneMatch(visit -> overlaps(visit, series)))
        .map(series -> silent(code, series))
        .toList();
  }

  private Fault silent(String code, Series series) {
    Words words = timeline.plan().words();
    return Fault.stop(
        "probe without a reading",
        code,
        Place.of(series.file()),
        words.say(
            "lot.log.silent",
            "no reading of {0} (column {1}) while the lot was smoked and chilled",
            series.called(),
            series.column()),
        words.say(
            "lot.log.every-probe", "readings of every probe that logs.json names for the lot"));
  }

  /** Whether a series holds readings for this lot: it names it, or it is of a place it lay in. */
  boolean isServedBy(Series series, String code) {
    return series.lots().contains(code)
        || stays.stream()
            .flatMap(stay -> stay.visits().stream())
            .anyMatch(visit -> visit.place().equals(series.place()) && overlaps(visit, series));
  }

  private static boolean overlaps(Stay.Visit visit, Series series) {
    for (int i = 0; i < series.samples().size(); i++) {
      if (visit.holds(series.samples().at(i))) {
        return true;
      }
    }
    return false;
  }

  private Optional<Stay> stay(Step step) {
    List<Entry> intos = inOrder(step.into());
    if (intos.isEmpty()) {
      return Optional.empty();
    }
    List<Entry> outs = inOrder(step.outOf());
    Entry into = intos.get(0);
    Entry lastInto = intos.get(intos.size() - 1);
    Optional<Entry> last = outs.stream().reduce((earlier, later) -> later);
    last.filter(end -> end.time().isBefore(into.time())).ifPresent(end -> backwards(into, end));
    Optional<Entry> out =
        last.filter(
            end -> end.time().isBefore(into.time()) || !end.time().isBefore(lastInto.time()));
    return Optional.of(new Stay(step, into, out, visits(intos, outs)));
  }

  private List<Entry> inOrder(What what) {
    return entries.stream()
        .filter(entry -> entry.is(what))
        .sorted(Comparator.comparing(entry -> entry.time().earliest()))
        .toList();
  }

  private void backwards(Entry into, Entry out) {
    Words words = timeline.plan().words();
    faults.add(
        Fault.stop(
            "time goes back",
            into.lot(),
            out.place().column("time"),
            words.say(
                "lot.back.before", "{0} before {1} ({2})", what(out), what(into), into.place()),
            words.say("lot.back.later", "a later time")));
  }

  private String what(Entry entry) {
    return timeline.plan().words().word("what", entry.what().word());
  }

  private static List<Stay.Visit> visits(List<Entry> intos, List<Entry> outs) {
    List<Stay.Visit> visits = new ArrayList<>();
    for (int i = 0; i < intos.size(); i++) {
      Entry into = intos.get(i);
      Optional<Entry> next =
          intos.stream()
              .skip(i + 1L)
              .filter(other -> other.piece().equals(into.piece()))
              .findFirst();
      Optional<Moment> end = lastOut(into, next, outs).or(() -> next).map(Entry::time);
      visits.add(new Stay.Visit(into.item(), into.time(), end));
    }
    return visits;
  }

  /** The last time that a piece came out before it went in again. */
  private static Optional<Entry> lastOut(Entry into, Optional<Entry> next, List<Entry> outs) {
    return outs.stream()
        .filter(out -> out.piece().isEmpty() || out.piece().equals(into.piece()))
        .filter(out -> !out.time().isBefore(into.time()))
        .filter(out -> next.map(again -> out.time().isBefore(again.time())).orElse(true))
        .reduce((earlier, later) -> later);
  }
}

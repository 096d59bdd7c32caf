package org.flitchbook.check;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.Optional;
import java.util.TreeMap;
import org.flitchbook.lot.Stay;
import org.flitchbook.lot.Track;
import org.flitchbook.measure.Dimension;
import org.flitchbook.measure.Level;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Unit;
import org.flitchbook.plan.Kind;
import org.flitchbook.reading.Moment;
import org.flitchbook.sheet.Step;
import org.flitchbook.sums.Shift;

/**
 * Judges a level that is held through a step: readings outside add up from the last good one to the
 * next good one, and a time without any reading that is too long shows nothing.
 */
final class HoldingJudge {

  private final Case judged;
  private final Kind.Holding holding;
  private final Step step;

  HoldingJudge(Case judged, Kind.Holding holding, Step step) {
    this.judged = judged;
    this.holding = holding;
    this.step = step;
  }

  Outcome judge() {
    Optional<Outcome> without = judged.withoutStay(step);
    if (without.isPresent()) {
      return without.get();
    }
    Stay stay = judged.stay(step).orElseThrow();
    List<Track> tracks = judged.tracks(holding.what(), step);
    Optional<String> unseen = unseen(stay, tracks);
    if (tracks.isEmpty()) {
      return unseen
          .map(Outcome::notShown)
          .orElseGet(
              () ->
                  judged.missing(
                      step,
                      judged.say(
                          "check.holding.not-read",
                          "no {0} was read",
                          judged.what(holding.what()))));
    }
    Outcome worst =
        Outcome.worstOfAll(
            tracks.stream().flatMap(track -> track.ways().stream()).map(this::probe).toList());
    if (worst.verdict() != Verdict.NOT_MET && unseen.isPresent()) {
      return worst.but(Verdict.NOT_SHOWN, unseen.get());
    }
    boolean running = judged.phase(step) == Case.Phase.RUNNING;
    return running && worst.verdict() == Verdict.MET
        ? worst.but(Verdict.PENDING, judged.runs(step))
        : worst;
  }

  /** The longest time without a reading of a place, its ends included, where it is too long. */
  private Optional<String> unseen(Stay stay, List<Track> tracks) {
    return stay.visits().stream()
        .map(visit -> unseen(visit, tracks))
        .flatMap(Optional::stream)
        .findFirst();
  }

  private Optional<String> unseen(Stay.Visit visit, List<Track> tracks) {
    Moment end = visit.until().orElseGet(() -> judged.endOf(step));
    NavigableMap<Instant, Instant> latest = new TreeMap<>();
    for (Track track : tracks) {
      for (int i = 0; i < track.size(); i++) {
        Instant time = Instant.ofEpochMilli(track.earliest(i));
        boolean within = !time.isBefore(visit.from().earliest()) && !time.isAfter(end.latest());
        if (within && isOf(track.room(i), visit.place())) {
          latest.put(time, Instant.ofEpochMilli(track.latest(i)));
        }
      }
    }
    latest.putIfAbsent(end.earliest(), end.latest());
    Instant before = visit.from().earliest();
    for (Map.Entry<Instant, Instant> reading : latest.entrySet()) {
      if (isTooLong(Duration.between(before, reading.getValue()))) {
        return Optional.of(told(before, reading.getKey(), reading.getValue(), visit.place()));
      }
      before = reading.getKey();
    }
    return Optional.empty();
  }

  private boolean isTooLong(Duration time) {
    return Case.time(time, Unit.SECOND).isAbove(holding.every());
  }

  /** A reading that names no place of the plan is the lot's own, wherever it lay. */
  private boolean isOf(String room, String place) {
    return room.equals(place) || judged.plan().room(room).isEmpty();
  }

  private String told(Instant from, Instant to, Instant atWorst, String place) {
    boolean clear = isTooLong(Duration.between(from, to));
    String what = judged.what(holding.what());
    return judged.say(
        "check.holding.unseen",
        "no {0} for {1} from {2}; it is wanted every {3}",
        place.isEmpty() ? what : judged.say("check.holding.of-place", "{0} of {1}", what, place),
        Case.time(Duration.between(from, clear ? to : atWorst), Unit.HOUR).shown(),
        judged.date(from),
        holding.every());
  }

  private Outcome probe(Track track) {
    int worst = worst(track, Shift.AS_WRITTEN);
    Shift side = holding.ceiling() ? Shift.UP : Shift.DOWN;
    List<Excursion> written = outside(track, Shift.AS_WRITTEN);
    List<Excursion> sure = outside(track, side);
    Verdict verdict = isAllowed(sure) ? Verdict.MET : Verdict.NOT_SHOWN;
    if (!isAllowed(written)) {
      verdict = Verdict.NOT_MET;
    }
    Unit unit = unit();
    Quantity value = Level.quantity(track.level(worst, Shift.AS_WRITTEN), unit);
    Quantity off = Shown.spread(track, worst, side, unit);
    return Outcome.of(verdict, reason(verdict, value, sum(sure) > sum(written) ? sure : written))
        .measured(
            Measured.of(holding.what().word(), value, holding.ceiling(), holding.limit()).less(off),
            Shown.worst(value, off, holding.ceiling(), read(track, worst)))
        .from(List.of(track.place(worst)), Rest.on(track));
  }

  private String read(Track track, int index) {
    return judged.read(track, judged.date(track.earliest(index)));
  }

  private String reason(Verdict verdict, Quantity value, List<Excursion> outside) {
    return switch (verdict) {
      case NOT_MET ->
          judged.say(
              "check.holding.outside",
              "{0}; outside for {1} from good reading to good reading ({2})",
              value.shown(),
              Case.time(sum(outside), Unit.HOUR).shown(),
              told(outside));
      case NOT_SHOWN ->
          judged.say(
              "check.holding.only-as-written",
              "{0} is inside only as written, not with the instrument's error against it",
              value.shown());
      default -> "";
    };
  }

  private String told(List<Excursion> outside) {
    Excursion longest = outside.stream().max(Comparator.comparing(Excursion::time)).orElseThrow();
    String when =
        judged.say(
            "check.from-to", "{0} to {1}", judged.date(longest.from()), judged.date(longest.to()));
    return outside.size() == 1
        ? when
        : judged.say(
            "check.holding.longest-of", "{0} times, the longest {1}", outside.size(), when);
  }

  private Unit unit() {
    return holding.limit().dimension() == Dimension.TEMPERATURE
        ? judged.plan().establishment().temperature()
        : Unit.PERCENT;
  }

  private boolean isAllowed(List<Excursion> outside) {
    return !Case.time(sum(outside), Unit.SECOND).isAbove(holding.allow());
  }

  private static long sum(List<Excursion> outside) {
    return outside.stream().mapToLong(Excursion::time).sum();
  }

  private int worst(Track track, Shift shift) {
    int worst = 0;
    for (int i = 1; i < track.size(); i++) {
      long level = track.level(i, shift);
      long before = track.level(worst, shift);
      worst = (holding.ceiling() ? level > before : level < before) ? i : worst;
    }
    return worst;
  }

  /**
   * A time outside, from the last good reading before it, or the step's beginning, to the next good
   * one or the step's end; at least 1 ms, so that "none allowed" is kept.
   */
  private record Excursion(long from, long to) {
    long time() {
      return Math.max(1, to - from);
    }
  }

  private List<Excursion> outside(Track track, Shift shift) {
    List<Excursion> outside = new ArrayList<>();
    for (int i = 0; i < track.size(); i++) {
      if (isOutside(track, shift, i)) {
        long from = i > 0 ? track.earliest(i - 1) : begin();
        while (i + 1 < track.size() && isOutside(track, shift, i + 1)) {
          i++;
        }
        outside.add(new Excursion(from, good(track, i + 1, shift)));
      }
    }
    return outside;
  }

  private long begin() {
    return judged.stay(step).orElseThrow().into().time().earliest().toEpochMilli();
  }

  /** When it was seen to be good again, at the worse end of a minute but as written. */
  private long good(Track track, int index, Shift shift) {
    boolean written = shift == Shift.AS_WRITTEN;
    if (index < track.size()) {
      return written ? track.earliest(index) : track.latest(index);
    }
    Moment end = judged.endOf(step);
    return (written ? end.earliest() : end.latest()).toEpochMilli();
  }

  private boolean isOutside(Track track, Shift shift, int index) {
    long limit = Level.of(holding.limit());
    long level = track.level(index, shift);
    return holding.ceiling() ? level > limit : level < limit;
  }
}

package org.flitchbook.check;

import static org.flitchbook.message.Message.say;

import java.time.Duration;
import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import org.flitchbook.lot.Stay;
import org.flitchbook.lot.Track;
import org.flitchbook.measure.Level;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Unit;
import org.flitchbook.message.Argument;
import org.flitchbook.message.Message;
import org.flitchbook.plan.Kind;
import org.flitchbook.reading.Moment;
import org.flitchbook.sheet.Step;
import org.flitchbook.sums.Shift;

/**
 * Judges a level that is held through a step: readings outside add up from the last good one to the
 * next good one, and a time without any reading that is too long shows nothing.
 */
record HoldingJudge(JudgedLot judged, Kind.Holding holding, Step step) {

  Outcome judge() {
    return judged.withoutStay(step).orElseGet(this::ofStay);
  }

  private Outcome ofStay() {
    List<Track> tracks = judged.tracks(holding.what(), step);
    Optional<Message> unseen = unseen(judged.stay(step).orElseThrow(), tracks);
    if (tracks.isEmpty()) {
      Message notRead = say("check.holding.not-read", "no {0} was read", holding.what());
      return unseen.map(Outcome::notShown).orElseGet(() -> judged.missing(step, notRead));
    }
    Outcome worst =
        Outcome.worstOfAll(
                tracks.stream().flatMap(track -> track.ways().stream()).map(this::probe).toList())
            .beside(Dependency.lookedAt(tracks));
    if (worst.verdict() != Verdict.NOT_MET && unseen.isPresent()) {
      return worst.but(Verdict.NOT_SHOWN, unseen.get());
    }
    boolean running = judged.phase(step) == JudgedLot.Phase.RUNNING;
    return running && worst.verdict() == Verdict.MET
        ? worst.but(Verdict.PENDING, JudgedLot.runs(step))
        : worst;
  }

  /** The first time without a reading of a place, its ends included, that is too long. */
  private Optional<Message> unseen(Stay stay, List<Track> tracks) {
    return stay.visits().stream().flatMap(visit -> unseen(visit, tracks).stream()).findFirst();
  }

  private Optional<Message> unseen(Stay.Visit visit, List<Track> tracks) {
    Instant before = visit.from().earliest();
    for (Map.Entry<Instant, Instant> reading : readings(visit, tracks).entrySet()) {
      if (isTooLong(Duration.between(before, reading.getValue()))) {
        return Optional.of(unseen(before, reading, visit.place()));
      }
      before = reading.getKey();
    }
    return Optional.empty();
  }

  /**
   * The times of the readings of a place and of its end, each with the worst second of its minute.
   */
  private SortedMap<Instant, Instant> readings(Stay.Visit visit, List<Track> tracks) {
    Moment end = visit.until().orElseGet(() -> judged.endOf(step));
    SortedMap<Instant, Instant> latest = new TreeMap<>();
    for (Track track : tracks) {
      for (int i = 0; i < track.size(); i++) {
        Instant time = Instant.ofEpochMilli(track.earliest(i));
        boolean within = !time.isBefore(visit.from().earliest()) && !time.isAfter(end.latest());
        if (within && isOf(track.location(i), visit.place())) {
          latest.put(time, Instant.ofEpochMilli(track.latest(i)));
        }
      }
    }
    latest.putIfAbsent(end.earliest(), end.latest());
    return latest;
  }

  private boolean isTooLong(Duration time) {
    return JudgedLot.time(time, Unit.SECOND).isAbove(holding.every());
  }

  /** A reading that names no place of the plan is the lot's own, wherever it lay. */
  private boolean isOf(String location, String place) {
    return location.equals(place) || judged.plan().location(location).isEmpty();
  }

  /**
   * The time from one reading to the next, as written, or in the worst case if only that counts.
   */
  private Message unseen(Instant from, Map.Entry<Instant, Instant> next, String place) {
    Duration written = Duration.between(from, next.getKey());
    Duration worst = Duration.between(from, next.getValue());
    Argument what =
        place.isEmpty()
            ? holding.what()
            : say("check.holding.of-place", "{0} of {1}", holding.what(), place);
    return say(
        "check.holding.unseen",
        "no {0} for {1} from {2}; it is wanted every {3}",
        what,
        JudgedLot.time(isTooLong(written) ? written : worst, Unit.HOUR),
        judged.date(from),
        holding.every().asWritten());
  }

  private Outcome probe(Track track) {
    boolean ceiling = holding.ceiling();
    int farthest = track.farthest(Shift.AS_WRITTEN, ceiling, i -> true).orElseThrow();
    WorstReading worst = new WorstReading(judged, track, farthest, ceiling);
    return compared(track, worst.value())
        .measured(
            worst.measured(holding.what(), holding.limit()),
            worst.formula(judged.date(track.earliest(worst.index()))))
        .from(List.of(worst.place()), Dependency.on(track));
  }

  private Outcome compared(Track track, Quantity worst) {
    List<Excursion> written = outside(track, Shift.AS_WRITTEN);
    List<Excursion> sure = outside(track, holding.ceiling() ? Shift.UP : Shift.DOWN);
    if (!isAllowed(written)) {
      return Outcome.notMet(outside(worst, sum(sure) > sum(written) ? sure : written));
    }
    return isAllowed(sure)
        ? Outcome.met()
        : Outcome.notShown(
            say(
                "check.holding.only-as-written",
                "{0} is inside only as written, not with the instrument's error against it",
                worst));
  }

  private Message outside(Quantity worst, List<Excursion> outside) {
    Excursion longest = outside.stream().max(Comparator.comparing(Excursion::time)).orElseThrow();
    Message when =
        say("check.from-to", "{0} to {1}", judged.date(longest.from()), judged.date(longest.to()));
    return say(
        "check.holding.outside",
        "{0}; outside for {1} from good reading to good reading ({2})",
        worst,
        JudgedLot.time(sum(outside), Unit.HOUR),
        outside.size() == 1
            ? when
            : say("check.holding.longest-of", "{0} times, the longest {1}", outside.size(), when));
  }

  private boolean isAllowed(List<Excursion> outside) {
    return !JudgedLot.time(sum(outside), Unit.SECOND).isAbove(holding.allow());
  }

  private static long sum(List<Excursion> outside) {
    return outside.stream().mapToLong(Excursion::time).sum();
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
    long begin = judged.stay(step).orElseThrow().into().time().earliest().toEpochMilli();
    return track.runs(i -> isOutside(track, shift, i), i -> false).stream()
        .map(
            run ->
                new Excursion(
                    run.first() > 0 ? track.earliest(run.first() - 1) : begin,
                    good(track, run.last() + 1, shift)))
        .toList();
  }

  /** When it was seen to be good again; against the lot, the latest second of that minute. */
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

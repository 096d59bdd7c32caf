package org.flitchbook.doubt;

import static org.flitchbook.message.Message.say;

import java.time.Duration;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.flitchbook.json.Choice;
import org.flitchbook.lot.Stay;
import org.flitchbook.lot.Track;
import org.flitchbook.measure.Quantity;
import org.flitchbook.message.Listing;
import org.flitchbook.message.Message;
import org.flitchbook.message.Time;
import org.flitchbook.reading.Entry;
import org.flitchbook.reading.Moment;
import org.flitchbook.reading.Samples;
import org.flitchbook.reading.Series;
import org.flitchbook.sheet.Step;

/**
 * The clock of a core's log against what was written by hand: off by as much at both ends of the
 * smoke, or, drifting, by more at the one than at the other.
 *
 * @param above it is off where it is off by more than this
 * @param rise once it is in the smoke a core rises by this
 * @param lag at the latest so long after it went in, or after its smoker was warm
 * @param warm a smoker that its log shows less than this above the core's lowest is cold; empty
 *     where none is, as before there was such a number
 * @param fall once it is out of the smoke a core falls by this
 * @param carryOver it may go on rising for so long
 * @param drop meat that came out falls by this
 * @param within in this time, which tells it from meat in a dying fire
 * @param around how much of the log before and after the smoke is looked at
 */
@Choice({"clock offset", ClockOff.DRIFT})
record ClockOff(
    String rule,
    Duration above,
    Degrees rise,
    Duration lag,
    Optional<Degrees> warm,
    Degrees fall,
    Duration carryOver,
    Degrees drop,
    Duration within,
    Duration around)
    implements Finder {

  static final String DRIFT = "clock drift";

  @Override
  public Stream<Doubt> find(Subject subject) {
    return subject
        .wholeLogs()
        .filter(series -> isOfTheHeat(subject, series))
        .flatMap(
            series ->
                offset(subject, series)
                    .filter(this::isOff)
                    .map(offset -> doubt(series, offset))
                    .stream());
  }

  /** A probe that was put in for another in the chill shows neither end of the smoke. */
  private static boolean isOfTheHeat(Subject subject, Series series) {
    Predicate<Track> isOf =
        track ->
            track.called().equals(series.called())
                && track.origin().column().equals(series.column());
    return subject.coreTracks().stream().noneMatch(isOf)
        || subject.heated().stream().anyMatch(isOf);
  }

  private boolean isOff(Offset offset) {
    long most = above.toMillis();
    return rule.equals(DRIFT)
        ? offset.least() - offset.most() > most
        : offset.least() <= offset.most() && (offset.least() > most || offset.most() < -most);
  }

  private Doubt doubt(Series series, Offset offset) {
    return new Doubt(
        Subject.begin(series),
        say(
            "doubt.clock.found",
            "the clock of {0} {1}: {2}",
            series.called(),
            rule.equals(DRIFT)
                ? say("doubt.clock.drifts", "otherwise off at the end than at the beginning")
                : offset.said(),
            Listing.semicolons(offset.events())),
        say("doubt.clock.expected", "a clock that goes right within {0}", Subject.length(above)),
        rule.equals(DRIFT)
            ? say(
                "do.clock-drift",
                "Compare the logger's clock with the wall at both ends, and say which entries are"
                    + " right.")
            : say(
                "do.clock-offset",
                "Compare the logger's clock with the wall; if it is off, state its offset and why"
                    + " in logs.json."));
  }

  /**
   * Between which bounds a log's clock is off, by events that somebody wrote down and that the log
   * shows. Meat does not answer at once, so that one event gives no more than bounds. Where two
   * leave no time in between, the least is above the most.
   *
   * @param events what the log shows and what was written, with both times
   * @param least how far the clock is ahead at the least, in milliseconds; below 0 it is behind
   * @param most how far it is ahead at the most
   */
  private record Offset(List<Message> events, long least, long most) {

    /** Of an event that the log shows between two times, and that was written for another. */
    static Offset of(Message event, long earliest, long latest, Moment written) {
      return new Offset(
          List.of(event),
          earliest - written.latest().toEpochMilli(),
          latest - written.earliest().toEpochMilli());
    }

    Offset and(Offset other) {
      return new Offset(
          Stream.concat(events.stream(), other.events.stream()).toList(),
          Math.max(least, other.least),
          Math.min(most, other.most));
    }

    /** {@code 27 min to 79 min behind}, from the less to the more. */
    Message said() {
      boolean behind = most < 0;
      Quantity less = Subject.length(Duration.ofMillis(behind ? -most : least));
      Quantity more = Subject.length(Duration.ofMillis(behind ? -least : most));
      return behind
          ? say("doubt.clock.behind", "{0} to {1} behind", less, more)
          : say("doubt.clock.ahead", "{0} to {1} ahead", less, more);
    }
  }

  private static Time written(Subject subject, Entry entry) {
    return subject.clock(entry.time().written().toEpochMilli());
  }

  /** By the whole heating of the core, from its lowest to its highest and down again. */
  private Optional<Offset> offset(Subject subject, Series series) {
    Samples samples = series.samples();
    int[] kept = kept(subject, series);
    return IntStream.range(0, kept.length)
        .boxed()
        .max(Comparator.comparing(i -> samples.level(kept[i])))
        .flatMap(
            peak ->
                Stream.concat(
                        rising(subject, series, Arrays.copyOf(kept, peak + 1)),
                        falling(subject, series, Arrays.copyOfRange(kept, peak, kept.length)))
                    .reduce(Offset::and));
  }

  /** It rises some time after it went in; not seen where it rises from the beginning. */
  private Stream<Offset> rising(Subject subject, Series series, int[] toPeak) {
    Samples samples = series.samples();
    long lowest = Arrays.stream(toPeak).mapToLong(samples::level).min().orElseThrow();
    IntStream cold =
        Arrays.stream(toPeak)
            .limit(toPeak.length - 1L)
            .filter(i -> samples.level(i) <= lowest + rise.difference());
    return subject.lot().stay(Step.SMOKE).map(Stay::into).stream()
        .flatMap(
            into ->
                cold.max().stream().mapToObj(last -> risen(subject, series, last, into, lowest)));
  }

  /** How long its log shows the smoker cold from the load on without a gap, in ms. */
  private long coldSmoke(Subject subject, long loaded, long lowest) {
    return warm.stream()
        .flatMapToLong(
            more ->
                subject.air(Step.SMOKE).logs().stream()
                    .mapToLong(air -> coldSmoke(air, loaded, lowest + more.difference())))
        .min()
        .orElse(0);
  }

  private static long coldSmoke(ProbeLog air, long loaded, long warm) {
    long until = loaded;
    int next = air.atOrAfter(loaded);
    while (next < air.size()
        && air.level(next) < warm
        && air.at(next) - until <= air.track().longestStep()) {
      until = air.at(next++);
    }
    return until - loaded;
  }

  private Offset risen(Subject subject, Series series, int last, Entry into, long lowest) {
    long at = series.samples().at(last);
    long answers =
        lag.toMillis() + coldSmoke(subject, into.time().earliest().toEpochMilli(), lowest);
    Message event =
        say(
            "doubt.clock.rises",
            "the core rises from {0} on, into smoke was written for {1}",
            subject.clock(at),
            written(subject, into));
    return Offset.of(event, at - answers, at + series.precisionMillis(), into.time());
  }

  /**
   * It begins to fall when it comes out, or somewhat later: the outside goes on heating the inside.
   */
  private Stream<Offset> falling(Subject subject, Series series, int[] fromPeak) {
    Samples samples = series.samples();
    long fallen = samples.level(fromPeak[0]) - fall.difference();
    int hot = Arrays.stream(fromPeak).filter(i -> samples.level(i) >= fallen).max().orElseThrow();
    long until = samples.at(hot) + within.toMillis();
    // Meat that lies in a dying fire falls too, but slowly.
    boolean isSteep =
        Arrays.stream(fromPeak)
            .filter(i -> i >= hot && samples.at(i) <= until)
            .anyMatch(i -> samples.level(i) <= samples.level(hot) - drop.difference());
    return subject.lot().stay(Step.SMOKE).filter(stay -> isSteep).flatMap(Stay::out).stream()
        .map(out -> fallen(subject, series, fromPeak[0], hot, out));
  }

  private Offset fallen(Subject subject, Series series, int peak, int hot, Entry out) {
    long at = series.samples().at(hot);
    Message event =
        say(
            "doubt.clock.falls",
            "it falls from {0} on, out of smoke was written for {1}",
            subject.clock(at),
            written(subject, out));
    long earliest = series.samples().at(peak) - carryOver.toMillis();
    return Offset.of(event, earliest, at + series.precisionMillis(), out.time());
  }

  /** Around the smoke only: a log may hold what was smoked on other days as well. */
  private int[] kept(Subject subject, Series series) {
    Samples samples = series.samples();
    long margin = around.toMillis();
    long from = subject.into(Step.SMOKE).orElse(Long.MIN_VALUE + margin) - margin;
    long to = subject.endOf(Step.SMOKE).orElse(Long.MAX_VALUE - margin) + margin;
    Set<Long> none = excluded(subject, series);
    return IntStream.range(0, samples.size())
        .filter(i -> samples.at(i) >= from && samples.at(i) <= to)
        .filter(i -> !none.contains(samples.at(i)))
        .toArray();
  }

  /** When the log read what is known to be no reading. */
  private static Set<Long> excluded(Subject subject, Series series) {
    return subject.coreTracks().stream()
        .filter(track -> track.called().equals(series.called()))
        .flatMap(track -> track.excluded().stream())
        .map(Track.Excluded::at)
        .collect(Collectors.toSet());
  }
}

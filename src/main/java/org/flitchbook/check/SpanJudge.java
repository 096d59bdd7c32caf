package org.flitchbook.check;

import static org.flitchbook.message.Message.say;
import static org.flitchbook.sheet.Step.DRY;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.IntStream;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.flitchbook.lot.Track;
import org.flitchbook.measure.Level;
import org.flitchbook.measure.Unit;
import org.flitchbook.message.Argument;
import org.flitchbook.plan.Kind;
import org.flitchbook.sheet.Step;
import org.flitchbook.sheet.What;
import org.flitchbook.sums.Exposure;
import org.flitchbook.sums.Shift;

/**
 * Judges the time inside a band: each probe alone, the curve shifted by its uncertainty both ways,
 * crossings in the worst case. Where only the curve as written passes, the limit is not shown.
 */
record SpanJudge(JudgedLot judged, Kind.Span span, Step step) {

  Outcome judge() {
    if (judged.lot().tracks(span.what(), step).isEmpty()) {
      return span.what() == What.INTERNAL_TEMPERATURE
          ? judged.withoutCore(step)
          : judged.without(step, JudgedLot.noReading(span.what()));
    }
    Optional<WarmDrying> drying =
        span.warmDrying()
            .map(rule -> new WarmDrying(rule, judged.lot().tracks(What.COOLER_TEMPERATURE, DRY)));
    List<List<Outcome>> all =
        span.stages().stream().map(stage -> everyProbe(stage, drying)).toList();
    List<Outcome> stages = all.stream().map(Outcome::worst).toList();
    Outcome worst = Outcome.worst(stages);
    Stream<Dependency> readings =
        all.stream().flatMap(List::stream).flatMap(probe -> probe.dependsOn().stream());
    Stream<Dependency> warm = drying.stream().flatMap(each -> each.dependsOn().stream());
    return Outcome.of(worst.verdict(), all(stages, Outcome::reasons))
        .parts(all(stages, Outcome::parts))
        .measured(worst.measured(), all(stages, Outcome::formulas))
        .from(
            all(stages, Outcome::evidence).stream().distinct().toList(),
            Stream.concat(readings, warm).distinct().toList())
        .beside(Dependency.lookedAt(judged.lot().tracks(span.what(), step)));
  }

  private static <T> List<T> all(List<Outcome> stages, Function<Outcome, List<T>> part) {
    return stages.stream().flatMap(stage -> part.apply(stage).stream()).toList();
  }

  private List<Outcome> everyProbe(Kind.Stage stage, Optional<WarmDrying> drying) {
    return tracks(stage).stream()
        .flatMap(track -> track.ways().stream())
        .map(track -> new StageJudge(judged, stage, track, drying).judge())
        .toList();
  }

  /** It cools as one curve, whichever probes read it; how it rose is asked of those in the heat. */
  private List<Track> tracks(Kind.Stage stage) {
    return stage.falling()
        ? judged.lot().curves(span.what(), step, judged.plan().practice())
        : judged.lot().heated(span.what(), step, judged.plan().practice());
  }

  /**
   * The warm hours of a lot's drying that its rise has to answer for: the time in which the cooler
   * was above a level, less the time that is let pass. Of several probes the warmest counts. Where
   * nothing was read it adds nothing; that nothing was read is for the cold holding to say.
   *
   * @param tracks of the cooler
   */
  record WarmDrying(Kind.WarmDrying rule, List<Track> tracks) {

    /** In ms, the most that the readings allow, their error against the lot. */
    long most() {
      long level = Level.of(rule.above());
      return beyond(ways().mapToLong(track -> Exposure.above(track, Shift.UP, level).longest()));
    }

    /** In ms, the least that they allow: only what lies between two warm readings without a gap. */
    long least() {
      return beyond(ways().mapToLong(this::seen));
    }

    private Stream<Track> ways() {
      return tracks.stream().flatMap(track -> track.ways().stream());
    }

    private long seen(Track track) {
      return IntStream.range(0, track.size() - 1)
          .filter(i -> isWarm(track, i) && isWarm(track, i + 1) && !track.gapAfter(i))
          .mapToLong(i -> Math.max(0, track.earliest(i + 1) - track.latest(i)))
          .sum();
    }

    private boolean isWarm(Track track, int index) {
      return track.level(index, Shift.DOWN) > Level.of(rule.above());
    }

    private long beyond(LongStream times) {
      return Math.max(0, times.max().orElse(0) - JudgedLot.millis(rule.beyond()));
    }

    /** A time with what is added to it, where something is. */
    Argument counted(Argument time) {
      return most() == 0
          ? time
          : say(
              "check.drying.counted-in",
              "{0}, with {1} of drying above {2} beyond {3} ({4})",
              time,
              JudgedLot.time(most(), Unit.MINUTE),
              rule.above().asWritten(),
              rule.beyond().asWritten(),
              rule.note());
    }

    List<Dependency> dependsOn() {
      return tracks.stream().flatMap(track -> Dependency.on(track).stream()).toList();
    }
  }
}

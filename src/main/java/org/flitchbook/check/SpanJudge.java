package org.flitchbook.check;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;
import org.flitchbook.lot.Track;
import org.flitchbook.plan.Kind;
import org.flitchbook.sheet.Step;

/**
 * Judges the time inside a band: each probe alone, the curve shifted by its uncertainty both ways,
 * crossings at their worse end. Where only the curve as written passes, the limit is not shown.
 */
final class SpanJudge {

  private final JudgedLot judged;
  private final Kind.Span span;
  private final Step step;
  private final Optional<WarmDrying> drying;

  SpanJudge(JudgedLot judged, Kind.Span span, Step step) {
    this.judged = judged;
    this.span = span;
    this.step = step;
    this.drying = span.warmDrying().map(rule -> new WarmDrying(judged, rule));
  }

  Outcome judge() {
    List<Track> tracks = judged.lot().tracks(span.what(), step);
    if (tracks.isEmpty()) {
      return judged
          .withoutStep(step)
          .orElseGet(() -> judged.missing(step, CommonReasons.noReading(span.what())));
    }
    List<List<Outcome>> all =
        span.stages().stream().map(stage -> everyProbe(stage, tracks)).toList();
    List<Outcome> stages = all.stream().map(Outcome::worst).toList();
    Outcome worst = Outcome.worst(stages);
    return Outcome.of(worst.verdict(), all(stages, Outcome::reasons))
        .parts(all(stages, Outcome::parts))
        .measured(worst.measured(), all(stages, Outcome::formulas))
        .from(all(stages, Outcome::evidence).stream().distinct().toList(), dependsOn(all));
  }

  private static <T> List<T> all(List<Outcome> stages, Function<Outcome, List<T>> part) {
    return stages.stream().flatMap(stage -> part.apply(stage).stream()).toList();
  }

  private List<Dependency> dependsOn(List<List<Outcome>> all) {
    Stream<Dependency> readings =
        all.stream().flatMap(List::stream).flatMap(probe -> probe.dependsOn().stream());
    Stream<Dependency> warm = drying.stream().flatMap(each -> each.dependsOn().stream());
    return Stream.concat(readings, warm).distinct().toList();
  }

  private List<Outcome> everyProbe(Kind.Stage stage, List<Track> tracks) {
    return tracks.stream()
        .flatMap(track -> track.ways().stream())
        .map(track -> new StageJudge(judged, stage, track, drying).judge())
        .toList();
  }
}

package org.flitchbook.check;

import static org.flitchbook.sheet.Step.DRY;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;
import org.flitchbook.lot.Track;
import org.flitchbook.plan.Kind;
import org.flitchbook.sheet.Step;
import org.flitchbook.sheet.What;

/**
 * Judges the time inside a band: each probe alone, the curve shifted by its uncertainty both ways,
 * crossings at their worse end. Where only the curve as written passes, the limit is not shown.
 */
record SpanJudge(JudgedLot judged, Kind.Span span, Step step) {

  Outcome judge() {
    List<Track> tracks = judged.lot().tracks(span.what(), step);
    if (tracks.isEmpty()) {
      return judged.without(step, JudgedLot.noReading(span.what()));
    }
    Optional<WarmDrying> drying =
        span.warmDrying()
            .map(rule -> new WarmDrying(rule, judged.lot().tracks(What.COOLER_TEMPERATURE, DRY)));
    List<List<Outcome>> all =
        span.stages().stream().map(stage -> everyProbe(stage, tracks, drying)).toList();
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
            Stream.concat(readings, warm).distinct().toList());
  }

  private static <T> List<T> all(List<Outcome> stages, Function<Outcome, List<T>> part) {
    return stages.stream().flatMap(stage -> part.apply(stage).stream()).toList();
  }

  private List<Outcome> everyProbe(
      Kind.Stage stage, List<Track> tracks, Optional<WarmDrying> drying) {
    return tracks.stream()
        .flatMap(track -> track.ways().stream())
        .map(track -> new StageJudge(judged, stage, track, drying).judge())
        .toList();
  }
}

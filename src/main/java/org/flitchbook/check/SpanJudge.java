package org.flitchbook.check;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.flitchbook.lot.Track;
import org.flitchbook.plan.Kind;
import org.flitchbook.sheet.Step;

/**
 * Judges the time inside a band: each probe alone, the curve shifted by its uncertainty both ways,
 * crossings at their worse end. Where only the curve as written passes, the limit is not shown.
 */
final class SpanJudge {

  private final Case judged;
  private final Kind.Span span;
  private final Step step;
  private final Optional<WarmDrying> drying;

  SpanJudge(Case judged, Kind.Span span, Step step) {
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
          .orElseGet(() -> judged.missing(step, judged.noReading(span.what())));
    }
    List<List<Clocked>> all =
        span.stages().stream().map(stage -> everyProbe(stage, tracks)).toList();
    List<Clocked> stages = all.stream().map(Collections::min).toList();
    Clocked first = stages.stream().min(Comparator.naturalOrder()).orElseThrow();
    return Outcome.of(first.part().verdict(), reasons(stages))
        .parts(stages.stream().map(Clocked::part).toList())
        .measured(first.part().measured(), formula(stages))
        .from(
            stages.stream().flatMap(each -> each.evidence().stream()).distinct().toList(),
            rests(all));
  }

  private List<Rest> rests(List<List<Clocked>> all) {
    List<Rest> rests = new ArrayList<>();
    all.forEach(stage -> stage.forEach(probe -> rests.addAll(probe.rests())));
    drying.ifPresent(warm -> rests.addAll(warm.rests()));
    return rests.stream().distinct().toList();
  }

  private static String reasons(List<Clocked> stages) {
    return String.join(
        "; ", stages.stream().map(each -> each.part().reason()).filter(r -> !r.isEmpty()).toList());
  }

  private static String formula(List<Clocked> stages) {
    return String.join("; ", stages.stream().map(Clocked::formula).toList());
  }

  private List<Clocked> everyProbe(Kind.Stage stage, List<Track> tracks) {
    return tracks.stream()
        .flatMap(track -> track.ways().stream())
        .map(track -> new StageJudge(judged, span, stage, track, drying).clocked())
        .toList();
  }
}

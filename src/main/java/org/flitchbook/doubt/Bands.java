package org.flitchbook.doubt;

import java.util.List;
import java.util.stream.Stream;
import org.flitchbook.measure.Level;
import org.flitchbook.plan.Kind;
import org.flitchbook.sheet.What;

/** The bands of the core through which a lot's limits clock it. */
record Bands(List<Kind.Stage> stages) {

  static Bands of(Subject subject) {
    return new Bands(
        subject.lot().product().stream()
            .flatMap(product -> product.limits().stream())
            .flatMap(
                limit -> limit.kind() instanceof Kind.Span span ? Stream.of(span) : Stream.of())
            .filter(span -> span.what() == What.INTERNAL_TEMPERATURE)
            .flatMap(span -> span.stages().stream())
            .toList());
  }

  Bands falling() {
    return new Bands(stages.stream().filter(Kind.Stage::falling).toList());
  }

  /** Whether a level lies inside one of them. */
  boolean hold(long level) {
    return stages.stream().anyMatch(stage -> holds(stage, level));
  }

  private static boolean holds(Kind.Stage stage, long level) {
    long from = Level.of(stage.from());
    long to = Level.of(stage.to());
    return level > Math.min(from, to) && level < Math.max(from, to);
  }

  /** All their bounds, as levels. */
  List<Long> bounds() {
    return stages.stream()
        .flatMap(stage -> Stream.of(stage.from(), stage.to()))
        .map(Level::of)
        .distinct()
        .toList();
  }
}

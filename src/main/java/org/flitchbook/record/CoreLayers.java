package org.flitchbook.record;

import java.time.Instant;
import java.util.ArrayList;
import java.util.DoubleSummaryStatistics;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.flitchbook.check.Finding;
import org.flitchbook.check.Part;
import org.flitchbook.check.Verdict;
import org.flitchbook.document.Chart;
import org.flitchbook.lot.Lot;
import org.flitchbook.lot.Stay;
import org.flitchbook.lot.Track;
import org.flitchbook.measure.Dimension;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Unit;
import org.flitchbook.plan.Kind;
import org.flitchbook.reading.Moment;
import org.flitchbook.sheet.Step;

/** What lies over each other in the chart of smoke and chill: curves, limits, marks, steps. */
record CoreLayers(
    Lot lot,
    List<Finding> findings,
    Unit unit,
    TimeAxis time,
    List<Drawn> cores,
    List<Drawn> airs) {

  /** All temperatures that are to be seen, and freezing. */
  ValueAxis values() {
    double freezing = Quantity.of(0, Unit.CELSIUS).in(unit).value().rounded(0).doubleValue();
    DoubleSummaryStatistics seen =
        Stream.concat(cores.stream(), airs.stream())
            .flatMapToDouble(Drawn::seen)
            .summaryStatistics();
    return new ValueAxis(
        unit, Math.min(freezing, seen.getMin()), Math.max(freezing, seen.getMax()), phrases());
  }

  List<Chart.Curve> curves() {
    List<Chart.Curve> curves = new ArrayList<>();
    for (Drawn core : cores) {
      Chart.Stroke stroke = curves.isEmpty() ? Chart.Stroke.SOLID : Chart.Stroke.DASHED;
      curves.add(
          core.curve(
              phrases().say("record.chart.core", "core {0}", phrases().probe(core.track())),
              stroke));
    }
    airs.forEach(air -> curves.add(air.curve(name(air.track()), stroke(air.track()))));
    return curves;
  }

  private Phrases phrases() {
    return time.phrases();
  }

  private String name(Track track) {
    return switch (track.what()) {
      case CHAMBER_TEMPERATURE -> phrases().say("record.chart.smoker", "smoker");
      case WET_BULB_TEMPERATURE -> phrases().say("record.chart.wet-bulb", "wet bulb");
      default -> phrases().say("record.chart.cooler", "cooler");
    };
  }

  private static Chart.Stroke stroke(Track track) {
    return switch (track.what()) {
      case CHAMBER_TEMPERATURE -> Chart.Stroke.THIN;
      case WET_BULB_TEMPERATURE -> Chart.Stroke.DOTTED;
      default -> Chart.Stroke.THIN_DASHED;
    };
  }

  /** The temperatures of the limits, each once, as far as they are within the chart. */
  List<Chart.Guide> guides() {
    TreeSet<Quantity> levels = new TreeSet<>();
    List<Chart.Guide> guides = new ArrayList<>();
    for (Finding finding : findings) {
      if (finding.limit().kind() instanceof Kind.Span span) {
        span.stages().forEach(stage -> levels.addAll(List.of(stage.from(), stage.to())));
      }
      if (finding.limit().kind() instanceof Kind.Bound bound
          && bound.limit().dimension() == Dimension.TEMPERATURE) {
        guides.add(guide(bound.limit(), bound.limit() + " " + phrases().name(finding.limit())));
      }
    }
    levels.forEach(level -> guides.add(guide(level, level.toString())));
    return values().within(guides);
  }

  private Chart.Guide guide(Quantity level, String label) {
    return new Chart.Guide(
        phrases().bound().bound(label), level.in(unit).value().rounded(3).doubleValue());
  }

  List<Chart.Marks> marks() {
    List<Chart.Marker> crossings = crossings();
    List<Chart.Marker> byHand = new ArrayList<>();
    cores.forEach(core -> byHand.addAll(core.byHand(true)));
    airs.forEach(air -> byHand.addAll(air.byHand(false)));
    return List.of(
        new Chart.Marks(
            phrases().say("record.core.by-hand", "by hand"),
            Chart.Shape.DIAMOND,
            byHand.stream().map(m -> once(m, crossings)).toList()),
        new Chart.Marks(
            phrases().say("record.chart.crossing", "crossing of a limit"),
            Chart.Shape.DOT,
            crossings),
        new Chart.Marks(
            phrases().say("record.chart.left-out", "left out"), Chart.Shape.RING, leftOut()));
  }

  /** A reading by hand that closes a stage is labelled there. */
  private static Chart.Marker once(Chart.Marker marker, List<Chart.Marker> crossings) {
    boolean labelled = crossings.stream().anyMatch(marker::isAt);
    return labelled ? new Chart.Marker(marker.x(), marker.y(), "") : marker;
  }

  private List<Chart.Marker> leftOut() {
    Chart.Axis axis = values().axis();
    return Stream.concat(cores.stream(), airs.stream())
        .flatMap(drawn -> drawn.leftOut(axis).stream())
        .toList();
  }

  private List<Chart.Marker> crossings() {
    List<Chart.Marker> crossings = new ArrayList<>();
    for (Part part : findings.stream().flatMap(f -> f.parts().stream()).toList()) {
      part.start().ifPresent(at -> cross(crossings, at, part));
      part.end()
          .filter(at -> part.verdict() != Verdict.PENDING)
          .ifPresent(at -> cross(crossings, at, part));
    }
    return crossings.stream().distinct().toList();
  }

  /** At the reading itself, which lies beside the limit's line and not on it. */
  private void cross(List<Chart.Marker> crossings, Instant at, Part part) {
    for (Drawn core : cores) {
      int index = Drawn.upTo(core.track(), at);
      if (core.track().called().equals(part.probe()) && time.holds(core.track().earliest(index))) {
        String label = phrases().clock(at) + " " + core.shown(index);
        crossings.add(core.marker(index, phrases().bound().bound(label)));
      }
    }
  }

  /** The steps, and within them the silences of the logs. */
  List<Chart.Band> bands() {
    List<Chart.Band> bands = new ArrayList<>();
    for (Step step : List.of(Step.SMOKE, Step.CHILL)) {
      lot.stay(step).flatMap(this::band).ifPresent(bands::add);
    }
    cores.forEach(core -> bands.addAll(core.gaps()));
    return bands;
  }

  private Optional<Chart.Band> band(Stay stay) {
    long from = stay.into().time().written().toEpochMilli();
    Optional<Instant> end = lot.end(stay.step()).map(Moment::written);
    long to = end.map(Instant::toEpochMilli).orElse(time.to());
    return from < time.to() && to > time.from() && to > from
        ? Optional.of(new Chart.Band(time.at(from), time.at(to), phrases().step(stay.step())))
        : Optional.empty();
  }
}

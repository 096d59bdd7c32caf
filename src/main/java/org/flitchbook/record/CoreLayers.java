package org.flitchbook.record;

import java.time.Instant;
import java.util.ArrayList;
import java.util.DoubleSummaryStatistics;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.flitchbook.account.ProbeReadings;
import org.flitchbook.account.ProbeReadings.Reading;
import org.flitchbook.check.Finding;
import org.flitchbook.check.Part;
import org.flitchbook.check.Verdict;
import org.flitchbook.document.Axis;
import org.flitchbook.document.Band;
import org.flitchbook.document.Curve;
import org.flitchbook.document.Guide;
import org.flitchbook.document.Marker;
import org.flitchbook.document.Marks;
import org.flitchbook.document.Shape;
import org.flitchbook.document.Stroke;
import org.flitchbook.lot.Lot;
import org.flitchbook.lot.Stay;
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
    List<ProbePlot> cores,
    List<ProbePlot> airs) {

  private Phrases phrases() {
    return time.phrases();
  }

  private Stream<ProbePlot> plots() {
    return Stream.concat(cores.stream(), airs.stream());
  }

  /** All temperatures that are to be seen, and freezing. */
  ValueAxis values() {
    double freezing = Quantity.of(0, Unit.CELSIUS).in(unit).value().rounded(0).doubleValue();
    DoubleSummaryStatistics seen = plots().flatMapToDouble(ProbePlot::seen).summaryStatistics();
    return new ValueAxis(
        unit, Math.min(freezing, seen.getMin()), Math.max(freezing, seen.getMax()), phrases());
  }

  List<Curve> curves() {
    List<Curve> curves = new ArrayList<>();
    for (ProbePlot core : cores) {
      String probe = phrases().probe(core.readings().probe());
      curves.add(
          core.curve(
              phrases().say("record.chart.core", "core {0}", probe),
              curves.isEmpty() ? Stroke.SOLID : Stroke.DASHED));
    }
    airs.forEach(air -> curves.add(curve(air)));
    return curves;
  }

  private Curve curve(ProbePlot air) {
    return switch (air.readings().what()) {
      case CHAMBER_TEMPERATURE ->
          air.curve(phrases().say("record.chart.smoker", "smoker"), Stroke.THIN);
      case WET_BULB_TEMPERATURE ->
          air.curve(phrases().say("record.chart.wet-bulb", "wet bulb"), Stroke.DOTTED);
      default -> air.curve(phrases().say("record.chart.cooler", "cooler"), Stroke.THIN_DASHED);
    };
  }

  /** The temperatures of the limits, each once, as far as they are within the chart. */
  List<Guide> guides() {
    TreeSet<Quantity> levels = new TreeSet<>();
    List<Guide> guides = new ArrayList<>();
    for (Finding finding : findings) {
      if (finding.limit().kind() instanceof Kind.Span span) {
        span.stages().forEach(stage -> levels.addAll(List.of(stage.from(), stage.to())));
      }
      if (finding.limit().kind() instanceof Kind.Bound bound
          && bound.limit().dimension() == Dimension.TEMPERATURE) {
        String name = phrases().name(finding.limit());
        guides.add(ValueAxis.guide(bound.limit(), name, unit, phrases()));
      }
    }
    levels.forEach(level -> guides.add(ValueAxis.guide(level, "", unit, phrases())));
    return values().within(guides);
  }

  List<Marks> marks() {
    List<Marker> crossings = crossings();
    Axis axis = values().axis();
    Stream<Marker> byHand =
        Stream.concat(
            cores.stream().flatMap(core -> core.byHand(true).stream()),
            airs.stream().flatMap(air -> air.byHand(false).stream()));
    return List.of(
        new Marks(
            phrases().say(Section.BY_HAND),
            Shape.DIAMOND,
            byHand.map(marker -> labelledOnce(marker, crossings)).toList()),
        new Marks(
            phrases().say("record.chart.crossing", "crossing of a limit"), Shape.DOT, crossings),
        new Marks(
            phrases().say(Section.LEFT_OUT),
            Shape.RING,
            plots().flatMap(plot -> plot.leftOut(axis).stream()).toList()));
  }

  /** A reading by hand that closes a stage is labelled there. */
  private static Marker labelledOnce(Marker marker, List<Marker> crossings) {
    boolean labelled = crossings.stream().anyMatch(marker::isAt);
    return labelled ? new Marker(marker.x(), marker.y(), "") : marker;
  }

  private List<Marker> crossings() {
    List<Marker> crossings = new ArrayList<>();
    for (Part part : findings.stream().flatMap(f -> f.parts().stream()).toList()) {
      part.start().ifPresent(at -> cross(crossings, at, part));
      part.end()
          .filter(at -> part.verdict() != Verdict.PENDING)
          .ifPresent(at -> cross(crossings, at, part));
    }
    return crossings.stream().distinct().toList();
  }

  /** At the reading itself, which lies beside the limit's line and not on it. */
  private void cross(List<Marker> crossings, Instant at, Part part) {
    for (ProbePlot core : cores) {
      ProbeReadings readings = core.readings();
      Reading reading = readings.reading(ProbePlot.upTo(readings.track(), at));
      if (readings.probe().equals(part.probe()) && time.holds(reading.at().toEpochMilli())) {
        String label = phrases().clock(at) + " " + Phrases.level(reading);
        crossings.add(time.marker(reading, phrases().unbroken(label)));
      }
    }
  }

  /** The steps, and within them the silences of the logs. */
  List<Band> bands() {
    List<Band> bands = new ArrayList<>();
    for (Step step : List.of(Step.SMOKE, Step.CHILL)) {
      lot.stay(step).flatMap(this::band).ifPresent(bands::add);
    }
    cores.forEach(core -> bands.addAll(core.gaps()));
    return bands;
  }

  private Optional<Band> band(Stay stay) {
    long from = stay.into().time().written().toEpochMilli();
    Optional<Instant> end = lot.end(stay.step()).map(Moment::written);
    long to = end.map(Instant::toEpochMilli).orElse(time.to());
    return from < time.to() && to > time.from() && to > from
        ? Optional.of(new Band(time.at(from), time.at(to), phrases().say(stay.step())))
        : Optional.empty();
  }
}

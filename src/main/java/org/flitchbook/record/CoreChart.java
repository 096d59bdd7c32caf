package org.flitchbook.record;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.DoubleSummaryStatistics;
import java.util.List;
import java.util.NavigableSet;
import java.util.Optional;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.flitchbook.account.ProbeReadings;
import org.flitchbook.check.Finding;
import org.flitchbook.check.Judgement;
import org.flitchbook.check.Measured;
import org.flitchbook.check.Part;
import org.flitchbook.check.Verdict;
import org.flitchbook.document.Block;
import org.flitchbook.document.Chart;
import org.flitchbook.lot.Stay;
import org.flitchbook.measure.Dimension;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Unit;
import org.flitchbook.plan.Kind;
import org.flitchbook.plan.Limit;
import org.flitchbook.reading.Moment;
import org.flitchbook.sheet.Step;
import org.flitchbook.sheet.What;

/** Smoke and chill on one time axis, and the humidity below it; a part of it for a deviation. */
final class CoreChart extends ChartSection {

  private static final int WHOLE = 250;
  private static final int EXCERPT = 110;
  private static final int HUMIDITY = 64;
  private static final Duration HALF_HOUR = Duration.ofMinutes(30);

  private final List<ProbeReadings> cores;
  private final List<ProbeReadings> airs;

  CoreChart(DayJudged day, Judgement judgement) {
    super(day, judgement);
    this.cores = readings(What.INTERNAL_TEMPERATURE, Step.SMOKE);
    this.airs = new ArrayList<>(readings(What.CHAMBER_TEMPERATURE, Step.SMOKE));
    this.airs.addAll(readings(What.WET_BULB_TEMPERATURE, Step.SMOKE));
    this.airs.addAll(readings(What.COOLER_TEMPERATURE, Step.CHILL));
  }

  List<Block> blocks() {
    String caption = say("record.chart.caption", "Core temperature through smoke and chill");
    return new Blocks()
        .add(whole().map(time -> new Layers(judgement.findings(), time).chart(caption, WHOLE)))
        .add(whole().flatMap(this::humidity))
        .list();
  }

  /** The readings around one stage of a limit; empty where it was never clocked. */
  Optional<Block> excerpt(Finding finding, Part part, String caption) {
    return whole()
        .flatMap(all -> around(part, all))
        .map(time -> new Layers(List.of(finding), time).chart(caption, EXCERPT));
  }

  private Optional<TimeAxis> whole() {
    Stream<Instant> times =
        Stream.concat(cores.stream(), airs.stream())
            .flatMap(each -> Stream.of(each.first().at(), each.last().at()));
    NavigableSet<Instant> sorted = times.collect(Collectors.toCollection(TreeSet::new));
    return cores.isEmpty() ? Optional.empty() : TimeAxis.of(sorted.first(), sorted.last(), this);
  }

  private Optional<TimeAxis> around(Part part, TimeAxis all) {
    Optional<Instant> from = part.start().map(start -> start.minus(HALF_HOUR)).map(all::within);
    Optional<Instant> to = part.end().map(end -> end.plus(HALF_HOUR)).map(all::within);
    return from.flatMap(begin -> to.flatMap(end -> TimeAxis.of(begin, end, this)));
  }

  private Optional<Block> humidity(TimeAxis time) {
    List<ProbePlot> plots = ProbePlot.all(readings(What.HUMIDITY, Step.SMOKE), time);
    if (plots.isEmpty()) {
      return Optional.empty();
    }
    String ranges =
        plots.stream().map(plot -> levels(plot.readings())).collect(Collectors.joining("; "));
    return Optional.of(
        new Chart(
            say("record.chart.humidity", "Humidity in the smoker"),
            say(
                "record.chart.humidity-told",
                "Humidity in the smoker in the same time: {0}.",
                ranges),
            time.axis(),
            new ValueAxis(Unit.PERCENT, 0, 100, this).axis(),
            plots.stream().map(plot -> plot.curve(say(What.HUMIDITY), Chart.Stroke.THIN)).toList(),
            List.of(),
            List.of(byHand(plots.stream().flatMap(plot -> plot.byHand(false)))),
            ProbePlot.gaps(plots),
            HUMIDITY));
  }

  /** What lies over each other in the chart of smoke and chill: curves, limits, marks, steps. */
  private final class Layers {

    private final List<Finding> findings;
    private final TimeAxis time;
    private final List<ProbePlot> corePlots;
    private final List<ProbePlot> airPlots;
    private final Chart.Axis y;

    Layers(List<Finding> findings, TimeAxis time) {
      this.findings = findings;
      this.time = time;
      this.corePlots = ProbePlot.all(cores, time);
      this.airPlots = ProbePlot.all(airs, time);
      // All temperatures that are to be seen, and freezing.
      Quantity freezing = Quantity.of(0, Unit.CELSIUS).in(temperature());
      DoubleSummaryStatistics all = plots().flatMapToDouble(ProbePlot::seen).summaryStatistics();
      all.accept(freezing.value().rounded(0).doubleValue());
      this.y = new ValueAxis(temperature(), all.getMin(), all.getMax(), CoreChart.this).axis();
    }

    private Stream<ProbePlot> plots() {
      return Stream.concat(corePlots.stream(), airPlots.stream());
    }

    Chart chart(String caption, int height) {
      Chart.Axis x = time.axis();
      return new Chart(caption, alternative(), x, y, curves(), guides(), marks(), bands(), height);
    }

    /** The chart in one sentence with its numbers, for those who can't see it. */
    private String alternative() {
      List<String> facts = new ArrayList<>(cores.stream().map(this::course).toList());
      parts().forEach(part -> part.measured().ifPresent(it -> facts.add(stage(part, it))));
      ProbePlot.gaps(corePlots).forEach(gap -> facts.add(gap.label()));
      return say(
          "record.chart.alternative",
          "Internal temperature of lot {0} from {1} to {2}: {3}.",
          lot.code(),
          time(time.from()),
          time(time.to()),
          String.join("; ", facts));
    }

    private Stream<Part> parts() {
      return findings.stream().flatMap(finding -> finding.parts().stream());
    }

    /** Where a probe began, its highest reading, and where it ended. */
    private String course(ProbeReadings core) {
      return say(
          "record.chart.course",
          "{0} is {1} at first, at most {2} at {3} and {4} at last",
          probe(core.probe()),
          level(core.first()),
          level(core.highest()),
          clock(core.highest().at()),
          level(core.last()));
    }

    private String stage(Part part, Measured measured) {
      return say(
          "record.chart.stage",
          "{0} to {1} took {2}, {3}: {4}",
          part.from(),
          part.to(),
          quantity(measured.value()),
          bound(measured),
          part.verdict());
    }

    private List<Chart.Curve> curves() {
      List<Chart.Curve> curves = new ArrayList<>();
      for (ProbePlot core : corePlots) {
        String name = say("record.chart.core", "core {0}", probe(core.readings().probe()));
        curves.add(core.curve(name, curves.isEmpty() ? Chart.Stroke.SOLID : Chart.Stroke.DASHED));
      }
      airPlots.forEach(air -> curves.add(curve(air)));
      return curves;
    }

    private Chart.Curve curve(ProbePlot air) {
      return switch (air.readings().what()) {
        case CHAMBER_TEMPERATURE ->
            air.curve(say("record.chart.smoker", "smoker"), Chart.Stroke.THIN);
        case WET_BULB_TEMPERATURE ->
            air.curve(say("record.chart.wet-bulb", "wet bulb"), Chart.Stroke.DOTTED);
        default -> air.curve(say("record.chart.cooler", "cooler"), Chart.Stroke.THIN_DASHED);
      };
    }

    /** The temperatures of the limits, each once, as far as they are within the chart. */
    private List<Chart.Guide> guides() {
      TreeSet<Quantity> levels = new TreeSet<>();
      List<Chart.Guide> guides = new ArrayList<>();
      for (Limit limit : findings.stream().map(Finding::limit).toList()) {
        if (limit.kind() instanceof Kind.Span span) {
          span.stages().forEach(stage -> levels.addAll(List.of(stage.from(), stage.to())));
        }
        if (limit.kind() instanceof Kind.Bound bound
            && bound.limit().dimension() == Dimension.TEMPERATURE) {
          guides.add(guide(bound.limit(), name(limit)));
        }
      }
      levels.forEach(level -> guides.add(guide(level, "")));
      guides.removeIf(guide -> guide.at() < y.min() || y.max() < guide.at());
      return guides;
    }

    private List<Chart.Marks> marks() {
      List<Chart.Marker> crossings = crossings();
      Stream<Chart.Marker> byHand =
          plots().flatMap(plot -> plot.byHand(cores.contains(plot.readings())));
      return List.of(
          byHand(byHand.map(marker -> labelledOnce(marker, crossings))),
          new Chart.Marks(
              say("record.chart.crossing", "crossing of a limit"), Chart.Shape.DOT, crossings),
          leftOut(plots(), y));
    }

    /** A reading by hand that closes a stage is labelled there. */
    private static Chart.Marker labelledOnce(Chart.Marker marker, List<Chart.Marker> crossings) {
      boolean labelled = crossings.stream().anyMatch(marker::isAt);
      return labelled ? new Chart.Marker(marker.x(), marker.y(), "") : marker;
    }

    private List<Chart.Marker> crossings() {
      return parts()
          .flatMap(
              part ->
                  Stream.concat(
                          part.start().stream(),
                          part.end().filter(at -> part.verdict() != Verdict.PENDING).stream())
                      .flatMap(at -> crossings(at, part)))
          .distinct()
          .toList();
    }

    /** At the reading itself, which lies beside the limit's line and not on it. */
    private Stream<Chart.Marker> crossings(Instant at, Part part) {
      return CoreSection.readBy(cores, part, at)
          .map(core -> core.reading(ProbePlot.upTo(core.track(), at)))
          .filter(reading -> time.holds(reading.at()))
          .map(reading -> time.marker(reading, unbroken(clock(at) + " " + level(reading))));
    }

    /** The steps, and within them the silences of the logs. */
    private List<Chart.Band> bands() {
      List<Chart.Band> bands = new ArrayList<>();
      lot.stay(Step.SMOKE).flatMap(this::band).ifPresent(bands::add);
      lot.stay(Step.CHILL).flatMap(this::band).ifPresent(bands::add);
      bands.addAll(ProbePlot.gaps(corePlots));
      return bands;
    }

    private Optional<Chart.Band> band(Stay stay) {
      Instant from = stay.into().time().written();
      Instant to = lot.end(stay.step()).map(Moment::written).orElse(time.to());
      return from.isBefore(time.to()) && to.isAfter(time.from()) && to.isAfter(from)
          ? Optional.of(new Chart.Band(time.at(from), time.at(to), say(stay.step())))
          : Optional.empty();
    }
  }
}

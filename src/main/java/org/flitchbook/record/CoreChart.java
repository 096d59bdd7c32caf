package org.flitchbook.record;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.flitchbook.account.ProbeReadings;
import org.flitchbook.check.Finding;
import org.flitchbook.check.Judgement;
import org.flitchbook.check.Measured;
import org.flitchbook.check.Part;
import org.flitchbook.document.Band;
import org.flitchbook.document.Block;
import org.flitchbook.document.Chart;
import org.flitchbook.document.Marker;
import org.flitchbook.document.Marks;
import org.flitchbook.document.Shape;
import org.flitchbook.document.Stroke;
import org.flitchbook.measure.Unit;
import org.flitchbook.sheet.Step;
import org.flitchbook.sheet.What;

/** Smoke and chill on one time axis, and the humidity below it; a part of it for a deviation. */
final class CoreChart extends LotSection {

  private static final int WHOLE = 250;
  private static final int EXCERPT = 110;
  private static final int HUMIDITY = 64;
  private static final long HALF_HOUR = 1_800_000L;

  private final List<ProbeReadings> cores;
  private final List<ProbeReadings> airs;

  CoreChart(DayJudged day, Judgement judgement) {
    super(day, judgement);
    this.cores = readings(What.INTERNAL_TEMPERATURE, Step.SMOKE);
    this.airs =
        Stream.of(
                readings(What.CHAMBER_TEMPERATURE, Step.SMOKE),
                readings(What.WET_BULB_TEMPERATURE, Step.SMOKE),
                readings(What.COOLER_TEMPERATURE, Step.CHILL))
            .flatMap(List::stream)
            .toList();
  }

  List<Block> blocks() {
    String caption = say("record.chart.caption", "Core temperature through smoke and chill");
    return new Blocks()
        .add(whole().map(time -> chart(caption, judgement.findings(), time, WHOLE)))
        .add(whole().flatMap(this::humidity))
        .list();
  }

  /** The readings around one stage of a limit; empty where it was never clocked. */
  Optional<Block> excerpt(Finding finding, Part part, String caption) {
    return whole()
        .flatMap(all -> around(part, all))
        .map(time -> chart(caption, List.of(finding), time, EXCERPT));
  }

  private Optional<TimeAxis> whole() {
    List<ProbeReadings> drawn = Stream.concat(cores.stream(), airs.stream()).toList();
    Optional<Instant> from = drawn.stream().map(each -> each.first().at()).min(Instant::compareTo);
    Optional<Instant> to = drawn.stream().map(each -> each.last().at()).max(Instant::compareTo);
    return cores.isEmpty()
        ? Optional.empty()
        : TimeAxis.of(millis(from.orElseThrow()), millis(to.orElseThrow()), phrases);
  }

  private static long millis(Instant time) {
    return time.toEpochMilli();
  }

  private Optional<TimeAxis> around(Part part, TimeAxis all) {
    return part.start()
        .flatMap(
            start ->
                part.end()
                    .flatMap(
                        end ->
                            TimeAxis.of(
                                Math.max(all.from(), millis(start) - HALF_HOUR),
                                Math.min(all.to(), millis(end) + HALF_HOUR),
                                phrases)));
  }

  private Chart chart(String caption, List<Finding> findings, TimeAxis time, int height) {
    List<ProbePlot> plots = ProbePlot.all(cores, time);
    CoreLayers layers =
        new CoreLayers(lot, findings, temperature(), time, plots, ProbePlot.all(airs, time));
    return new Chart(
        caption,
        alternative(findings, plots, time),
        time.axis(),
        layers.values().axis(),
        layers.curves(),
        layers.guides(),
        layers.marks(),
        layers.bands(),
        height);
  }

  /** The chart in one sentence with its numbers, for those who can't see it. */
  private String alternative(List<Finding> findings, List<ProbePlot> plots, TimeAxis time) {
    List<String> told = new ArrayList<>();
    cores.forEach(core -> told.add(course(core)));
    findings.stream()
        .flatMap(finding -> finding.parts().stream())
        .forEach(part -> part.measured().ifPresent(measured -> told.add(stage(part, measured))));
    plots.forEach(plot -> plot.gaps().stream().map(Band::label).forEach(told::add));
    return say(
        "record.chart.alternative",
        "Internal temperature of lot {0} from {1} to {2}: {3}.",
        lot.code(),
        phrases.time(Instant.ofEpochMilli(time.from())),
        phrases.time(Instant.ofEpochMilli(time.to())),
        String.join("; ", told));
  }

  /** Where a probe began, its highest reading, and where it ended. */
  private String course(ProbeReadings core) {
    return say(
        "record.chart.course",
        "{0} is {1} at first, at most {2} at {3} and {4} at last",
        phrases.probe(core.probe()),
        Phrases.level(core.first()),
        Phrases.level(core.highest()),
        phrases.clock(core.highest().at()),
        Phrases.level(core.last()));
  }

  private String stage(Part part, Measured measured) {
    return say(
        "record.chart.stage",
        "{0} to {1} took {2}, {3}: {4}",
        part.from(),
        part.to(),
        Phrases.quantity(measured.value()),
        phrases.bound(measured),
        part.verdict());
  }

  private Optional<Block> humidity(TimeAxis time) {
    List<ProbeReadings> humidity = readings(What.HUMIDITY, Step.SMOKE);
    return humidity.isEmpty()
        ? Optional.empty()
        : Optional.of(humidity(humidity, ProbePlot.all(humidity, time), time));
  }

  private Chart humidity(List<ProbeReadings> humidity, List<ProbePlot> plots, TimeAxis time) {
    String ranges = humidity.stream().map(phrases::levels).collect(Collectors.joining("; "));
    List<Marker> byHand = plots.stream().flatMap(plot -> plot.byHand(false).stream()).toList();
    return new Chart(
        say("record.chart.humidity", "Humidity in the smoker"),
        say("record.chart.humidity-told", "Humidity in the smoker in the same time: {0}.", ranges),
        time.axis(),
        new ValueAxis(Unit.PERCENT, 0, 100, phrases).axis(),
        plots.stream().map(plot -> plot.curve(say(What.HUMIDITY), Stroke.THIN)).toList(),
        List.of(),
        List.of(new Marks(say(BY_HAND), Shape.DIAMOND, byHand)),
        plots.stream().flatMap(plot -> plot.gaps().stream()).toList(),
        HUMIDITY);
  }
}

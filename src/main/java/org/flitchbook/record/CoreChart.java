package org.flitchbook.record;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.flitchbook.check.Finding;
import org.flitchbook.check.Judgement;
import org.flitchbook.check.Part;
import org.flitchbook.document.Block;
import org.flitchbook.document.Chart;
import org.flitchbook.lot.Lot;
import org.flitchbook.lot.Track;
import org.flitchbook.measure.Unit;
import org.flitchbook.sheet.Step;
import org.flitchbook.sheet.What;

/** Smoke and chill on one time axis, and the humidity below it; a part of it for a deviation. */
final class CoreChart {

  private static final int WHOLE = 250;
  private static final int EXCERPT = 110;
  private static final int HUMIDITY = 64;
  private static final long HALF_HOUR = 1_800_000L;

  private final Judgement judgement;
  private final Lot lot;
  private final Unit unit;
  private final Phrases phrases;
  private final List<Track> cores;
  private final List<Track> airs;

  CoreChart(DayJudged day, Judgement judgement) {
    this.judgement = judgement;
    this.lot = judgement.lot();
    this.unit = day.plan().establishment().temperature();
    this.phrases = day.phrases();
    this.cores = lot.tracks(What.INTERNAL_TEMPERATURE, Step.SMOKE);
    this.airs =
        Stream.of(
                lot.tracks(What.CHAMBER_TEMPERATURE, Step.SMOKE),
                lot.tracks(What.WET_BULB_TEMPERATURE, Step.SMOKE),
                lot.tracks(What.COOLER_TEMPERATURE, Step.CHILL))
            .flatMap(List::stream)
            .toList();
  }

  List<Block> blocks() {
    List<Block> blocks = new ArrayList<>();
    whole()
        .ifPresent(
            time -> {
              blocks.add(
                  chart(
                      phrases.say(
                          "record.chart.caption", "Core temperature through smoke and chill"),
                      judgement.findings(),
                      time,
                      WHOLE));
              humidity(time).ifPresent(blocks::add);
            });
    return blocks;
  }

  /** The readings around one stage of a limit; empty where it was never clocked. */
  Optional<Chart> excerpt(Finding finding, Part part, String caption) {
    return whole()
        .flatMap(all -> around(part, all))
        .map(time -> chart(caption, List.of(finding), time, EXCERPT));
  }

  private Optional<TimeAxis> whole() {
    List<Track> drawn = Stream.concat(cores.stream(), airs.stream()).toList();
    long from = drawn.stream().mapToLong(track -> track.earliest(0)).min().orElse(0);
    long to = drawn.stream().mapToLong(track -> track.earliest(track.size() - 1)).max().orElse(0);
    return cores.isEmpty() || to <= from
        ? Optional.empty()
        : Optional.of(new TimeAxis(from, to, phrases));
  }

  private Optional<TimeAxis> around(Part part, TimeAxis all) {
    if (part.start().isEmpty() || part.end().isEmpty()) {
      return Optional.empty();
    }
    long from = Math.max(all.from(), part.start().get().toEpochMilli() - HALF_HOUR);
    long to = Math.min(all.to(), part.end().get().toEpochMilli() + HALF_HOUR);
    return to > from ? Optional.of(new TimeAxis(from, to, phrases)) : Optional.empty();
  }

  private Chart chart(String caption, List<Finding> findings, TimeAxis time, int height) {
    CoreLayers layers =
        new CoreLayers(
            lot, findings, unit, time, drawn(cores, unit, time), drawn(airs, unit, time));
    return new Chart(
        caption,
        new CoreWords(lot, findings, cores, unit, time).sentence(),
        time.axis(),
        layers.values().axis(),
        layers.curves(),
        layers.guides(),
        layers.marks(),
        layers.bands(),
        height);
  }

  private static List<Drawn> drawn(List<Track> tracks, Unit unit, TimeAxis time) {
    return tracks.stream().map(track -> new Drawn(track, unit, time)).toList();
  }

  private Optional<Block> humidity(TimeAxis time) {
    List<Track> tracks = lot.tracks(What.HUMIDITY, Step.SMOKE);
    if (tracks.isEmpty()) {
      return Optional.empty();
    }
    List<Drawn> drawn = drawn(tracks, Unit.PERCENT, time);
    List<Chart.Marker> byHand =
        drawn.stream().flatMap(each -> each.byHand(false).stream()).toList();
    List<String> ranges =
        tracks.stream().map(t -> Extremes.range(t, Unit.PERCENT, phrases)).toList();
    return Optional.of(
        new Chart(
            phrases.say("record.chart.humidity", "Humidity in the smoker"),
            phrases.say(
                "record.chart.humidity-told",
                "Humidity in the smoker in the same time: {0}.",
                String.join("; ", ranges)),
            time.axis(),
            new ValueAxis(Unit.PERCENT, 0, 100, phrases).axis(),
            drawn.stream()
                .map(
                    each ->
                        each.curve(phrases.word("what", What.HUMIDITY.word()), Chart.Stroke.THIN))
                .toList(),
            List.of(),
            List.of(
                new Chart.Marks(
                    phrases.say("record.core.by-hand", "by hand"), Chart.Shape.DIAMOND, byHand)),
            drawn.stream().flatMap(each -> each.gaps().stream()).toList(),
            HUMIDITY));
  }
}

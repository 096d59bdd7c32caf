package org.flitchbook.record;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.IntStream;
import org.flitchbook.check.Finding;
import org.flitchbook.check.Judgement;
import org.flitchbook.check.Measured;
import org.flitchbook.check.Part;
import org.flitchbook.document.Block;
import org.flitchbook.document.Table;
import org.flitchbook.lot.Lot;
import org.flitchbook.lot.Track;
import org.flitchbook.measure.Unit;
import org.flitchbook.plan.Kind;
import org.flitchbook.sheet.Step;
import org.flitchbook.sheet.What;

/** What the probes say of smoke and chill: stages, checkpoints, and which probe it was. */
final class CoreSection {

  private static final long HALF_HOUR = 1_800_000L;
  private static final int MOST_ROWS = 48;

  private final Judgement judgement;
  private final Phrases phrases;
  private final Unit unit;
  private final List<Track> cores;

  CoreSection(DayJudged day, Judgement judgement) {
    this.judgement = judgement;
    this.phrases = day.phrases();
    this.unit = day.plan().establishment().temperature();
    this.cores = judgement.lot().tracks(What.INTERNAL_TEMPERATURE, Step.SMOKE);
  }

  List<Block> blocks() {
    List<Block> blocks = new ArrayList<>();
    stages().ifPresent(blocks::add);
    held().ifPresent(blocks::add);
    if (cores.isEmpty()) {
      blocks.add(
          phrases.nothingOf(
              phrases.say("record.core.internal-temperature", "Internal temperature")));
    } else {
      blocks.add(checkpoints());
    }
    return blocks;
  }

  private Optional<Block> stages() {
    Grid grid =
        phrases
            .grid("record.core.crossings", "Crossings, at their worse end (month-day and clock)")
            .head("record.head.limit", "Limit", 12)
            .head("record.core.stage", "Stage", 0)
            .head("record.head.probe", "Probe", 0)
            .head("record.core.starts", "Starts", 0)
            .head("record.core.stops", "Stops", 0)
            .number("record.core.time", "Time", 0)
            .number("record.core.interpolated", "Interpolated", 0)
            .number("record.head.limit-value", "Limit value", 0)
            .head("record.head.verdict", "Verdict", 0);
    for (Finding finding : judgement.findings()) {
      finding.parts().forEach(part -> grid.row(row(grid, finding, part)));
    }
    return grid.isEmpty() ? Optional.empty() : Optional.of(grid.table());
  }

  private Table.Cell[] row(Grid grid, Finding finding, Part part) {
    Optional<Measured> measured = part.measured();
    return new Table.Cell[] {
      grid.cell(phrases.name(finding.limit())),
      grid.cell(phrases.band(part.from(), part.to())),
      grid.cell(phrases.word("probe", part.probe())),
      grid.cell(part.start().map(phrases::shortTime).orElse("–")),
      grid.cell(part.end().map(phrases::shortTime).orElse("–")),
      grid.cell(measured.map(m -> Phrases.quantity(m.value())).orElse("–")),
      grid.cell(measured.flatMap(Measured::interpolated).map(Phrases::quantity).orElse("–")),
      grid.cell(measured.map(Phrases::sign).orElse("–")),
      phrases.cell(part.verdict())
    };
  }

  /** The tables of time at temperature, where the plan has one. */
  private Optional<Block> held() {
    Grid grid =
        phrases
            .grid("record.core.held-rows", "Time at temperature, the row that came nearest")
            .head("record.head.limit", "Limit", 12)
            .head("record.core.row", "Row", 12)
            .number("record.core.held", "Held", 8)
            .number("record.core.wanted", "Wanted", 8)
            .head("record.head.verdict", "Verdict", 8);
    for (Finding finding : judgement.findings()) {
      if (finding.limit().kind() instanceof Kind.TimeAtTemperature) {
        grid.row(
            grid.cell(phrases.name(finding.limit())),
            grid.cell(finding.measured().map(m -> phrases.say(m.quantity())).orElse("–")),
            grid.cell(Phrases.worst(finding)),
            grid.cell(finding.measured().map(phrases::bound).orElse("–")),
            phrases.cell(finding.verdict()));
      }
    }
    return grid.isEmpty() ? Optional.empty() : Optional.of(grid.table());
  }

  /**
   * Of each probe the readings at which a stage begins or ends, its extremes, those by hand, and
   * one every half an hour; every few hours where that would be too many.
   */
  private Block checkpoints() {
    Grid grid =
        phrases
            .grid("record.core.checkpoints", "Checkpoints")
            .head("record.head.time", "Time", 10)
            .head("record.head.probe", "Probe", 6)
            .number("record.core.internal", "Internal", 7)
            .number("record.core.around", "Around it", 7)
            .head("record.head.remark", "Remark", 14)
            .head("record.head.where", "Where it stands", 16);
    TreeMap<Long, List<Table.Cell[]>> rows = new TreeMap<>();
    for (Track track : cores) {
      Map<Integer, List<String>> remarks = remarks(track);
      for (int index : chosen(track, remarks.keySet())) {
        String remark = String.join("; ", remarks.getOrDefault(index, List.of()));
        rows.computeIfAbsent(track.earliest(index), at -> new ArrayList<>())
            .add(row(grid, track, index, remark));
      }
    }
    rows.values().forEach(each -> each.forEach(grid::row));
    return grid.table();
  }

  /** What there is to say of some readings, by their index. */
  private Map<Integer, List<String>> remarks(Track track) {
    Map<Integer, List<String>> remarks = new TreeMap<>();
    Extremes ends = Extremes.of(track);
    remark(remarks, ends.highest(), phrases.say("record.core.peak", "highest"));
    remark(remarks, ends.lowest(), phrases.say("record.core.lowest", "lowest"));
    for (Part part : judgement.findings().stream().flatMap(f -> f.parts().stream()).toList()) {
      if (part.probe().equals(track.called())) {
        String band = phrases.band(part.from(), part.to());
        part.start()
            .ifPresent(
                at ->
                    remark(
                        remarks,
                        Drawn.upTo(track, at),
                        phrases.say("record.core.begins", "{0} begins", band)));
        part.end()
            .ifPresent(
                at ->
                    remark(
                        remarks,
                        Drawn.upTo(track, at),
                        phrases.say("record.core.ends", "{0} ends", band)));
      }
    }
    IntStream.range(0, track.size())
        .filter(track::byHand)
        .forEach(index -> remark(remarks, index, phrases.say("record.core.by-hand", "by hand")));
    return remarks;
  }

  private static void remark(Map<Integer, List<String>> remarks, int index, String told) {
    List<String> all = remarks.computeIfAbsent(index, each -> new ArrayList<>());
    if (!all.contains(told)) {
      all.add(told);
    }
  }

  private static Set<Integer> chosen(Track track, Set<Integer> remarked) {
    TreeSet<Integer> chosen = new TreeSet<>(remarked);
    chosen.addAll(List.of(0, track.size() - 1));
    long whole = track.earliest(track.size() - 1) - track.earliest(0);
    long interval = HALF_HOUR * (1 + whole / (MOST_ROWS * HALF_HOUR));
    long next = 0;
    for (int i = 0; i < track.size(); i++) {
      if (!track.byHand(i) && track.earliest(i) >= next) {
        chosen.add(i);
        next = track.earliest(i) / interval * interval + interval;
      }
    }
    return chosen;
  }

  private Table.Cell[] row(Grid grid, Track track, int index, String remark) {
    return new Table.Cell[] {
      grid.cell(phrases.time(Instant.ofEpochMilli(track.earliest(index)))),
      grid.cell(phrases.probe(track)),
      grid.cell(level(track, index)),
      grid.cell(around(track.earliest(index))),
      grid.cell(remark),
      grid.muted(track.place(index).toString())
    };
  }

  private String level(Track track, int index) {
    return Phrases.level(track, index, unit);
  }

  /** The last reading of smoker or cooler in the ten minutes up to that time. */
  private String around(long at) {
    Lot lot = judgement.lot();
    List<Track> airs = new ArrayList<>(lot.tracks(What.CHAMBER_TEMPERATURE, Step.SMOKE));
    airs.addAll(lot.tracks(What.COOLER_TEMPERATURE, Step.CHILL));
    long best = at - 600_000L;
    String shown = "–";
    for (Track track : airs) {
      for (int i = 0; i < track.size() && track.earliest(i) <= at; i++) {
        if (track.earliest(i) >= best) {
          best = track.earliest(i);
          shown = level(track, i);
        }
      }
    }
    return shown;
  }
}

package org.flitchbook.record;

import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.flitchbook.check.Finding;
import org.flitchbook.check.Judgement;
import org.flitchbook.check.Measured;
import org.flitchbook.check.Part;
import org.flitchbook.document.Block;
import org.flitchbook.document.Cell;
import org.flitchbook.document.Paragraph;
import org.flitchbook.lot.Lot;
import org.flitchbook.lot.Track;
import org.flitchbook.measure.Unit;
import org.flitchbook.plan.Kind;
import org.flitchbook.sheet.Step;
import org.flitchbook.sheet.What;

/** What the probes say of smoke and chill: stages, checkpoints, and which probe it was. */
final class CoreSection {

  private static final long HALF_HOUR = 1_800_000L;

  private final Judgement judgement;
  private final Unit unit;
  private final ZoneId zone;
  private final List<Track> cores;

  CoreSection(DayJudged day, Judgement judgement) {
    this.judgement = judgement;
    this.unit = day.plan().establishment().temperature();
    this.zone = day.plan().establishment().zone();
    this.cores = judgement.lot().tracks(What.INTERNAL_TEMPERATURE, Step.SMOKE);
  }

  List<Block> blocks() {
    List<Block> blocks = new ArrayList<>();
    stages().ifPresent(blocks::add);
    held().ifPresent(blocks::add);
    if (cores.isEmpty()) {
      blocks.add(new Paragraph(Bound.of("Internal temperature: " + Phrases.NOT_RECORDED)));
    } else {
      blocks.add(checkpoints());
    }
    return blocks;
  }

  private Optional<Block> stages() {
    Grid grid =
        new Grid("Crossings, at their worse end (month-day and clock)")
            .head("Limit", 14)
            .head("Stage", 10)
            .head("Probe", 0)
            .head("Starts", 6)
            .head("Stops", 6)
            .number("Time", 0)
            .number("Interpolated", 0)
            .number("Limit value", 0)
            .head("Verdict", 0);
    for (Finding finding : judgement.findings()) {
      finding.parts().forEach(part -> grid.row(row(finding, part)));
    }
    return grid.isEmpty() ? Optional.empty() : Optional.of(grid.table());
  }

  private Cell[] row(Finding finding, Part part) {
    Optional<Measured> measured = part.measured();
    return new Cell[] {
      Grid.cell(finding.limit().name()),
      Grid.cell(part.from() + " to " + part.to()),
      Grid.cell(part.probe()),
      Grid.cell(part.start().map(this::shortTime).orElse("–")),
      Grid.cell(part.end().map(this::shortTime).orElse("–")),
      Grid.cell(measured.map(m -> Phrases.quantity(m.value())).orElse("–")),
      Grid.cell(measured.flatMap(Measured::interpolated).map(Phrases::quantity).orElse("–")),
      Grid.cell(measured.map(Phrases::bound).orElse("–")),
      Grid.cell(part.verdict().words(), Phrases.tone(part.verdict()))
    };
  }

  /** The tables of time at temperature, where the plan has one. */
  private Optional<Block> held() {
    Grid grid =
        new Grid("Time at temperature, the row that came nearest")
            .head("Limit", 12)
            .head("Row", 12)
            .number("Held", 8)
            .number("Wanted", 8)
            .head("Verdict", 8);
    for (Finding finding : judgement.findings()) {
      if (finding.limit().kind() instanceof Kind.TimeAtTemperature) {
        grid.row(
            Grid.cell(finding.limit().name()),
            Grid.cell(finding.measured().map(Measured::quantity).orElse("–")),
            Grid.cell(Phrases.worst(finding)),
            Grid.cell(finding.measured().map(Phrases::bound).orElse("–")),
            Grid.cell(finding.verdict().words(), Phrases.tone(finding.verdict())));
      }
    }
    return grid.isEmpty() ? Optional.empty() : Optional.of(grid.table());
  }

  /** One reading of each probe every half an hour, its peak, and the readings by hand. */
  private Block checkpoints() {
    Grid grid =
        new Grid("Checkpoints")
            .head("Time", 10)
            .head("Probe", 6)
            .number("Internal", 7)
            .number("Around it", 7)
            .head("Remark", 8)
            .head("Where it stands", 16);
    TreeMap<Long, List<Cell[]>> rows = new TreeMap<>();
    for (Track track : cores) {
      for (int index : chosen(track)) {
        rows.computeIfAbsent(track.earliest(index), at -> new ArrayList<>()).add(row(track, index));
      }
    }
    rows.values().forEach(each -> each.forEach(grid::row));
    return grid.table();
  }

  private Set<Integer> chosen(Track track) {
    TreeSet<Integer> chosen =
        new TreeSet<>(List.of(0, track.size() - 1, Extremes.of(track).highest()));
    long next = 0;
    for (int i = 0; i < track.size(); i++) {
      if (track.byHand(i)) {
        chosen.add(i);
      } else if (track.earliest(i) >= next) {
        chosen.add(i);
        next = track.earliest(i) / HALF_HOUR * HALF_HOUR + HALF_HOUR;
      }
    }
    return chosen;
  }

  private Cell[] row(Track track, int index) {
    String remark =
        track.byHand(index) ? "by hand" : index == Extremes.of(track).highest() ? "its peak" : "";
    return new Cell[] {
      Grid.cell(time(Instant.ofEpochMilli(track.earliest(index)))),
      Grid.cell(track.called()),
      Grid.cell(level(track, index)),
      Grid.cell(around(track.earliest(index))),
      Grid.cell(remark),
      Grid.muted(track.place(index).toString())
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

  private String shortTime(Instant time) {
    return Phrases.shortTime(time, zone);
  }

  private String time(Instant time) {
    return Phrases.time(time, zone);
  }
}

package org.flitchbook.record;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.flitchbook.document.Block;
import org.flitchbook.lot.Lot;
import org.flitchbook.lot.Track;
import org.flitchbook.measure.Dimension;
import org.flitchbook.measure.Level;
import org.flitchbook.measure.Unit;

/** The readings that were left out of a lot's curves, with what they showed and why. */
final class LeftOut {

  private final Lot lot;
  private final Unit temperature;
  private final Phrases phrases;

  LeftOut(DayJudged day, Lot lot) {
    this.lot = lot;
    this.temperature = day.plan().establishment().temperature();
    this.phrases = day.phrases();
  }

  Optional<Block> block() {
    Grid grid =
        phrases
            .grid("record.left-out.caption", "Readings left out of the curves")
            .head("record.head.probe", "Probe", 4)
            .head("record.left-out.from", "From", 8)
            .head("record.left-out.until", "Until", 8)
            .number("record.left-out.readings", "Readings", 4)
            .number("record.left-out.values", "Values", 8)
            .head("record.left-out.why", "Why", 12)
            .head("record.head.where", "Where it stands", 12);
    for (Track track : lot.tracks().stream().map(Lot.StepTrack::track).toList()) {
      runs(track).forEach(run -> grid.row(row(track, run)));
    }
    return grid.isEmpty() ? Optional.empty() : Optional.of(grid.table());
  }

  /** Those left out one after the other for the same reason. */
  private static List<List<Track.Excluded>> runs(Track track) {
    List<List<Track.Excluded>> runs = new ArrayList<>();
    String why = "";
    for (Track.Excluded each : track.excluded()) {
      if (runs.isEmpty() || !each.why().equals(why)) {
        runs.add(new ArrayList<>());
        why = each.why();
      }
      runs.get(runs.size() - 1).add(each);
    }
    return runs;
  }

  private String[] row(Track track, List<Track.Excluded> run) {
    Track.Excluded first = run.get(0);
    Track.Excluded last = run.get(run.size() - 1);
    return new String[] {
      phrases.probe(track),
      phrases.time(Instant.ofEpochMilli(first.at())),
      phrases.time(Instant.ofEpochMilli(last.at())),
      String.valueOf(run.size()),
      range(track, run),
      phrases.word("rule", first.why()),
      first.place().toString()
    };
  }

  private String range(Track track, List<Track.Excluded> run) {
    Unit unit = track.unit().dimension() == Dimension.SHARE ? Unit.PERCENT : temperature;
    long low = run.stream().mapToLong(Track.Excluded::level).min().orElseThrow();
    long high = run.stream().mapToLong(Track.Excluded::level).max().orElseThrow();
    String lowest = Level.quantity(low, unit).shown();
    return low == high
        ? lowest
        : phrases.say("record.band", "{0} to {1}", lowest, Level.quantity(high, unit).shown());
  }
}

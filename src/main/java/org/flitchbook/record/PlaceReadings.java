package org.flitchbook.record;

import java.time.Instant;
import java.util.HashSet;
import java.util.Optional;
import java.util.Set;
import org.flitchbook.document.Block;
import org.flitchbook.input.Place;
import org.flitchbook.lot.Lot;
import org.flitchbook.lot.Track;
import org.flitchbook.measure.Dimension;
import org.flitchbook.measure.Unit;
import org.flitchbook.reading.Entry;
import org.flitchbook.sheet.Step;
import org.flitchbook.sheet.What;

/**
 * What was read of a place while the lot lay in it, beyond the lot's own entries: hand readings
 * written beside other lots, and the ends of what a log saw.
 */
final class PlaceReadings {

  private final Lot lot;
  private final Unit temperature;
  private final Phrases phrases;

  PlaceReadings(DayJudged day, Lot lot) {
    this.lot = lot;
    this.temperature = day.plan().establishment().temperature();
    this.phrases = day.phrases();
  }

  Optional<Block> of(Step step) {
    Grid grid =
        phrases
            .grid("record.place.caption", "Readings of the place that serve this lot too")
            .head("record.head.time", "Time", 8)
            .head("record.head.what", "What", 10)
            .number("record.head.value", "Value", 5)
            .head("record.head.remark", "Remark", 10)
            .head("record.head.where", "Where it stands", 12);
    Set<Place> own = new HashSet<>(lot.entries().stream().map(Entry::place).toList());
    for (Lot.StepTrack each : lot.tracks()) {
      if (each.step() == step && each.track().what() != What.INTERNAL_TEMPERATURE) {
        rows(grid, each.track(), own);
      }
    }
    return grid.isEmpty() ? Optional.empty() : Optional.of(grid.table());
  }

  private void rows(Grid grid, Track track, Set<Place> own) {
    for (int i = 0; i < track.size(); i++) {
      if (track.byHand(i) && !own.contains(track.place(i))) {
        row(grid, track, i, "");
      }
    }
    if (track.interval() > 0) {
      Extremes ends = Extremes.of(track);
      row(
          grid,
          track,
          ends.lowest(),
          phrases.say("record.place.lowest", "lowest of {0} in the log", track.size()));
      row(
          grid,
          track,
          ends.highest(),
          phrases.say("record.place.highest", "highest of {0} in the log", track.size()));
    }
  }

  private void row(Grid grid, Track track, int index, String remark) {
    Unit unit = track.unit().dimension() == Dimension.SHARE ? Unit.PERCENT : temperature;
    grid.row(
        phrases.time(Instant.ofEpochMilli(track.earliest(index))),
        phrases.word("what", track.what().word()),
        Phrases.level(track, index, unit),
        remark,
        track.place(index).toString());
  }
}

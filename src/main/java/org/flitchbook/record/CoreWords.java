package org.flitchbook.record;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.flitchbook.check.Judgement;
import org.flitchbook.check.Part;
import org.flitchbook.document.Band;
import org.flitchbook.lot.Track;
import org.flitchbook.measure.Unit;

/** The chart of smoke and chill in one sentence with its numbers, for those who can't see it. */
record CoreWords(Judgement judgement, List<Track> cores, Unit unit, TimeAxis time) {

  String sentence() {
    List<String> told = new ArrayList<>();
    cores.forEach(track -> told.add(course(track)));
    judgement.findings().forEach(finding -> finding.parts().forEach(part -> stage(part, told)));
    for (Track track : cores) {
      new Drawn(track, unit, time).gaps().stream().map(Band::label).forEach(told::add);
    }
    return "Internal temperature of lot "
        + judgement.lot().code()
        + " from "
        + at(time.from())
        + " to "
        + at(time.to())
        + ": "
        + String.join("; ", told)
        + ".";
  }

  private String at(long millis) {
    return Phrases.time(Instant.ofEpochMilli(millis), time.zone());
  }

  /** Where a probe began, its highest reading, and where it ended. */
  private String course(Track track) {
    int peak = Extremes.of(track).highest();
    int last = track.size() - 1;
    return track.called()
        + " is "
        + shown(track, 0)
        + " at first, at most "
        + shown(track, peak)
        + " at "
        + Phrases.clock(Instant.ofEpochMilli(track.earliest(peak)), time.zone())
        + " and "
        + shown(track, last)
        + " at last";
  }

  private String shown(Track track, int index) {
    return Phrases.level(track, index, unit);
  }

  private static void stage(Part part, List<String> told) {
    part.measured()
        .ifPresent(
            measured ->
                told.add(
                    part.from()
                        + " to "
                        + part.to()
                        + " took "
                        + Phrases.quantity(measured.value())
                        + ", "
                        + Phrases.bound(measured)
                        + ": "
                        + part.verdict().words()));
  }
}

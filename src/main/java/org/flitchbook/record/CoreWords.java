package org.flitchbook.record;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.flitchbook.check.Finding;
import org.flitchbook.check.Part;
import org.flitchbook.document.Chart;
import org.flitchbook.lot.Lot;
import org.flitchbook.lot.Track;
import org.flitchbook.measure.Unit;

/** The chart of smoke and chill in one sentence with its numbers, for those who can't see it. */
record CoreWords(Lot lot, List<Finding> findings, List<Track> cores, Unit unit, TimeAxis time) {

  String sentence() {
    List<String> told = new ArrayList<>();
    cores.forEach(track -> told.add(course(track)));
    findings.forEach(finding -> finding.parts().forEach(part -> stage(part, told)));
    for (Track track : cores) {
      new Drawn(track, unit, time).gaps().stream().map(Chart.Band::label).forEach(told::add);
    }
    return phrases()
        .say(
            "record.chart.alternative",
            "Internal temperature of lot {0} from {1} to {2}: {3}.",
            lot.code(),
            at(time.from()),
            at(time.to()),
            String.join("; ", told));
  }

  private String at(long millis) {
    return phrases().time(Instant.ofEpochMilli(millis));
  }

  private Phrases phrases() {
    return time.phrases();
  }

  /** Where a probe began, its highest reading, and where it ended. */
  private String course(Track track) {
    int peak = Extremes.of(track).highest();
    int last = track.size() - 1;
    return phrases()
        .say(
            "record.chart.course",
            "{0} is {1} at first, at most {2} at {3} and {4} at last",
            phrases().probe(track),
            shown(track, 0),
            shown(track, peak),
            phrases().clock(Instant.ofEpochMilli(track.earliest(peak))),
            shown(track, last));
  }

  private String shown(Track track, int index) {
    return Phrases.level(track, index, unit);
  }

  private void stage(Part part, List<String> told) {
    part.measured()
        .ifPresent(
            measured ->
                told.add(
                    phrases()
                        .say(
                            "record.chart.stage",
                            "{0} to {1} took {2}, {3}: {4}",
                            part.from(),
                            part.to(),
                            Phrases.quantity(measured.value()),
                            phrases().bound(measured),
                            phrases().verdict(part.verdict()))));
  }
}

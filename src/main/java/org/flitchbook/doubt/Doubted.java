package org.flitchbook.doubt;

import java.util.ArrayList;
import java.util.List;
import org.flitchbook.input.Fault;
import org.flitchbook.input.Place;
import org.flitchbook.input.Severity;
import org.flitchbook.input.Stretch;
import org.flitchbook.lot.Track;

/** What is in doubt itself, so that it bears nothing out. */
final class Doubted {

  private final List<Fault> faults = new ArrayList<>();

  void add(List<Fault> found) {
    faults.addAll(found);
  }

  /** Whether a reading was asked about, or left out because it is none. */
  boolean holds(Track track, int index) {
    return track.byHand(index)
        ? holds(track.place(index))
        : faults.stream()
            .flatMap(fault -> fault.stretch().stream())
            .filter(stretch -> stretch.standing() != Stretch.Standing.SILENCE)
            .filter(stretch -> stretch.origin().equals(track.origin()))
            .anyMatch(stretch -> stretch.holds(track.earliest(index)));
  }

  /** Whether an entry was asked about. */
  boolean holds(Place entry) {
    return faults.stream()
        .filter(fault -> !fault.is(Severity.NOTE))
        .map(Fault::place)
        .anyMatch(place -> place.line() == entry.line() && place.file().equals(entry.file()));
  }
}

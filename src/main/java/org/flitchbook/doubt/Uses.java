package org.flitchbook.doubt;

import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BiFunction;
import org.flitchbook.input.Fault;
import org.flitchbook.input.Place;
import org.flitchbook.lot.Lot;
import org.flitchbook.lot.Track;
import org.flitchbook.plan.Instrument;
import org.flitchbook.reading.Entry;

/** When each instrument was used for a lot, by its id. */
record Uses(Map<String, List<Use>> ofInstruments) {

  /** A use of an instrument for a lot: when first, when last, and where that stands. */
  record Use(Instant first, Place firstAt, Instant last) {}

  static Uses of(Lot lot) {
    Map<String, List<Use>> uses = new LinkedHashMap<>();
    for (Entry entry : lot.entries()) {
      if (!entry.instrument().isEmpty()) {
        Instant at = entry.time().earliest();
        uses.computeIfAbsent(entry.instrument(), id -> new ArrayList<>())
            .add(new Use(at, entry.place(), at));
      }
    }
    for (Lot.StepTrack each : lot.tracks()) {
      Track track = each.track();
      if (track.interval() > 0 && track.size() > 0) {
        uses.computeIfAbsent(track.instrument(), id -> new ArrayList<>()).add(use(track));
      }
    }
    return new Uses(uses);
  }

  private static Use use(Track track) {
    return new Use(
        Instant.ofEpochMilli(track.earliest(0)),
        track.place(0),
        Instant.ofEpochMilli(track.earliest(track.size() - 1)));
  }

  /** The first fault of each instrument that is found in its uses. */
  List<Fault> firstFaults(Subject subject, BiFunction<Instrument, Use, Optional<Fault>> look) {
    List<Fault> faults = new ArrayList<>();
    ofInstruments.forEach(
        (id, uses) ->
            subject
                .plan()
                .instrument(id)
                .flatMap(
                    known ->
                        uses.stream().flatMap(use -> look.apply(known, use).stream()).findFirst())
                .ifPresent(faults::add));
    return faults;
  }
}

package org.flitchbook.doubt;

import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BiFunction;
import java.util.stream.IntStream;
import java.util.stream.Stream;
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
    Stream.concat(lot.entries().stream(), lot.tracks().stream().flatMap(Uses::byHand))
        .filter(entry -> !entry.instrument().isEmpty())
        .distinct()
        .forEach(entry -> of(uses, entry.instrument()).add(use(entry)));
    for (Lot.StepTrack each : lot.tracks()) {
      Track track = each.track();
      if (track.interval() > 0 && track.size() > 0) {
        of(uses, track.instrument()).add(use(track));
      }
    }
    return new Uses(uses);
  }

  /** Those of its places too, which may stand under another lot. */
  private static Stream<Entry> byHand(Lot.StepTrack each) {
    Track track = each.track();
    return IntStream.range(0, track.size())
        .filter(track::byHand)
        .mapToObj(track::entry)
        .flatMap(Optional::stream);
  }

  private static List<Use> of(Map<String, List<Use>> uses, String instrument) {
    return uses.computeIfAbsent(instrument, id -> new ArrayList<>());
  }

  private static Use use(Entry entry) {
    Instant at = entry.time().earliest();
    return new Use(at, entry.place(), at);
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

package org.flitchbook.doubt;

import java.time.Instant;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.flitchbook.input.Place;
import org.flitchbook.lot.Lot;
import org.flitchbook.lot.Track;
import org.flitchbook.plan.Instrument;
import org.flitchbook.reading.Entry;

/** A use of an instrument for a lot: when first, where that is written, and when last. */
record InstrumentUse(Instrument instrument, Instant first, Place firstAt, Instant last) {

  /** The uses of each of the plan's instruments. */
  static Collection<List<InstrumentUse>> ofEach(Subject subject) {
    Lot lot = subject.lot();
    Stream<InstrumentUse> byHand =
        Stream.concat(lot.entries().stream(), lot.tracks().stream().flatMap(InstrumentUse::byHand))
            .distinct()
            .flatMap(entry -> of(subject, entry));
    Stream<InstrumentUse> logged =
        lot.tracks().stream()
            .map(Lot.StepTrack::track)
            .filter(track -> track.interval() > 0 && track.size() > 0)
            .flatMap(track -> of(subject, track));
    return Stream.concat(byHand, logged)
        .collect(
            Collectors.groupingBy(
                InstrumentUse::instrument, LinkedHashMap::new, Collectors.toList()))
        .values();
  }

  /** Those of its places too, which may stand under another lot. */
  private static Stream<Entry> byHand(Lot.StepTrack each) {
    return IntStream.range(0, each.track().size())
        .mapToObj(each.track()::entry)
        .flatMap(Optional::stream);
  }

  private static Stream<InstrumentUse> of(Subject subject, Entry entry) {
    Instant at = entry.time().earliest();
    return subject.plan().instrument(entry.instrument()).stream()
        .map(instrument -> new InstrumentUse(instrument, at, entry.place(), at));
  }

  private static Stream<InstrumentUse> of(Subject subject, Track track) {
    Instant first = Instant.ofEpochMilli(track.earliest(0));
    Instant last = Instant.ofEpochMilli(track.earliest(track.size() - 1));
    return subject.plan().instrument(track.instrument()).stream()
        .map(instrument -> new InstrumentUse(instrument, first, track.place(0), last));
  }

  /** The first doubt of each instrument that is found in its uses. */
  static Stream<Doubt> first(Subject subject, Function<InstrumentUse, Optional<Doubt>> look) {
    return ofEach(subject).stream()
        .flatMap(uses -> uses.stream().flatMap(use -> look.apply(use).stream()).limit(1));
  }
}

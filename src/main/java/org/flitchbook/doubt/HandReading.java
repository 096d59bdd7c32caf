package org.flitchbook.doubt;

import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Predicate;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.flitchbook.lot.Track;
import org.flitchbook.reading.Entry;
import org.flitchbook.sums.Shift;

/** A reading of the core by hand among the others of one probe, or of the hand alone. */
record HandReading(Track core, int index) {

  /** What was read by hand, each once: an entry lies in the track of every probe. */
  static Stream<Entry> read(Stream<Track> tracks) {
    return tracks
        .flatMap(
            track -> IntStream.range(0, track.size()).filter(track::byHand).mapToObj(track::entry))
        .flatMap(Optional::stream)
        .distinct();
  }

  /** Those that are in doubt beside each of the probes that they may be of. */
  static Stream<HandReading> inDoubt(Subject subject, Predicate<HandReading> isInDoubt) {
    List<Track> cores = subject.coreTracks();
    return read(cores.stream())
        .map(entry -> beside(cores, entry))
        .filter(each -> each.stream().allMatch(isInDoubt))
        .map(each -> each.get(0));
  }

  /** Beside the probe that it names, else beside all of them. */
  private static List<HandReading> beside(List<Track> cores, Entry entry) {
    List<Track> named = cores.stream().filter(core -> core.called().equals(entry.item())).toList();
    return (named.isEmpty() ? cores : named)
        .stream()
            .flatMap(
                core ->
                    IntStream.range(0, core.size())
                        .filter(i -> core.entry(i).equals(Optional.of(entry)))
                        .mapToObj(i -> new HandReading(core, i)))
            .toList();
  }

  Entry entry() {
    return core.entry(index).orElseThrow();
  }

  /** Whether it counts by itself; beside a log that goes on, it is compared with that. */
  boolean stands() {
    return core.stands(index);
  }

  long level() {
    return level(index);
  }

  long level(int other) {
    return core.level(other, Shift.AS_WRITTEN);
  }

  long at() {
    return core.earliest(index);
  }

  /** The last reading before it of the same spot, as far as anybody wrote that. */
  OptionalInt before() {
    return IntStream.iterate(index - 1, i -> i >= 0, i -> i - 1)
        .filter(this::isSameSpot)
        .findFirst();
  }

  /** The first one after it. */
  OptionalInt after() {
    return IntStream.range(index + 1, core.size()).filter(this::isSameSpot).findFirst();
  }

  private boolean isSameSpot(int other) {
    return core.entry(other)
        .map(
            entry -> isSame(entry.piece(), entry().piece()) && isSame(entry.item(), entry().item()))
        .orElse(true);
  }

  private static boolean isSame(String one, String other) {
    return one.isEmpty() || other.isEmpty() || one.equals(other);
  }

  /** The most minutes that can lie between it and another one. */
  double minutesTo(int other) {
    int first = Math.min(index, other);
    int last = Math.max(index, other);
    return (core.latest(last) - core.earliest(first)) / 60_000.0;
  }
}

package org.flitchbook.check;

import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.flitchbook.input.Fault;
import org.flitchbook.input.Place;
import org.flitchbook.input.Stretch;
import org.flitchbook.lot.Track;

/**
 * What a finding depends on: an entry's line, or a log's column (line 0) from one time to another.
 *
 * @param from in ms since 1970, and {@code until} counted in
 * @param decides whether the finding could be another without it; else it was looked at beside
 */
record Dependency(Place place, long from, long until, boolean decides) {

  static Dependency on(Place place) {
    return new Dependency(place, Long.MIN_VALUE, Long.MAX_VALUE, true);
  }

  static Dependency lookedAt(Place place) {
    return new Dependency(place, Long.MIN_VALUE, Long.MAX_VALUE, false);
  }

  /** The readings by hand of tracks of which perhaps only some decide. */
  static Stream<Dependency> lookedAt(List<Track> tracks) {
    return tracks.stream()
        .flatMap(
            track -> IntStream.range(0, track.size()).filter(track::byHand).mapToObj(track::entry))
        .flatMap(Optional::stream)
        .map(entry -> lookedAt(entry.place()));
  }

  /** All readings of a track. */
  static List<Dependency> on(Track track) {
    return on(track, 0, track.size() - 1);
  }

  /** The readings of a track from one to another, and those by hand among them that count. */
  static List<Dependency> on(Track track, int first, int last) {
    Stream<Dependency> byHand =
        IntStream.rangeClosed(first, last)
            .filter(i -> track.byHand(i) && track.stands(i))
            .mapToObj(i -> on(track.place(i)));
    Stream<Dependency> logged =
        columns(track, first, last)
            .filter(column -> track.interval() > 0)
            .map(column -> new Dependency(column, track.earliest(first), track.latest(last), true));
    return Stream.concat(byHand, logged).toList();
  }

  /** The column in each file that holds some of the readings, the first file always. */
  private static Stream<Place> columns(Track track, int first, int last) {
    Stream<Place> others =
        IntStream.rangeClosed(first, last)
            .filter(i -> !track.byHand(i))
            .mapToObj(track::place)
            .map(place -> new Place(place.file(), 0, place.column()))
            .distinct();
    return Stream.concat(Stream.of(track.origin()), others).distinct();
  }

  boolean isTouchedBy(Fault fault) {
    return decides
        && fault.stretch().map(this::overlaps).orElseGet(() -> isTouchedBy(fault.place()));
  }

  private boolean overlaps(Stretch stretch) {
    return place.equals(stretch.origin())
        && from <= stretch.until().toEpochMilli()
        && until >= stretch.from().toEpochMilli();
  }

  /**
   * An entry is touched by a fault of its line; a log's column by one of its column or its file.
   */
  private boolean isTouchedBy(Place fault) {
    if (!place.file().equals(fault.file())) {
      return false;
    }
    boolean wholeColumn = place.line() == 0 || fault.line() == 0;
    return wholeColumn
        ? fault.column().isEmpty() || place.column().equals(fault.column())
        : place.line() == fault.line();
  }
}

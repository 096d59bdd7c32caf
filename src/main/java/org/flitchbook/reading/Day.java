package org.flitchbook.reading;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.stream.Stream;
import org.flitchbook.input.Fault;

/** All that one day's folder says. */
public record Day(
    LocalDate date,
    List<Entry> entries,
    List<Series> series,
    List<FileRead> files,
    List<Fault> faults) {

  public Day {
    entries = List.copyOf(entries);
    series = List.copyOf(series);
    files = List.copyOf(files);
    faults = List.copyOf(faults);
  }

  /** The same day with other entries. */
  public Day with(List<Entry> other) {
    return new Day(date, other, series, files, faults);
  }

  /** The last time of each log. */
  public Stream<Instant> lastTimes() {
    return series.stream()
        .map(Series::samples)
        .filter(samples -> samples.size() > 0)
        .map(samples -> Instant.ofEpochMilli(samples.at(samples.size() - 1)));
  }
}

package org.flitchbook.reading;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
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

  /** The times of the entries, and the last time of each log. */
  public List<Instant> lastTimes() {
    List<Instant> times = new ArrayList<>();
    entries.forEach(entry -> times.add(entry.time().earliest()));
    for (Series each : series) {
      Samples samples = each.samples();
      if (samples.size() > 0) {
        times.add(Instant.ofEpochMilli(samples.at(samples.size() - 1)));
      }
    }
    return times;
  }
}

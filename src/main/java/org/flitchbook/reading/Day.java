package org.flitchbook.reading;

import java.time.LocalDate;
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
}

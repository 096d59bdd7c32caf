package org.flitchbook.desk;

import java.nio.file.Path;
import java.util.List;
import org.flitchbook.input.Fault;

/**
 * What came of a job.
 *
 * @param text for standard output
 * @param json the same as one JSON document; empty where the job has none
 * @param faults for standard error
 * @param written the files that were written
 */
public record Answer(
    Status status, String text, String json, List<Fault> faults, List<Path> written) {

  public Answer {
    faults = List.copyOf(faults);
    written = List.copyOf(written);
  }

  static Answer broken(List<Fault> faults) {
    return new Answer(Status.BROKEN, "", "", faults, List.of());
  }
}

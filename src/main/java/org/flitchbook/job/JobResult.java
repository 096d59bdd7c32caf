package org.flitchbook.job;

import java.nio.charset.StandardCharsets;
import java.util.List;
import org.flitchbook.input.Fault;

/**
 * What came of a job.
 *
 * @param text for standard output
 * @param json the same as one JSON document; empty where the job has none
 * @param faults for standard error
 */
public record JobResult(ExitStatus status, String text, String json, List<Fault> faults) {

  public JobResult {
    faults = List.copyOf(faults);
  }

  /** A job with a text and the same as one JSON document, in UTF-8. */
  public static JobResult of(ExitStatus status, String text, byte[] json) {
    return new JobResult(status, text, new String(json, StandardCharsets.UTF_8), List.of());
  }

  /** A job that found nothing amiss, with a text alone. */
  public static JobResult well(String text) {
    return new JobResult(ExitStatus.WELL, text, "", List.of());
  }

  /** A job that could not be done, since files can't be parsed. */
  public static JobResult broken(List<Fault> faults) {
    return new JobResult(ExitStatus.BROKEN, "", "", faults);
  }
}

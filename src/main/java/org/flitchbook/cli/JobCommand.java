package org.flitchbook.cli;

import java.util.concurrent.Callable;
import org.flitchbook.job.JobResult;
import org.flitchbook.job.Session;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** A command that stands for one job. */
abstract class JobCommand implements Callable<Integer> {

  @Spec private CommandSpec spec;

  /** Does the job. */
  abstract JobResult run(Session session);

  /** Whether one JSON document is wanted instead of text. */
  boolean isJson() {
    return false;
  }

  @Override
  public Integer call() {
    return Terminal.run(spec, isJson(), this::run);
  }
}

package org.flitchbook.cli;

import java.nio.file.Path;
import java.util.Optional;
import org.flitchbook.job.JobResult;
import org.flitchbook.job.Session;
import org.flitchbook.judging.Judging;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code flitchbook check}. */
@Command(
    name = "check",
    description = "Judges a day's lots, or all lots of a book at its last day. Writes nothing.",
    mixinStandardHelpOptions = true)
final class CheckCommand extends JobCommand {

  @Parameters(
      paramLabel = "DAY|BOOK",
      description = "a day's folder, such as demo-data/wrenfold/2026-02-24, or a book's")
  private Path where;

  @Option(names = "--json", description = "one JSON document instead of text")
  private boolean json;

  @Option(
      names = "--at",
      paramLabel = "TIME",
      description = "the moment judged, such as 2026-02-24T18:00; else the day's end")
  private @Nullable String at;

  @Override
  boolean isJson() {
    return json;
  }

  @Override
  JobResult run(Session session) {
    return Judging.check(session, where, Optional.ofNullable(at));
  }
}

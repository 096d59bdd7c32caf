package org.flitchbook.cli;

import java.nio.file.Path;
import java.util.Optional;
import org.flitchbook.closing.CloseRequest;
import org.flitchbook.closing.Closing;
import org.flitchbook.job.JobResult;
import org.flitchbook.job.Session;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code flitchbook close}. */
@Command(
    name = "close",
    description = "Judges every lot of a day and writes its records.",
    mixinStandardHelpOptions = true)
final class CloseCommand extends JobCommand {

  @Parameters(
      paramLabel = "DAY",
      description = "a day's folder, such as demo-data/wrenfold/2026-02-24")
  private Path where;

  @Option(
      names = "--out",
      paramLabel = "DIR",
      description = "write there and leave the book untouched; else under the book's records")
  private @Nullable Path out;

  @Option(
      names = "--at",
      paramLabel = "TIME",
      description = "the moment judged, for a day closed while something still chills")
  private @Nullable String at;

  @Option(
      names = "--as",
      paramLabel = "INITIALS",
      description = "who closes, by the initials in the plan")
  private @Nullable String by;

  @Option(
      names = "--reason",
      paramLabel = "TEXT",
      description = "why a day that was closed is closed again, its sheets having changed")
  private @Nullable String reason;

  @Override
  JobResult run(Session session) {
    CloseRequest request =
        new CloseRequest(
            Optional.ofNullable(out),
            Optional.ofNullable(at),
            Optional.ofNullable(by),
            Optional.ofNullable(reason));
    return Closing.close(session, where, request);
  }
}

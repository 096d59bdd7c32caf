package org.flitchbook.cli;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import org.flitchbook.book.BookFolder;
import org.flitchbook.job.ExitStatus;
import org.flitchbook.job.JobResult;
import org.flitchbook.job.Session;
import org.flitchbook.json.Json;
import org.flitchbook.look.Look;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code flitchbook look}. */
@Command(
    name = "look",
    description = "Says what is in a probe log, and proposes an entry for logs.json.",
    mixinStandardHelpOptions = true)
final class LookCommand extends JobCommand {

  @Parameters(paramLabel = "FILE", description = "a log as the logger exported it")
  private Path file;

  @Option(names = "--json", description = "one JSON document instead of text")
  private boolean json;

  @Override
  boolean isJson() {
    return json;
  }

  @Override
  JobResult run(Session session) {
    BookFolder.FileRead read = BookFolder.file(session, file);
    return read.file()
        .map(log -> Look.at(log, session.language()))
        .map(LookCommand::result)
        .orElseGet(() -> JobResult.broken(read.faults()));
  }

  private static JobResult result(Look.Result seen) {
    if (!seen.faults().isEmpty()) {
      return JobResult.broken(seen.faults());
    }
    String json = new String(Json.write(seen.tree()), StandardCharsets.UTF_8);
    return new JobResult(ExitStatus.WELL, seen.text(), json, List.of());
  }
}

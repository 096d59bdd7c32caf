package org.flitchbook.cli;

import java.nio.file.Path;
import org.flitchbook.job.JobResult;
import org.flitchbook.job.Session;
import org.flitchbook.tracing.Tracing;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code flitchbook trace}. */
@Command(
    name = "trace",
    description =
        "Tells everything that a code touches: lots, what went in, where it went, what is left."
            + " Writes nothing.",
    mixinStandardHelpOptions = true)
final class TraceCommand extends JobCommand {

  @Parameters(
      paramLabel = "CODE",
      description =
          "of a lot, an ingredient's or a supplier's lot, an instrument or a customer; case is"
              + " ignored")
  private String code;

  @Option(
      names = "--book",
      paramLabel = "BOOK",
      defaultValue = ".",
      description = "the book's folder; else the folder in which the command is given")
  private Path book;

  @Option(names = "--json", description = "one JSON document instead of text")
  private boolean json;

  @Override
  boolean isJson() {
    return json;
  }

  @Override
  JobResult run(Session session) {
    return Tracing.trace(session, book, code);
  }
}

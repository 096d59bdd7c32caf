package org.flitchbook.cli;

import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.flitchbook.tracing.Tracing;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code flitchbook trace}. */
@Command(
    name = "trace",
    description =
        "Tells everything that a code touches: lots, what went in, where it went, what is left."
            + " Writes nothing.",
    mixinStandardHelpOptions = true)
final class TraceCommand implements Callable<Integer> {

  @Spec private CommandSpec spec;

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
  public Integer call() {
    return Terminal.run(spec, json, session -> Tracing.trace(session, book, code));
  }
}

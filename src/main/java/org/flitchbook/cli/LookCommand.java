package org.flitchbook.cli;

import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.flitchbook.desk.Desk;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code flitchbook look}. */
@Command(
    name = "look",
    description = "Says what is in a probe log, and proposes an entry for logs.json.",
    mixinStandardHelpOptions = true)
final class LookCommand implements Callable<Integer> {

  @Spec private CommandSpec spec;

  @Parameters(paramLabel = "FILE", description = "a log as the logger exported it")
  private Path file;

  @Option(names = "--json", description = "one JSON document instead of text")
  private boolean json;

  @Override
  public Integer call() {
    Told told = new Told(spec);
    return told.answer(new Desk(told.caller()).look(file), json);
  }
}

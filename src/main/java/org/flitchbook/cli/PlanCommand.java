package org.flitchbook.cli;

import java.nio.file.Path;
import org.flitchbook.planning.PlanCheck;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code flitchbook plan}. */
@Command(
    name = "plan",
    description = "Looks after the plan of a book.",
    mixinStandardHelpOptions = true)
final class PlanCommand implements Runnable {

  @Spec private CommandSpec spec;

  @Override
  public void run() {
    throw new ParameterException(
        spec.commandLine(), "Say what to do with the plan." + System.lineSeparator());
  }

  @Command(
      name = "check",
      description = "Reads the plan, lists every fault of it and every hazard that it leaves out.",
      mixinStandardHelpOptions = true)
  int check(@Parameters(paramLabel = "BOOK", description = "a book's folder") Path where) {
    return Terminal.run(spec, false, session -> PlanCheck.check(session, where));
  }
}

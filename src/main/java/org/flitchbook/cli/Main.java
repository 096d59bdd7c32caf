package org.flitchbook.cli;

import java.io.PrintStream;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** The program {@code flitchbook}: streams in, exit status out. */
@Command(
    name = "flitchbook",
    description = "Checks cured and smoked pork against its plan and prints the record.",
    mixinStandardHelpOptions = true,
    versionProvider = Version.class)
public final class Main implements Runnable {

  @Spec private CommandSpec spec;

  private Main() {}

  /** Runs the command line given and ends the Java machine with its exit status. */
  public static void main(String[] args) {
    System.exit(run(args, System.out, System.err));
  }

  /**
   * Runs the command line given.
   *
   * @param out takes what was asked for, in UTF-8
   * @param err takes what went wrong, in UTF-8
   * @return 0 when all is well, 2 for wrong use
   */
  static int run(String[] args, PrintStream out, PrintStream err) {
    return new CommandLine(new Main())
        .setOut(new PrintWriter(out, true, StandardCharsets.UTF_8))
        .setErr(new PrintWriter(err, true, StandardCharsets.UTF_8))
        .execute(args);
  }

  /** Refuses a command line that names no job. */
  @Override
  public void run() {
    throw new ParameterException(spec.commandLine(), "Say what to do." + System.lineSeparator());
  }
}

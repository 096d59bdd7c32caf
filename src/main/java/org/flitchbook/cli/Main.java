package org.flitchbook.cli;

import java.io.IOException;
import java.io.InputStream;
import java.io.PrintStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Objects;
import java.util.logging.Level;
import java.util.logging.Logger;
import org.flitchbook.job.ExitStatus;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Help;
import picocli.CommandLine.IVersionProvider;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** The program {@code flitchbook}: streams in, exit status out. */
@Command(
    name = "flitchbook",
    description = "Checks cured and smoked pork against its plan and prints the record.",
    mixinStandardHelpOptions = true,
    versionProvider = Main.Version.class,
    subcommands = {
      Commands.Check.class,
      Commands.Close.class,
      KeyCommand.class,
      Commands.LookAtLog.class,
      Commands.Plan.class,
      Commands.Prove.class,
      Commands.Sign.class,
      Commands.Trace.class
    },
    footer = {
      "",
      "Exit status:",
      "  0  all well, what is pending included",
      "  1  a limit not met or not shown, or something to explain; or a record was changed",
      "  2  wrong use",
      "  3  a file that can't be parsed; nothing was written"
    })
public final class Main implements Runnable {

  /** Held, so that the setting is not lost with the logger. */
  private static final Logger PDFBOX = Logger.getLogger("org.apache.pdfbox");

  /** As in sysexits.h; none of the statuses that a caller waits for. */
  private static final int PROGRAM_AT_FAULT = 70;

  @Spec private CommandSpec spec;

  private Main() {}

  /** Runs the command line given and ends the Java machine with its exit status. */
  public static void main(String[] args) {
    PDFBOX.setLevel(Level.OFF);
    System.exit(withinMemory(args));
  }

  /** Left to itself Java would end with the status of a lot amiss. */
  private static int withinMemory(String[] args) {
    try {
      return run(args, System.out, System.err);
    } catch (OutOfMemoryError full) {
      System.err.println(
          "flitchbook: these files need more memory; FLITCHBOOK_JAVA_OPTS=-Xmx2g gives 2 GB");
      return PROGRAM_AT_FAULT;
    }
  }

  /**
   * Runs the command line given.
   *
   * @param out takes what was asked for, in UTF-8
   * @param err takes what went wrong, in UTF-8
   * @return the exit status that the help lists
   */
  static int run(String[] args, PrintStream out, PrintStream err) {
    CommandLine line =
        new CommandLine(new Main())
            .setColorScheme(Help.defaultColorScheme(Help.Ansi.OFF))
            .setOut(new PrintableWriter(out))
            .setErr(new PrintableWriter(err));
    return line.setExitCodeExceptionMapper(Main::status).execute(args);
  }

  /** Words that the command line doesn't know are wrong use as well. */
  private static int status(Throwable fault) {
    return fault instanceof ParameterException ? ExitStatus.MISUSE.code() : PROGRAM_AT_FAULT;
  }

  @Override
  public void run() {
    throw new ParameterException(spec.commandLine(), "Say what to do." + System.lineSeparator());
  }

  /** The version that the build wrote into {@code version.txt}. */
  static final class Version implements IVersionProvider {

    @Override
    public String[] getVersion() {
      return new String[] {"flitchbook " + ofTheProgram()};
    }

    /** Such as {@code 0.2.0}. */
    static String ofTheProgram() {
      try (InputStream in =
          Objects.requireNonNull(Main.class.getResourceAsStream("version.txt"), "version.txt")) {
        return new String(in.readAllBytes(), StandardCharsets.UTF_8).strip();
      } catch (IOException unreadable) {
        throw new UncheckedIOException("version.txt can't be read", unreadable);
      }
    }
  }
}

package org.flitchbook.cli;

import static org.flitchbook.message.Message.say;

import java.io.BufferedReader;
import java.io.Console;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.PrintWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.flitchbook.input.Fault;
import org.flitchbook.job.ExitStatus;
import org.flitchbook.job.JobResult;
import org.flitchbook.job.Session;
import org.flitchbook.job.UsageException;
import org.flitchbook.json.Json;
import org.flitchbook.message.Message;
import picocli.CommandLine.Model.CommandSpec;

/** Does a job: its text or JSON goes to standard output, its faults go to standard error. */
final class Terminal {

  private static final int MOST_FAULTS = 200;

  private static final String ASKS = "flitchbook.asks";

  private final BufferedReader answers =
      new BufferedReader(new InputStreamReader(System.in, StandardCharsets.UTF_8));
  private final PrintWriter out;
  private final PrintableWriter err;

  private Terminal(CommandSpec spec) {
    this.out = spec.commandLine().getOut();
    this.err = (PrintableWriter) spec.commandLine().getErr();
  }

  static int run(CommandSpec spec, boolean json, Function<Session, JobResult> job) {
    Terminal terminal = new Terminal(spec);
    Session session =
        new Session(
            terminal::progress, Clock.systemUTC(), terminal::ask, Main.Version.ofTheProgram());
    try {
      return terminal.print(session, job.apply(session), json);
    } catch (UsageException refused) {
      terminal.progress("");
      terminal.err.print("flitchbook: " + session.lines(refused.messages()));
      terminal.err.print(session.lines(session.notes()));
      terminal.err.flush();
      return ExitStatus.MISUSE.code();
    }
  }

  private int print(Session session, JobResult result, boolean json) {
    List<Fault> faults = result.faults();
    List<Message> lines = new ArrayList<>();
    faults.stream().limit(MOST_FAULTS).map(Fault::message).forEach(lines::add);
    if (faults.size() > MOST_FAULTS) {
      lines.add(say("cli.more", "and {0} more", faults.size() - MOST_FAULTS));
    }
    if (result.status() == ExitStatus.BROKEN) {
      lines.add(say("cli.nothing-done", "Nothing was judged and nothing was written."));
    }
    err.print(session.lines(lines));
    err.print(session.lines(session.notes()));
    progress("");
    out.print(json ? Json.escaped(result.json()) : result.text());
    out.flush();
    err.flush();
    return result.status().code();
  }

  /**
   * Whether people sit before both streams. The launcher knows, or leaves it to Java, as that of
   * Windows does, which can't tell.
   */
  static boolean asks() {
    return Boolean.getBoolean(ASKS) || isConsole();
  }

  @SuppressWarnings("SystemConsoleNull")
  private static boolean isConsole() {
    return "console".equals(System.getProperty(ASKS)) && System.console() != null;
  }

  /** Nobody answers where nobody sits. What is typed into a console has the console's letters. */
  private Optional<String> ask(String question) {
    if (!asks()) {
      return Optional.empty();
    }
    progress("");
    err.print(question);
    err.flush();
    try {
      Console console = isConsole() ? System.console() : null;
      return Optional.ofNullable(console != null ? console.readLine() : answers.readLine());
    } catch (IOException unreadable) {
      throw new UncheckedIOException("the answer can't be read", unreadable);
    }
  }

  /** Says what is being done where people watch, which the launcher knows, and else nothing. */
  private void progress(String doing) {
    if (Boolean.getBoolean("flitchbook.terminal")) {
      err.startLineAgain();
      err.print(doing.isEmpty() ? "" : doing + " …");
      err.flush();
    }
  }
}

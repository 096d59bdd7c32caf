package org.flitchbook.cli;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.PrintWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.util.Optional;
import java.util.function.Consumer;
import org.flitchbook.desk.Answer;
import org.flitchbook.desk.Caller;
import org.flitchbook.desk.Status;
import org.flitchbook.input.Fault;
import picocli.CommandLine.Model.CommandSpec;

/** Tells an answer: its text or JSON to standard output, its faults to standard error. */
final class Told {

  private static final int MOST_FAULTS = 200;

  private final BufferedReader answers =
      new BufferedReader(new InputStreamReader(System.in, StandardCharsets.UTF_8));
  private final PrintWriter out;
  private final PrintWriter err;

  Told(CommandSpec spec) {
    this.out = spec.commandLine().getOut();
    this.err = spec.commandLine().getErr();
  }

  int answer(Answer answer, boolean json) {
    answer.faults().stream().limit(MOST_FAULTS).map(Fault::toString).forEach(err::println);
    if (answer.faults().size() > MOST_FAULTS) {
      err.println("and " + (answer.faults().size() - MOST_FAULTS) + " more");
    }
    if (answer.status() == Status.BROKEN) {
      err.println("Nothing was judged and nothing was written.");
    }
    progress().accept("");
    out.print(json ? answer.json() : answer.text());
    out.flush();
    err.flush();
    return answer.status().code();
  }

  /** What the desk may take from here. */
  Caller caller() {
    return new Caller(progress(), Clock.systemUTC(), this::ask, Version.ofTheProgram());
  }

  /** Asks where people sit before both streams, which the launcher knows; else nobody answers. */
  private Optional<String> ask(String question) {
    if (!Boolean.getBoolean("flitchbook.asks")) {
      return Optional.empty();
    }
    progress().accept("");
    err.print(question);
    err.flush();
    try {
      return Optional.ofNullable(answers.readLine());
    } catch (IOException unreadable) {
      throw new UncheckedIOException("the answer can't be read", unreadable);
    }
  }

  /** Says what is being done where people watch, which the launcher knows, and else nothing. */
  Consumer<String> progress() {
    return Boolean.getBoolean("flitchbook.terminal")
        ? doing -> {
          err.print("\r\033[K" + (doing.isEmpty() ? "" : doing + " …"));
          err.flush();
        }
        : doing -> {};
  }
}

package org.flitchbook.job;

import java.time.Clock;
import java.time.Instant;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Function;

/** One call for a job: what the job may take from its surroundings. */
public final class Session {

  private final Consumer<String> progress;
  private final Clock clock;
  private final Function<String, Optional<String>> ask;
  private final String tool;

  /**
   * A call of the program.
   *
   * @param progress is told what is being done, for long work on a terminal
   * @param clock tells the ledger when a line is written; nothing else asks it
   * @param ask puts a question to a person; empty where nobody is there to be asked
   * @param tool the version of the program
   */
  public Session(
      Consumer<String> progress, Clock clock, Function<String, Optional<String>> ask, String tool) {
    this.progress = progress;
    this.clock = clock;
    this.ask = ask;
    this.tool = tool;
  }

  public void progress(String doing) {
    progress.accept(doing);
  }

  public Optional<String> ask(String question) {
    return ask.apply(question);
  }

  public Instant now() {
    return Instant.now(clock);
  }

  /** The version of the program. */
  public String tool() {
    return tool;
  }
}

package org.flitchbook.desk;

import java.time.Clock;
import java.time.Instant;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Function;

/**
 * Who calls for a job: what the desk may take from its surroundings.
 *
 * @param progress is told what is being done, for long work on a terminal
 * @param clock tells the ledger when a line is written; nothing else asks it
 * @param ask puts a question to a person; empty where nobody is there to be asked
 * @param tool the version of the program
 */
public record Caller(
    Consumer<String> progress, Clock clock, Function<String, Optional<String>> ask, String tool) {

  Instant now() {
    return Instant.now(clock);
  }
}

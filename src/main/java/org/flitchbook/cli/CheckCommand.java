package org.flitchbook.cli;

import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.flitchbook.judging.Judging;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code flitchbook check}. */
@Command(
    name = "check",
    description = "Judges a day's lots, or all lots of a book at its last day. Writes nothing.",
    mixinStandardHelpOptions = true)
final class CheckCommand implements Callable<Integer> {

  @Spec private CommandSpec spec;

  @Parameters(
      paramLabel = "DAY|BOOK",
      description = "a day's folder, such as demo-data/wrenfold/2026-02-24, or a book's")
  private Path where;

  @Option(names = "--json", description = "one JSON document instead of text")
  private boolean json;

  @Option(
      names = "--at",
      paramLabel = "TIME",
      description = "the moment judged, such as 2026-02-24T18:00; else the day's end")
  private @Nullable String at;

  @Override
  public Integer call() {
    return Terminal.run(
        spec, json, session -> Judging.check(session, where, Optional.ofNullable(at)));
  }
}

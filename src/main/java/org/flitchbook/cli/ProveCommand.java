package org.flitchbook.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.flitchbook.job.JobResult;
import org.flitchbook.job.Session;
import org.flitchbook.proving.ProveRequest;
import org.flitchbook.proving.Proving;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code flitchbook prove}. */
@Command(
    name = "prove",
    description =
        "Proves a record, also far from its book, or a book: its signatures, what was changed, and"
            + " the verdicts judged again. Writes nothing.",
    mixinStandardHelpOptions = true)
final class ProveCommand extends JobCommand {

  @Parameters(paramLabel = "FILE|BOOK", description = "a record, as PDF, or a book's folder")
  private Path what;

  @Option(
      names = "--plan",
      paramLabel = "PLAN",
      description = "the plan.json whose keys count; else that of the book it lies in")
  private @Nullable Path plan;

  @Option(
      names = "--fingerprint",
      paramLabel = "SHA-256",
      description = "a key that must have signed; may be given again")
  private @Nullable List<String> fingerprints;

  @Option(names = "--json", description = "one JSON document instead of text")
  private boolean json;

  @Override
  boolean isJson() {
    return json;
  }

  @Override
  JobResult run(Session session) {
    List<String> prints = fingerprints == null ? List.of() : fingerprints;
    return Proving.prove(session, new ProveRequest(what, Optional.ofNullable(plan), prints));
  }
}

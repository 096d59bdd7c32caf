package org.flitchbook.cli;

import java.nio.file.Path;
import java.util.Optional;
import org.flitchbook.job.JobResult;
import org.flitchbook.job.Session;
import org.flitchbook.signing.RecordSigning;
import org.flitchbook.signing.SignRequest;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code flitchbook sign}. */
@Command(
    name = "sign",
    description = "Signs a record as its maker or as a reviewer, with the person's key.",
    mixinStandardHelpOptions = true)
final class SignCommand extends JobCommand {

  @Parameters(paramLabel = "FILE", description = "the record, as PDF")
  private Path file;

  @Option(
      names = "--as",
      required = true,
      paramLabel = "INITIALS",
      description = "who signs, by the initials in the plan")
  private String initials;

  @Option(
      names = "--role",
      paramLabel = "ROLE",
      description = "maker or reviewer; else the one that is open to the person")
  private @Nullable String role;

  @Option(
      names = "--reason",
      paramLabel = "TEXT",
      description = "what the person adds, at most 60 characters")
  private @Nullable String reason;

  @Option(
      names = "--book",
      paramLabel = "BOOK",
      description = "whose plan counts; else the one that the record lies in or carries")
  private @Nullable Path book;

  @Option(
      names = "--without-timestamp",
      description = "don't ask the time stamp server that the plan names")
  private boolean unstamped;

  @Mixin private KeysOption keys;

  @Mixin private PassphraseOptions passphrase;

  @Override
  JobResult run(Session session) {
    return RecordSigning.sign(session, request(), passphrase);
  }

  private SignRequest request() {
    return new SignRequest(
        file,
        initials,
        Optional.ofNullable(role),
        Optional.ofNullable(reason),
        keys.folder(),
        Optional.ofNullable(book),
        !unstamped);
  }
}

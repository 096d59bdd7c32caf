package org.flitchbook.signing;

import java.nio.file.Path;
import java.util.Optional;
import org.flitchbook.archive.SignerRole;
import org.flitchbook.job.UsageException;

/**
 * How a record is to be signed.
 *
 * @param file the record, as PDF
 * @param initials who signs
 * @param role "maker" or "reviewer"; empty: the one that is open to the person
 * @param reason what the person adds; empty where nothing
 * @param keys the folder of the keys
 * @param book whose plan knows the person; empty: the one that the record lies in, else the plan
 *     that the record carries
 * @param stamped whether a time stamp is wanted where the plan names a server
 */
public record SignRequest(
    Path file,
    String initials,
    Optional<String> role,
    Optional<String> reason,
    Path keys,
    Optional<Path> book,
    boolean stamped) {

  /** It must stand in its box with all the rest. */
  private static final int LONGEST_REASON = 60;

  public SignRequest {
    role.filter(
            word ->
                !word.equals(SignerRole.MAKER.word()) && !word.equals(SignerRole.REVIEWER.word()))
        .ifPresent(
            word -> {
              throw new UsageException(
                  "signing.no-role", "--role \"{0}\" is neither maker nor reviewer", word);
            });
    reason
        .filter(SignRequest::isUnfit)
        .ifPresent(
            text -> {
              throw new UsageException(
                  "signing.long-reason",
                  "a reason stands on one line of at most {0} characters",
                  LONGEST_REASON);
            });
  }

  private static boolean isUnfit(String reason) {
    return reason.length() > LONGEST_REASON || reason.chars().anyMatch(Character::isISOControl);
  }
}

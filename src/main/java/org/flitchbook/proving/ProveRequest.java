package org.flitchbook.proving;

import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.flitchbook.job.UsageException;

/**
 * What is to be proved, and against which keys.
 *
 * @param what a record, as PDF, or a book's folder
 * @param plan the plan, or the folder of the book, whose keys count; empty: those of the book that
 *     the record lies in
 * @param fingerprints of keys that must have signed; in hexadecimal
 */
public record ProveRequest(Path what, Optional<Path> plan, List<String> fingerprints) {
  public ProveRequest {
    fingerprints = fingerprints.stream().map(ProveRequest::digits).toList();
  }

  private static String digits(String fingerprint) {
    String digits = fingerprint.replaceAll("[: ]", "").toLowerCase(Locale.ROOT);
    if (!digits.matches("[0-9a-f]{64}")) {
      throw new UsageException(
          "proving.fingerprint", "--fingerprint {0} is not 64 hexadecimal digits", fingerprint);
    }
    return digits;
  }
}

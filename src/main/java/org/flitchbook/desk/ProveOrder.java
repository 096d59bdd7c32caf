package org.flitchbook.desk;

import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * What is to be proved, and against which keys.
 *
 * @param what a record, as PDF, or a book's folder
 * @param plan the plan, or the folder of the book, whose keys count; empty: those of the book that
 *     the record lies in
 * @param fingerprints of keys that must have signed; in hexadecimal
 */
public record ProveOrder(Path what, Optional<Path> plan, List<String> fingerprints) {
  public ProveOrder {
    fingerprints = fingerprints.stream().map(ProveOrder::digits).toList();
  }

  private static String digits(String fingerprint) {
    String digits = fingerprint.replaceAll("[: ]", "").toLowerCase(Locale.ROOT);
    if (!digits.matches("[0-9a-f]{64}")) {
      throw new Misuse("--fingerprint " + fingerprint + " is not 64 hexadecimal digits");
    }
    return digits;
  }
}

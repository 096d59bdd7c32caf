package org.flitchbook.sign;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.flitchbook.message.Message;

/**
 * What a signature shows.
 *
 * @param signer whose certificate signed; empty where the signature can't be read
 * @param faults why it is not valid; empty where it is
 * @param timestamp what a time stamp server confirmed, where the signature carries its answer
 */
public record Verification(
    Optional<CertificateInfo> signer, List<Message> faults, Optional<Timestamp> timestamp) {
  public Verification {
    faults = List.copyOf(faults);
  }

  /** A time stamp server's word that the signature was there at a time (RFC 3161). */
  public record Timestamp(Instant time, CertificateInfo server) {}

  public boolean isValid() {
    return faults.isEmpty();
  }
}

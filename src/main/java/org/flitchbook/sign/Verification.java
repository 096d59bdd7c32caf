package org.flitchbook.sign;

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

  static Verification broken(Message fault) {
    return new Verification(Optional.empty(), List.of(fault), Optional.empty());
  }

  public boolean isValid() {
    return faults.isEmpty();
  }
}

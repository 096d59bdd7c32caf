package org.flitchbook.sign;

import java.util.List;
import java.util.Optional;

/**
 * What a signature shows.
 *
 * @param signer whose certificate signed; empty where the signature can't be read
 * @param faults why it is not valid, in words; empty where it is
 * @param stamp what a time stamp server confirmed, where the signature carries its answer
 */
public record Seal(Optional<Card> signer, List<String> faults, Optional<Stamp> stamp) {
  public Seal {
    faults = List.copyOf(faults);
  }

  static Seal broken(String fault) {
    return new Seal(Optional.empty(), List.of(fault), Optional.empty());
  }

  public boolean isValid() {
    return faults.isEmpty();
  }
}

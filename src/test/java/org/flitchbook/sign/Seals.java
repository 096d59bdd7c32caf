package org.flitchbook.sign;

import java.time.Instant;

/** Keys of the Wrenfold Smokeyard's people, for tests that need true signatures. */
public final class Seals {

  private Seals() {}

  /** A new key of Maud Achterberg. */
  public static SigningKey maud() {
    return key(new KeyHolder("MA", "Maud Achterberg", "Wrenfold Smokeyard"));
  }

  /** A new key of Ismet Quill. */
  public static SigningKey ismet() {
    return key(new KeyHolder("IQ", "Ismet Quill", "Wrenfold Smokeyard"));
  }

  private static SigningKey key(KeyHolder holder) {
    return Signing.newKey(holder, KeyAlgorithm.EC_P256, Instant.parse("2026-01-05T08:00:00Z"));
  }
}

package org.flitchbook.sign;

import java.util.Optional;

/**
 * What came of opening a key file.
 *
 * @param why in words why there is no key; empty where there is one
 */
public record Opened(Optional<SigningKey> key, String why) {

  static Opened of(SigningKey key) {
    return new Opened(Optional.of(key), "");
  }

  static Opened refused(String why) {
    return new Opened(Optional.empty(), why);
  }
}

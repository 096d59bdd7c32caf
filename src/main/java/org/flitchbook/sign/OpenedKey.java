package org.flitchbook.sign;

import java.util.Optional;

/**
 * What came of opening a key file.
 *
 * @param why in words why there is no key; empty where there is one
 */
public record OpenedKey(Optional<SigningKey> key, String why) {

  static OpenedKey of(SigningKey key) {
    return new OpenedKey(Optional.of(key), "");
  }

  static OpenedKey refused(String why) {
    return new OpenedKey(Optional.empty(), why);
  }
}

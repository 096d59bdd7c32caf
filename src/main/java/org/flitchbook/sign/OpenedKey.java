package org.flitchbook.sign;

import java.util.Optional;
import org.flitchbook.message.Message;

/**
 * What came of opening a key file.
 *
 * @param why there is no key; empty where there is one
 */
public record OpenedKey(Optional<SigningKey> key, Optional<Message> why) {

  static OpenedKey of(SigningKey key) {
    return new OpenedKey(Optional.of(key), Optional.empty());
  }

  static OpenedKey refused(Message why) {
    return new OpenedKey(Optional.empty(), Optional.of(why));
  }
}

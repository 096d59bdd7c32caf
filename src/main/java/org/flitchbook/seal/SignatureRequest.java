package org.flitchbook.seal;

import java.time.ZonedDateTime;
import java.util.List;
import org.flitchbook.words.Words;

/**
 * What a signature is to show and state.
 *
 * @param field the field to sign in
 * @param lines shown in the field, the first one strong; long ones are broken
 * @param words the wording of the print's language
 * @param name of the signer
 * @param reason for signing
 * @param time stated as the time of signing, with its offset
 * @param certifies whether it is the first one, after which only fields may be filled and signed
 * @param room for the seal, in bytes
 */
public record SignatureRequest(
    String field,
    List<String> lines,
    Words words,
    String name,
    String reason,
    ZonedDateTime time,
    boolean certifies,
    int room) {
  public SignatureRequest {
    lines = List.copyOf(lines);
    if (lines.isEmpty() || room <= 0) {
      throw new IllegalArgumentException("a signature shows something and has room for its seal");
    }
  }
}

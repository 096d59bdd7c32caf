package org.flitchbook.input;

import java.nio.ByteBuffer;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/**
 * A file as it was handed in: a folder's files and a record's attachments are read alike.
 *
 * @param name within the book, such as {@code 2026-02-24/cure.csv}
 */
public record SourceFile(String name, ByteBuffer content) {

  public SourceFile {
    content = content.asReadOnlyBuffer();
  }

  public static SourceFile of(String name, byte[] bytes) {
    return new SourceFile(name, ByteBuffer.wrap(bytes.clone()));
  }

  public byte[] bytes() {
    byte[] bytes = new byte[content.remaining()];
    content.duplicate().get(bytes);
    return bytes;
  }

  /** The name without its folder. */
  public String baseName() {
    return name.substring(name.lastIndexOf('/') + 1);
  }

  /** Lower-case hexadecimal. */
  public String sha256() {
    try {
      MessageDigest digest = MessageDigest.getInstance("SHA-256");
      digest.update(content.duplicate());
      return HexFormat.of().formatHex(digest.digest());
    } catch (NoSuchAlgorithmException missing) {
      throw new AssertionError("every Java platform has SHA-256", missing);
    }
  }
}

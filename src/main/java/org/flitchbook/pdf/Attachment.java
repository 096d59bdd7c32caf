package org.flitchbook.pdf;

import java.nio.ByteBuffer;
import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/**
 * A file that a print carries.
 *
 * @param name unlike any other in the print, without a folder, so that every reader can write it
 *     into one; not blank
 * @param description what it is, in words, not blank
 */
public record Attachment(String name, String description, Relation relation, ByteBuffer content) {

  /** How a carried file relates to the print (AFRelationship of ISO 32000-2, 7.11.3). */
  public enum Relation {
    /** What the print was made from. */
    SOURCE("Source"),
    /** What the print shows, for programs. */
    DATA("Data");

    final String word;

    Relation(String word) {
      this.word = word;
    }

    /** The relationship of that name in a file, or empty. */
    public static Optional<Relation> parse(String word) {
      return Arrays.stream(values()).filter(each -> each.word.equals(word)).findFirst();
    }
  }

  public Attachment {
    if (name.isBlank() || name.contains("/") || description.isBlank()) {
      throw new IllegalArgumentException(
          "an attachment \"" + name + "\", described as \"" + description + "\"");
    }
    content = content.asReadOnlyBuffer();
  }

  /** The content, copied. */
  public byte[] bytes() {
    return ByteBuffer.allocate(content.remaining()).put(content.duplicate()).array();
  }

  /** By the ending of its name, since nothing else is known of it. */
  String mediaType() {
    String lower = name.toLowerCase(Locale.ROOT);
    if (lower.endsWith(".csv")) {
      return "text/csv";
    }
    return lower.endsWith(".json") ? "application/json" : "application/octet-stream";
  }
}

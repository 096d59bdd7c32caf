package org.flitchbook.ledger;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.util.HexFormat;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;

/**
 * Writes JSON in the one form that RFC 8785 (JSON Canonicalization Scheme) allows: members in the
 * order of their keys' UTF-16 code units, no white space, the shortest escapes, UTF-8. Of JSON's
 * values only texts, whole numbers up to 2^53 − 1 and objects are written, so that the rules of the
 * standard about fractions are never needed.
 */
final class CanonicalJson {

  /** The largest whole number that every reader of JSON reads exactly (RFC 8785, appendix D). */
  static final long LARGEST = (1L << 53) - 1;

  private static final char FIRST_PRINTABLE = ' ';

  private CanonicalJson() {}

  /**
   * The canonical form, without a line end.
   *
   * @throws IllegalArgumentException for half of a surrogate pair, or a value of another kind
   */
  static String text(Map<String, ?> object) {
    String json = written(object);
    if (!UTF_8.newEncoder().canEncode(json)) {
      throw new IllegalArgumentException("half of a surrogate pair is no text");
    }
    return json;
  }

  private static String written(Object value) {
    if (value instanceof String text) {
      return text.chars()
          .mapToObj(letter -> escaped((char) letter))
          .collect(Collectors.joining("", "\"", "\""));
    }
    if (value instanceof Long number && Math.abs(number) <= LARGEST) {
      return number.toString();
    }
    if (value instanceof Map<?, ?> object) {
      return new TreeMap<>(object)
          .entrySet().stream()
              .map(member -> written(member.getKey()) + ":" + written(member.getValue()))
              .collect(Collectors.joining(",", "{", "}"));
    }
    throw new IllegalArgumentException(value + " is no text, whole number or object");
  }

  private static String escaped(char letter) {
    return switch (letter) {
      case '"', '\\' -> "\\" + letter;
      case '\b' -> "\\b";
      case '\t' -> "\\t";
      case '\n' -> "\\n";
      case '\f' -> "\\f";
      case '\r' -> "\\r";
      default ->
          letter < FIRST_PRINTABLE
              ? "\\u" + HexFormat.of().toHexDigits(letter)
              : String.valueOf(letter);
    };
  }
}

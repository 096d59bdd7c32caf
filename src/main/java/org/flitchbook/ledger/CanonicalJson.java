package org.flitchbook.ledger;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.util.HexFormat;
import java.util.Iterator;
import java.util.Map;
import java.util.TreeMap;

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
    StringBuilder json = new StringBuilder();
    write(json, object);
    if (!UTF_8.newEncoder().canEncode(json)) {
      throw new IllegalArgumentException("half of a surrogate pair is no text");
    }
    return json.toString();
  }

  private static void write(StringBuilder json, Object value) {
    if (value instanceof String text) {
      text(json, text);
    } else if (value instanceof Long number && Math.abs(number) <= LARGEST) {
      json.append(number.longValue());
    } else if (value instanceof Map<?, ?> object) {
      object(json, object);
    } else {
      throw new IllegalArgumentException(value + " is no text, whole number or object");
    }
  }

  private static void object(StringBuilder json, Map<?, ?> object) {
    json.append('{');
    Iterator<? extends Map.Entry<?, ?>> members = new TreeMap<>(object).entrySet().iterator();
    while (members.hasNext()) {
      Map.Entry<?, ?> member = members.next();
      text(json, (String) member.getKey());
      json.append(':');
      write(json, member.getValue());
      json.append(members.hasNext() ? "," : "");
    }
    json.append('}');
  }

  private static void text(StringBuilder json, String text) {
    json.append('"');
    text.chars().forEach(letter -> letter(json, (char) letter));
    json.append('"');
  }

  private static void letter(StringBuilder json, char letter) {
    switch (letter) {
      case '"', '\\' -> json.append('\\').append(letter);
      case '\b' -> json.append("\\b");
      case '\t' -> json.append("\\t");
      case '\n' -> json.append("\\n");
      case '\f' -> json.append("\\f");
      case '\r' -> json.append("\\r");
      default ->
          json.append(
              letter < FIRST_PRINTABLE
                  ? "\\u" + HexFormat.of().toHexDigits(letter)
                  : String.valueOf(letter));
    }
  }
}

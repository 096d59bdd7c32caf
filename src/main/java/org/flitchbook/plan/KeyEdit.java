package org.flitchbook.plan;

import static java.nio.charset.StandardCharsets.ISO_8859_1;

import java.time.LocalDate;
import java.util.Map;
import org.flitchbook.json.Json;
import org.flitchbook.json.Node;

/**
 * Enters a key in the text of a plan and retires one; every other byte stays as it was.
 *
 * @param text with a letter for each byte, since values are found by their bytes
 * @param person where somebody stands in it, such as {@code people[0]}
 */
record KeyEdit(String text, Map<String, Json.Span> spans, String person) {

  private KeyEdit(byte[] plan, String person) {
    this(new String(plan, ISO_8859_1), Json.spans(plan), person);
  }

  /**
   * @throws IllegalArgumentException where the plan has nobody of these initials
   */
  static KeyEdit of(byte[] plan, String initials) {
    Node.Obj root = Json.read("", plan).object().orElseThrow();
    return root.objects("people").stream()
        .filter(each -> each.text("initials").filter(initials::equals).isPresent())
        .findFirst()
        .map(each -> new KeyEdit(plan, each.place().column()))
        .orElseThrow(
            () -> new IllegalArgumentException("nobody in the plan has the initials " + initials));
  }

  byte[] enter(String fingerprint) {
    return behindLast(person, "\"key\": \"" + fingerprint + "\"");
  }

  /** The key in use becomes one with a last day. */
  byte[] retire(String fingerprint, LocalDate until) {
    String entry = "{\"fingerprint\": \"" + fingerprint + "\", \"until\": \"" + until + "\"}";
    Json.Span key = span(person + ".key");
    return spans.containsKey(person + ".keys")
        ? new KeyEdit(behindLast(person + ".keys", entry), person).withoutKey()
        : spliced(key.name(), key.to(), "\"keys\": [" + entry + "]");
  }

  private byte[] withoutKey() {
    Json.Span key = span(person + ".key");
    int behind = skipBack(key.name());
    return text.charAt(behind - 1) == ','
        ? spliced(behind - 1, key.to(), "")
        : spliced(key.name(), text.indexOf(',', key.to()) + 1, "");
  }

  /** Adds a member or an item at the end of an object or a list, set off as the last one is. */
  private byte[] behindLast(String path, String added) {
    Json.Span whole = span(path);
    int end = skipBack(whole.to() - 1);
    boolean first = end == whole.from() + 1;
    return spliced(end, end, first ? added : "," + before(path) + added);
  }

  /** The white space before the last child of an object or a list; one space if it has none. */
  private String before(String path) {
    int last =
        spans.entrySet().stream()
            .filter(each -> isChild(path, each.getKey()))
            .mapToInt(each -> each.getValue().name())
            .max()
            .orElseThrow();
    int from = skipBack(last);
    return from == last ? " " : text.substring(from, last);
  }

  private static boolean isChild(String path, String other) {
    return other.startsWith(path) && other.substring(path.length()).matches("\\.[^.\\[]+|\\[\\d+]");
  }

  private Json.Span span(String path) {
    Json.Span span = spans.get(path);
    if (span == null) {
      throw new IllegalArgumentException("the plan has no " + path);
    }
    return span;
  }

  /** The place behind the last letter before {@code at} that is no white space. */
  private int skipBack(int at) {
    return text.substring(0, at).stripTrailing().length();
  }

  private byte[] spliced(int from, int to, String inserted) {
    return (text.substring(0, from) + inserted + text.substring(to)).getBytes(ISO_8859_1);
  }
}

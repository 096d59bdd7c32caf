package org.flitchbook.plan;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.Map;
import org.flitchbook.input.SourceFile;
import org.flitchbook.json.Json;
import org.flitchbook.json.Node;
import org.flitchbook.json.Span;

/** Enters a key in the text of a plan and retires one; every other byte stays as it was. */
final class KeyEdit {

  private final byte[] text;
  private final Map<String, Span> spans;
  private final String person;

  /**
   * @throws IllegalArgumentException where the plan has nobody of these initials
   */
  KeyEdit(SourceFile plan, String initials) {
    this.text = plan.bytes();
    this.spans = Json.spans(text);
    this.person = path(plan, initials);
  }

  private static String path(SourceFile plan, String initials) {
    Node.Obj root = Json.read(plan.name(), plan.bytes()).object().orElseThrow();
    if (root.members().get("people") instanceof Node.Items people) {
      for (Node each : people.items()) {
        if (each instanceof Node.Obj one
            && one.members().get("initials") instanceof Node.Text text
            && text.value().equals(initials)) {
          return each.place().column();
        }
      }
    }
    throw new IllegalArgumentException("nobody in the plan has the initials " + initials);
  }

  byte[] enter(String fingerprint) {
    return behindLast(person, "\"key\": \"" + fingerprint + "\"");
  }

  /** The key in use becomes one with a last day. */
  byte[] retire(String fingerprint, LocalDate until) {
    String entry = "{\"fingerprint\": \"" + fingerprint + "\", \"until\": \"" + until + "\"}";
    Span key = span(person + ".key");
    if (!spans.containsKey(person + ".keys")) {
      return spliced(key.name(), key.to(), "\"keys\": [" + entry + "]");
    }
    byte[] listed = behindLast(person + ".keys", entry);
    return new KeyEdit(listed, Json.spans(listed), person).withoutKey();
  }

  private KeyEdit(byte[] text, Map<String, Span> spans, String person) {
    this.text = text;
    this.spans = spans;
    this.person = person;
  }

  private byte[] withoutKey() {
    Span key = span(person + ".key");
    int behind = skipBack(key.name());
    return text[behind - 1] == ','
        ? spliced(behind - 1, key.to(), "")
        : spliced(key.name(), skip(key.to()) + 1, "");
  }

  /** Adds a member or an item at the end of an object or a list, set off as the last one is. */
  private byte[] behindLast(String path, String added) {
    Span whole = span(path);
    int end = skipBack(whole.to() - 1);
    if (end == whole.from() + 1) {
      return spliced(end, end, added);
    }
    return spliced(end, end, "," + before(path) + added);
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
    return from == last ? " " : new String(text, from, last - from, UTF_8);
  }

  private static boolean isChild(String path, String other) {
    return other.startsWith(path) && other.substring(path.length()).matches("\\.[^.\\[]+|\\[\\d+]");
  }

  private Span span(String path) {
    Span span = spans.get(path);
    if (span == null) {
      throw new IllegalArgumentException("the plan has no " + path);
    }
    return span;
  }

  /** The place behind the last byte before {@code at} that is no white space. */
  private int skipBack(int at) {
    int place = at;
    while (isBlank(text[place - 1])) {
      place--;
    }
    return place;
  }

  private int skip(int at) {
    int place = at;
    while (isBlank(text[place])) {
      place++;
    }
    return place;
  }

  private static boolean isBlank(byte letter) {
    return letter == ' ' || letter == '\n' || letter == '\r' || letter == '\t';
  }

  private byte[] spliced(int from, int to, String inserted) {
    byte[] middle = inserted.getBytes(UTF_8);
    byte[] edited = Arrays.copyOf(text, text.length - (to - from) + middle.length);
    System.arraycopy(middle, 0, edited, from, middle.length);
    System.arraycopy(text, to, edited, from + middle.length, text.length - to);
    return edited;
  }
}

package org.flitchbook.document;

import java.text.Normalizer;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** Text in spans of one style each; may be empty. A line feed in a span breaks the line. */
public record Text(List<Span> spans) {
  public Text {
    spans = List.copyOf(spans);
  }

  /** Plain text. */
  public static Text of(String text) {
    return single(text, Style.PLAIN);
  }

  /** Text of several spans, joined as they stand. */
  public static Text of(Span... spans) {
    return new Text(Arrays.asList(spans));
  }

  /** Text set strong. */
  public static Text strong(String text) {
    return single(text, Style.STRONG);
  }

  /** Text set muted. */
  public static Text muted(String text) {
    return single(text, Style.MUTED);
  }

  /** Plain text that leads somewhere. */
  public static Text leading(String text, Target target) {
    return new Text(List.of(new Span(text, Style.PLAIN, Optional.of(target))));
  }

  private static Text single(String text, Style style) {
    return new Text(text.isEmpty() ? List.of() : List.of(new Span(text, style)));
  }

  /** The words alone. */
  public String plain() {
    return spans.stream().map(Span::text).collect(Collectors.joining());
  }

  /**
   * A string that is safe to print: composed (NFC), tabs and carriage returns as spaces, and
   * without control characters, soft hyphens and marks that turn the direction of writing. Line
   * feeds stay.
   */
  public static String printable(String text) {
    if (isAscii(text)) {
      return text;
    }
    StringBuilder kept = new StringBuilder(text.length());
    Normalizer.normalize(text, Normalizer.Form.NFC).codePoints().forEach(c -> keep(c, kept));
    return kept.toString();
  }

  private static boolean isAscii(String text) {
    return text.chars().allMatch(c -> c == '\n' || (c >= ' ' && c < 0x7f));
  }

  private static void keep(int c, StringBuilder kept) {
    if (c == '\n') {
      kept.append('\n');
    } else if (c == '\t' || c == '\r' || Character.getType(c) == Character.LINE_SEPARATOR) {
      kept.append(' ');
    } else if (!Character.isISOControl(c) && Character.getType(c) != Character.FORMAT) {
      kept.appendCodePoint(c);
    }
  }
}

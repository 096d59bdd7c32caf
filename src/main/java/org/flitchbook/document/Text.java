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

  /**
   * A piece of text in one style.
   *
   * @param target where it leads, if anywhere
   */
  public record Span(String text, Style style, Optional<Target> target) {

    /** A span that leads nowhere. */
    public Span(String text, Style style) {
      this(text, style, Optional.empty());
    }

    /** The same look and target with other words. */
    public Span saying(String words) {
      return new Span(words, style, target);
    }
  }

  /** How a span is set. */
  public enum Style {
    PLAIN,
    STRONG,
    MUTED,
    STRUCK
  }

  /** Where a reader is led who follows a piece of text. On paper it changes nothing. */
  public sealed interface Target {

    /** The target's name, for a reader who can't see where the link stands. */
    String words();

    /**
     * A section of the same document.
     *
     * @param heading the text of its heading; the first one where several agree, and where there is
     *     none, the text leads nowhere
     */
    record Section(String heading) implements Target {
      public Section {
        Require.notBlank("heading of a section", heading);
      }

      @Override
      public String words() {
        return heading;
      }
    }

    /**
     * A file beside the printed one.
     *
     * @param name without a folder
     */
    record File(String name) implements Target {
      public File {
        Require.notBlank("name of a file", name);
        if (name.contains("/") || name.contains("\\")) {
          throw new IllegalArgumentException("a file in another folder: " + name);
        }
      }

      @Override
      public String words() {
        return name;
      }
    }
  }
}

package org.flitchbook.document;

import java.text.Normalizer;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** Text in spans of one style each; may be empty. A line feed in a span breaks the line. */
public record Text(List<Span> spans) {
  private static final Pattern BLANK = Pattern.compile("[\\t\\r\\p{Zl}\\p{Zp}]");
  private static final Pattern UNSEEN = Pattern.compile("[\\p{Cc}\\p{Cf}&&[^\\n]]");

  public Text {
    spans = List.copyOf(spans);
  }

  public static Text of(String text) {
    return single(text, Style.PLAIN);
  }

  /** Text of several spans, joined as they stand. */
  public static Text of(Span... spans) {
    return new Text(Arrays.asList(spans));
  }

  public static Text strong(String text) {
    return single(text, Style.STRONG);
  }

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

  public String plain() {
    return spans.stream().map(Span::text).collect(Collectors.joining());
  }

  /**
   * A string that is safe to print: composed (NFC), tabs and carriage returns as spaces, and
   * without control characters, soft hyphens and marks that turn the direction of writing. Line
   * feeds stay.
   */
  public static String printable(String text) {
    if (text.chars().allMatch(c -> c == '\n' || (c >= ' ' && c < 0x7f))) {
      return text;
    }
    String composed = Normalizer.normalize(text, Normalizer.Form.NFC);
    return UNSEEN.matcher(BLANK.matcher(composed).replaceAll(" ")).replaceAll("");
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
     * @param words the text of its heading; the first one where several agree, and where there is
     *     none, the text leads nowhere
     */
    record Section(String words) implements Target {
      public Section {
        Require.notBlank("heading of a section", words);
      }
    }

    /**
     * A file beside the printed one.
     *
     * @param words its name, without a folder
     */
    record File(String words) implements Target {
      public File {
        Require.notBlank("name of a file", words);
        if (words.contains("/") || words.contains("\\")) {
          throw new IllegalArgumentException("a file in another folder: " + words);
        }
      }
    }
  }
}

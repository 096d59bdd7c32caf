package org.flitchbook.message;

import java.util.List;
import java.util.function.BinaryOperator;
import java.util.stream.Collectors;

/** Several values in a row. */
public record Listing(List<Object> parts, Join join) implements Argument {

  /** What stands between the parts. */
  public enum Join {
    /** {@code a and b and c}. */
    AND,
    /** {@code a, b or c}. */
    OR,
    /** {@code a, b, c}. */
    COMMA,
    /** {@code a; b; c}. */
    SEMICOLON
  }

  public Listing {
    parts = List.copyOf(parts);
    parts.forEach(Message::requireArgument);
  }

  public static Listing and(List<?> parts) {
    return new Listing(List.copyOf(parts), Join.AND);
  }

  public static Listing or(List<?> parts) {
    return new Listing(List.copyOf(parts), Join.OR);
  }

  public static Listing commas(List<?> parts) {
    return new Listing(List.copyOf(parts), Join.COMMA);
  }

  public static Listing semicolons(List<?> parts) {
    return new Listing(List.copyOf(parts), Join.SEMICOLON);
  }

  @Override
  public String in(Language language) {
    List<String> shown = parts.stream().map(part -> Message.shown(part, language)).toList();
    return switch (join) {
      case AND -> shown.stream().reduce(joined(language, "words.and", "{0} and {1}")).orElse("");
      case OR -> or(shown, language);
      case COMMA -> String.join(", ", shown);
      case SEMICOLON -> String.join("; ", shown);
    };
  }

  private static String or(List<String> shown, Language language) {
    if (shown.size() < 2) {
      return String.join("", shown);
    }
    int last = shown.size() - 1;
    return joined(language, "words.or", "{0} or {1}")
        .apply(shown.subList(0, last).stream().collect(Collectors.joining(", ")), shown.get(last));
  }

  private static BinaryOperator<String> joined(Language language, String id, String english) {
    return (before, after) -> Message.say(id, english, before, after).in(language);
  }

  @Override
  public Object json() {
    return parts.stream().map(Message::json).toList();
  }
}

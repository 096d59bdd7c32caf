package org.flitchbook.message;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.TreeSet;
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

  /** Days in order; those that follow each other as {@code 2026-02-18 to 2026-02-20}. */
  public static Listing days(Collection<LocalDate> days) {
    List<Object> spans = new ArrayList<>();
    LocalDate first = LocalDate.MIN;
    LocalDate last = LocalDate.MIN;
    for (LocalDate day : new TreeSet<>(days)) {
      boolean follows = last.plusDays(1).equals(day);
      first = follows ? first : day;
      last = day;
      if (follows) {
        spans.remove(spans.size() - 1);
      }
      spans.add(follows ? Message.say("words.days", "{0} to {1}", first, last) : day);
    }
    return commas(spans);
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

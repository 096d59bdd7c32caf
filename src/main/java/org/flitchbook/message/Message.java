package org.flitchbook.message;

import java.nio.file.Path;
import java.time.ZoneId;
import java.time.temporal.Temporal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Something that is said. It stays a value until it is printed, so that a language can be chosen,
 * and two messages can be compared without looking at their wording.
 *
 * @param id stable: languages and old records name it
 * @param english the text, with the places {@code {0}}, {@code {1}} … for the arguments, in any
 *     order and as often as it needs them
 * @param arguments each a text that is a name or was read, a number, a date, zone or path, or an
 *     {@link Argument}
 */
public record Message(String id, String english, List<Object> arguments) implements Argument {

  /** A place for an argument. */
  public static final Pattern PLACE = Pattern.compile("\\{(\\d)}");

  private static final Pattern LINE_END = Pattern.compile("\\R");

  public Message {
    arguments = List.copyOf(arguments);
    arguments.forEach(Message::requireArgument);
  }

  static void requireArgument(Object argument) {
    if (!(argument instanceof String
        || argument instanceof Number
        || argument instanceof Temporal
        || argument instanceof ZoneId
        || argument instanceof Path
        || argument instanceof Argument)) {
      throw new IllegalArgumentException(argument.getClass() + " is no argument of a message");
    }
  }

  /** A message; imported statically, so that it reads like what it says. */
  public static Message say(String id, String english, Object... arguments) {
    return new Message(id, english, List.of(arguments));
  }

  /** A value by itself, such as a cell as it was read. */
  public static Message of(Object value) {
    return say("value", "{0}", value);
  }

  /**
   * A message about a number of things, which is its argument 0; its id ends in {@code .one} or
   * {@code .many}.
   */
  public static Message count(String id, long number, String one, String many, Object... more) {
    List<Object> arguments = new ArrayList<>(List.of(number));
    arguments.addAll(List.of(more));
    boolean single = number == 1;
    return new Message(id + (single ? ".one" : ".many"), single ? one : many, arguments);
  }

  @Override
  public String in(Language language) {
    Matcher places = PLACE.matcher(language.text(id, english));
    return places.replaceAll(place -> Matcher.quoteReplacement(shown(place.group(), language)));
  }

  /** A place that a text has too many is printed as it stands. */
  private String shown(String place, Language language) {
    int index = place.charAt(1) - '0';
    return index < arguments.size() ? shown(arguments.get(index), language) : place;
  }

  /** What was read can't begin a line of its own, which would look like one of the program's. */
  static String shown(Object argument, Language language) {
    String shown = argument instanceof Argument value ? value.in(language) : argument.toString();
    return LINE_END.matcher(shown).replaceAll(" ");
  }

  /** The id and the arguments, without any wording. */
  @Override
  public Map<String, Object> json() {
    Map<String, Object> tree = new LinkedHashMap<>();
    tree.put("id", id);
    if (!arguments.isEmpty()) {
      tree.put("arguments", arguments.stream().map(Message::json).toList());
    }
    return tree;
  }

  static Object json(Object argument) {
    if (argument instanceof Argument value) {
      return value.json();
    }
    return argument instanceof Number ? argument : argument.toString();
  }

  /** In English. */
  @Override
  public String toString() {
    return in(Language.ENGLISH);
  }
}

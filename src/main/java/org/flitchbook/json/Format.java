package org.flitchbook.json;

import static org.flitchbook.message.Message.say;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Supplier;
import org.flitchbook.measure.Dimension;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Unit;
import org.flitchbook.message.Argument;
import org.flitchbook.message.Listing;
import org.flitchbook.message.Message;

/**
 * How a text of a document becomes a value.
 *
 * @param expected what the text should be, in words
 * @param choices the only texts there are; empty where there are more than can be listed
 * @param parser empty for a text that is none
 */
public record Format<T>(
    Message expected, List<String> choices, Function<String, Optional<T>> parser) {

  static final Message TEXT = say("json.a-text", "a text");
  static final Message WHOLE = say("json.a-whole-number", "a whole number");
  static final Message BOOL = say("json.a-boolean", "true or false");
  static final Message OBJECT = say("json.an-object", "an object");
  static final Message VALUE = say("json.a-value", "a value");
  static final Message LIST = say("json.a-list", "a list");

  static final Format<String> ANY = of(TEXT, Optional::of);
  static final Format<LocalDate> DATE =
      of(
          say("json.a-date", "a date such as 2026-01-05"),
          text -> valid(() -> LocalDate.parse(text)));
  static final Format<ZoneId> ZONE =
      of(
          say("json.a-zone", "a zone such as America/New_York"),
          text -> valid(() -> ZoneId.of(text)));

  public Format {
    choices = List.copyOf(choices);
  }

  public static <T> Format<T> of(Message expected, Function<String, Optional<T>> parser) {
    return new Format<>(expected, List.of(), parser);
  }

  /** One of a few values, each by its word. */
  public static <T> Format<T> choice(Collection<T> values, Function<T, String> word) {
    return choice(Listing.or(values.stream().map(word).toList()), values, word);
  }

  /** The same, with other words for what is expected. */
  public static <T> Format<T> choice(
      Argument expected, Collection<T> values, Function<T, String> word) {
    return new Format<>(
        expected instanceof Message message ? message : Message.of(expected),
        values.stream().map(word).toList(),
        text -> values.stream().filter(each -> word.apply(each).equals(text)).findFirst());
  }

  /** A quantity of a dimension, see {@link Quantity#parse(String, Dimension)}. */
  public static Format<Quantity> quantity(Dimension dimension) {
    return quantity(dimension, Unit.of(dimension));
  }

  static Format<Quantity> quantity(Dimension dimension, List<Unit> units) {
    return of(
        dimension == Dimension.NUMBER
            ? say("json.a-number", "a number in quotes")
            : say("json.a-quantity", "{0} in {1}", dimension, Listing.or(units)),
        text ->
            Quantity.parse(text, dimension).filter(quantity -> units.contains(quantity.unit())));
  }

  private static <T> Optional<T> valid(Supplier<T> parsed) {
    try {
      return Optional.of(parsed.get());
    } catch (DateTimeException none) {
      return Optional.empty();
    }
  }
}

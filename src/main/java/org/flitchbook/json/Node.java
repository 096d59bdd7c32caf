package org.flitchbook.json;

import static org.flitchbook.message.Message.say;

import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.flitchbook.input.Place;
import org.flitchbook.message.Message;

/** A value of a JSON document, with the line on which it begins and the path that leads to it. */
public sealed interface Node {

  Place place();

  /** For a diagnostic: the value as one would point at it. */
  Message found();

  /** The same in English. */
  default String shown() {
    return found().toString();
  }

  /**
   * The first text that stands under one of these keys, in this order; none of what has no keys.
   */
  default Optional<String> firstText(List<String> keys) {
    return Optional.empty();
  }

  record Text(Place place, String value) implements Node {
    @Override
    public Message found() {
      return say("json.text", "\"{0}\"", Shown.onOneLine(value));
    }
  }

  record Num(Place place, BigDecimal value) implements Node {
    @Override
    public Message found() {
      return Message.of(Shown.number(value));
    }
  }

  record Bool(Place place, boolean value) implements Node {
    @Override
    public Message found() {
      return Message.of(String.valueOf(value));
    }
  }

  record Nil(Place place) implements Node {
    @Override
    public Message found() {
      return Message.of("null");
    }
  }

  record Items(Place place, List<Node> items) implements Node {
    public Items {
      items = List.copyOf(items);
    }

    @Override
    public Message found() {
      return Format.LIST;
    }
  }

  /** Members in the order of the file. */
  record Obj(Place place, Map<String, Node> members) implements Node {
    @Override
    public Message found() {
      return Format.OBJECT;
    }

    @Override
    public Optional<String> firstText(List<String> keys) {
      return keys.stream()
          .map(members::get)
          .filter(Text.class::isInstance)
          .map(text -> ((Text) text).value())
          .findFirst();
    }
  }
}

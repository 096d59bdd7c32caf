package org.flitchbook.json;

import static org.flitchbook.message.Message.say;

import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.flitchbook.input.Place;
import org.flitchbook.message.Message;
import org.jspecify.annotations.Nullable;

/** A value of a JSON document, with the line on which it begins and the path that leads to it. */
public sealed interface Node {

  /** The most letters of a value that a diagnostic shows. */
  int LONGEST = 80;

  Place place();

  /** For a diagnostic: the value as one would point at it. */
  default Message found() {
    if (this instanceof Text text) {
      return say("json.text", "\"{0}\"", onOneLine(text.value()));
    } else if (this instanceof Num number) {
      return Message.of(onOneLine(Num.digits(number.value())));
    } else if (this instanceof Bool bool) {
      return Message.of(String.valueOf(bool.value()));
    } else if (this instanceof Items) {
      return Format.LIST;
    }
    return this instanceof Obj ? Format.OBJECT : Message.of("null");
  }

  /** The same in English. */
  default String shown() {
    return found().toString();
  }

  private static String onOneLine(String text) {
    int end = Math.min(text.length(), LONGEST);
    boolean inPair = end < text.length() && Character.isHighSurrogate(text.charAt(end - 1));
    String cut = text.substring(0, inPair ? end - 1 : end).replaceAll("\\p{Cntrl}", " ");
    return end < text.length() ? cut + "…" : cut;
  }

  /** The first text under one of these keys, in their order; none of what has no keys. */
  default Optional<String> firstText(List<String> keys) {
    return this instanceof Obj object
        ? keys.stream().flatMap(key -> object.text(key).stream()).findFirst()
        : Optional.empty();
  }

  /** As {@link Json#write} takes it. */
  default @Nullable Object tree() {
    if (this instanceof Obj object) {
      Map<String, Object> tree = new LinkedHashMap<>();
      object.members().forEach((key, value) -> tree.put(key, value.tree()));
      return tree;
    } else if (this instanceof Items list) {
      return list.items().stream().map(Node::tree).toList();
    } else if (this instanceof Num number) {
      return number.value();
    } else if (this instanceof Bool bool) {
      return bool.value();
    }
    return this instanceof Text text ? text.value() : null;
  }

  record Text(Place place, String value) implements Node {}

  record Num(Place place, BigDecimal value) implements Node {

    /** Digit by digit, without zeros at the end of its decimals: 1.50 as 1.5. */
    public String plain() {
      return digits(value.stripTrailingZeros());
    }

    /** Only where that is short: 1e999999999 has a billion of them. */
    private static String digits(BigDecimal value) {
      return Math.abs((long) value.scale()) < LONGEST ? value.toPlainString() : value.toString();
    }
  }

  record Bool(Place place, boolean value) implements Node {}

  record Nil(Place place) implements Node {}

  record Items(Place place, List<Node> items) implements Node {
    public Items {
      items = List.copyOf(items);
    }
  }

  /** Members in the order of the file. */
  record Obj(Place place, Map<String, Node> members) implements Node {

    private static final int COUNT_DIGITS = 9;

    /** The text under a key; empty where there is none. */
    public Optional<String> text(String key) {
      return members.get(key) instanceof Text text ? Optional.of(text.value()) : Optional.empty();
    }

    /** The whole number under a key, from 0 to 999,999,999; empty where there is none such. */
    public Optional<Integer> count(String key) {
      return members.get(key) instanceof Num number
              && number.value().scale() == 0
              && number.value().precision() <= COUNT_DIGITS
              && number.value().signum() >= 0
          ? Optional.of(number.value().intValueExact())
          : Optional.empty();
    }

    /** The object under a key; empty where there is none. */
    public Optional<Obj> object(String key) {
      return members.get(key) instanceof Obj object ? Optional.of(object) : Optional.empty();
    }

    /** The objects of the list under a key. */
    public List<Obj> objects(String key) {
      return members.get(key) instanceof Items list
          ? list.items().stream().filter(Obj.class::isInstance).map(Obj.class::cast).toList()
          : List.of();
    }
  }
}

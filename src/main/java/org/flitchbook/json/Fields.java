package org.flitchbook.json;

import static org.flitchbook.message.Message.say;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import org.flitchbook.input.Fault;
import org.flitchbook.input.Place;
import org.flitchbook.message.Listing;
import org.flitchbook.message.Message;

/**
 * The members of one object, taken one by one. Every key that is missing, of the wrong kind or, at
 * {@link #end}, unknown is a fault with its place; what can't be read comes back empty, so that all
 * faults of a file are found in one reading.
 *
 * @param asked the keys asked for so far
 * @param faults where the faults go, shared by all objects of one document
 */
public record Fields(Node.Obj object, Set<String> asked, List<Fault> faults) {

  private static final int SHOWN_KEYS = 40;

  public static Fields of(Node.Obj object, List<Fault> faults) {
    return new Fields(object, new LinkedHashSet<>(), faults);
  }

  public Place place() {
    return object.place();
  }

  /** Where that key stands, or the object itself where the key is missing. */
  public Place place(String key) {
    Node node = object.members().get(key);
    return node == null ? inside(key) : node.place();
  }

  /** The value under a key, which is known from then on. */
  Optional<Node> member(String key) {
    asked.add(key);
    return Optional.ofNullable(object.members().get(key));
  }

  public boolean has(String key) {
    return member(key).isPresent();
  }

  /** A text that must be there; "" with a fault where it is not. */
  public String text(String key) {
    return required(key, optionalText(key), Format.TEXT).orElse("");
  }

  public Optional<String> optionalText(String key) {
    return member(key, Node.Text.class, Format.TEXT).map(Node.Text::value);
  }

  /** A text that a parser must understand; empty with a fault where it is missing or is not. */
  public <T> Optional<T> parsed(String key, String expected, Function<String, Optional<T>> parser) {
    required(key, member(key), Message.of(expected));
    return optionalParsed(key, expected, parser);
  }

  public <T> Optional<T> optionalParsed(
      String key, String expected, Function<String, Optional<T>> parser) {
    Optional<Node.Text> text = member(key, Node.Text.class, Message.of(expected));
    Optional<T> value = text.flatMap(node -> parser.apply(node.value()));
    if (text.isPresent() && value.isEmpty()) {
      refuse(text.get(), Message.of(expected));
    }
    return value;
  }

  public Optional<Integer> optionalWhole(String key) {
    Optional<Node.Num> number = member(key, Node.Num.class, Format.WHOLE);
    try {
      return number.map(node -> node.value().intValueExact());
    } catch (ArithmeticException notWhole) {
      refuse(number.orElseThrow(), Format.WHOLE);
      return Optional.empty();
    }
  }

  public Optional<Boolean> optionalBool(String key) {
    return member(key, Node.Bool.class, Format.BOOL).map(Node.Bool::value);
  }

  public Optional<Fields> optionalObject(String key) {
    return member(key, Node.Obj.class, Format.OBJECT).map(inner -> of(inner, faults));
  }

  public Optional<Fields> object(String key) {
    return required(key, optionalObject(key), Format.OBJECT);
  }

  /** The objects of a list; an item that is no object is a fault. */
  public List<Fields> objects(String key) {
    List<Fields> found = new ArrayList<>();
    for (Node item : items(key)) {
      if (item instanceof Node.Obj each) {
        found.add(of(each, faults));
      } else {
        refuse(item, Format.OBJECT);
      }
    }
    return found;
  }

  /** The texts of a list; an item that is no text is a fault. */
  public List<String> texts(String key) {
    List<String> found = new ArrayList<>();
    for (Node item : items(key)) {
      if (item instanceof Node.Text each) {
        found.add(each.value());
      } else {
        refuse(item, Format.TEXT);
      }
    }
    return found;
  }

  /** To be called when all keys were asked for: every other one is a fault. */
  public void end() {
    for (Map.Entry<String, Node> member : object.members().entrySet()) {
      if (!asked.contains(member.getKey())) {
        faults.add(
            Fault.broken(
                "unknown key",
                member.getValue().place(),
                say("json.key", "the key \"{0}\"", member.getKey()),
                oneOf(asked.stream().limit(SHOWN_KEYS).toList())));
      }
    }
  }

  static Message oneOf(List<String> choices) {
    return say("json.one-of", "one of {0}", Listing.commas(choices));
  }

  public void fault(String key, Message found, Message expected) {
    faults.add(Fault.broken("wrong value", place(key), found, expected));
  }

  public void fault(String key, String found, String expected) {
    fault(key, Message.of(found), Message.of(expected));
  }

  /** A key that is not there and must be. */
  void missing(String key, Message expected) {
    Message found = say("json.no-key", "no \"{0}\"", key);
    Message wanted = say("json.there", "{0} there", expected);
    faults.add(Fault.broken("missing key", inside(key), found, wanted));
  }

  /** A value that is not what was expected. */
  void refuse(Node node, Message expected) {
    fault(node, node.found(), expected);
  }

  void fault(Node node, Message found, Message expected) {
    faults.add(Fault.broken("wrong value", node.place(), found, expected));
  }

  private List<Node> items(String key) {
    return member(key, Node.Items.class, Format.LIST).map(Node.Items::items).orElse(List.of());
  }

  private <N extends Node> Optional<N> member(String key, Class<N> kind, Message expected) {
    Optional<Node> node = member(key);
    if (node.isPresent() && !kind.isInstance(node.get())) {
      refuse(node.get(), expected);
      return Optional.empty();
    }
    return node.map(kind::cast);
  }

  private <T> Optional<T> required(String key, Optional<T> value, Message expected) {
    if (member(key).isEmpty()) {
      missing(key, expected);
    }
    return value;
  }

  private Place inside(String key) {
    String path = object.place().column();
    return object.place().column(path.isEmpty() ? key : path + "." + key);
  }
}

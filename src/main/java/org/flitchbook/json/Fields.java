package org.flitchbook.json;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import org.flitchbook.input.Fault;
import org.flitchbook.input.Place;
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

  public boolean has(String key) {
    asked.add(key);
    return object.members().containsKey(key);
  }

  /** A text that must be there; "" with a fault where it is not. */
  public String text(String key) {
    return required(key, optionalText(key), "a text").orElse("");
  }

  public Optional<String> optionalText(String key) {
    return member(key, Node.Text.class, "a text").map(Node.Text::value);
  }

  /** A text that a parser must understand; empty with a fault where it is missing or is not. */
  public <T> Optional<T> parsed(String key, String expected, Function<String, Optional<T>> parser) {
    required(key, Optional.ofNullable(object.members().get(key)), expected);
    return optionalParsed(key, expected, parser);
  }

  public <T> Optional<T> optionalParsed(
      String key, String expected, Function<String, Optional<T>> parser) {
    Optional<Node.Text> text = member(key, Node.Text.class, expected);
    Optional<T> value = text.flatMap(node -> parser.apply(node.value()));
    if (text.isPresent() && value.isEmpty()) {
      fault(text.get(), expected);
    }
    return value;
  }

  public Optional<Integer> optionalWhole(String key) {
    Optional<Node.Num> number = member(key, Node.Num.class, "a whole number");
    try {
      return number.map(node -> node.value().intValueExact());
    } catch (ArithmeticException notWhole) {
      fault(number.orElseThrow(), "a whole number");
      return Optional.empty();
    }
  }

  public Optional<Boolean> optionalBool(String key) {
    return member(key, Node.Bool.class, "true or false").map(Node.Bool::value);
  }

  public Optional<Fields> optionalObject(String key) {
    return member(key, Node.Obj.class, "an object").map(object -> of(object, faults));
  }

  public Optional<Fields> object(String key) {
    return required(key, optionalObject(key), "an object");
  }

  /** The objects of a list; an item that is no object is a fault. */
  public List<Fields> objects(String key) {
    List<Fields> found = new ArrayList<>();
    for (Node item : items(key)) {
      if (item instanceof Node.Obj each) {
        found.add(of(each, faults));
      } else {
        fault(item, "an object");
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
        fault(item, "a text");
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
                "the key \"" + member.getKey() + "\"",
                "one of " + String.join(", ", asked.stream().limit(SHOWN_KEYS).toList())));
      }
    }
  }

  public void fault(String key, Message found, Message expected) {
    faults.add(Fault.broken("wrong value", place(key), found, expected));
  }

  public void fault(String key, String found, String expected) {
    faults.add(Fault.broken("wrong value", place(key), found, expected));
  }

  private List<Node> items(String key) {
    return member(key, Node.Items.class, "a list").map(Node.Items::items).orElse(List.of());
  }

  private <N extends Node> Optional<N> member(String key, Class<N> kind, String expected) {
    asked.add(key);
    Node node = object.members().get(key);
    if (node == null) {
      return Optional.empty();
    }
    if (!kind.isInstance(node)) {
      fault(node, expected);
      return Optional.empty();
    }
    return Optional.of(kind.cast(node));
  }

  private <T> Optional<T> required(String key, Optional<T> value, String expected) {
    asked.add(key);
    if (!object.members().containsKey(key)) {
      faults.add(
          Fault.broken("missing key", inside(key), "no \"" + key + "\"", expected + " there"));
    }
    return value;
  }

  private Place inside(String key) {
    String path = object.place().column();
    return object.place().column(path.isEmpty() ? key : path + "." + key);
  }

  private void fault(Node node, String expected) {
    faults.add(Fault.broken("wrong value", node.place(), node.shown(), expected));
  }
}

package org.flitchbook.json;

import static org.flitchbook.message.Message.say;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.flitchbook.measure.Measurable;
import org.flitchbook.message.Listing;
import org.flitchbook.message.Message;

/**
 * Binds one object, and with it what stands in it.
 *
 * @param values of the components before the one that is bound, by their names
 */
record Binding(Fields object, Map<String, Object> values) {

  /** The record of a whole object: a key that it does not know is a fault. */
  static Optional<Object> whole(Schema schema, Fields object) {
    Optional<Object> bound = new Binding(object, new HashMap<>()).records(schema);
    boolean open =
        schema instanceof Schema.Members members
            && members.members().stream()
                .anyMatch(each -> each.schema() instanceof Schema.Self self && self.open());
    if (!open) {
      object.end();
    }
    return bound;
  }

  /** What records the object is, by its keys. */
  private Optional<Object> records(Schema schema) {
    if (schema instanceof Schema.ByWord choice) {
      return chosen(choice).flatMap(this::members);
    }
    return schema instanceof Schema.ByKey choice
        ? chosen(choice).flatMap(this::members)
        : members((Schema.Members) schema);
  }

  private Optional<Schema.Members> chosen(Schema.ByWord choice) {
    Message expected = Message.of(Listing.or(List.copyOf(choice.records().keySet())));
    Optional<Node> node = object.member(choice.key());
    Optional<Schema.Members> found = object.object().text(choice.key()).map(choice.records()::get);
    if (node.isEmpty()) {
      object.missing(choice.key(), expected);
    } else if (found.isEmpty()) {
      object.refuse(node.get(), expected);
    }
    if (found.isEmpty()) {
      choice.records().values().forEach(this::know);
    }
    return found;
  }

  private Optional<Schema.Members> chosen(Schema.ByKey choice) {
    List<Schema.Members> stated =
        choice.records().stream().filter(each -> object.has(choice.mark(each))).toList();
    if (stated.size() > 1) {
      oneOf(stated.stream().map(choice::mark).toList());
      choice.records().forEach(this::know);
      return Optional.empty();
    }
    return Optional.of(stated.isEmpty() ? choice.records().get(0) : stated.get(0));
  }

  private void oneOf(List<String> keys) {
    List<Message> stated = keys.stream().map(key -> say("json.text", "\"{0}\"", key)).toList();
    object.fault(
        keys.get(1), Message.of(Listing.and(stated)), say("json.one-of-them", "one of them"));
  }

  /** So that no key of a record that could not be chosen is said to be unknown. */
  private void know(Schema.Members members) {
    members.keys().forEach(object::has);
  }

  private Optional<Object> members(Schema.Members schema) {
    List<Object> arguments = new ArrayList<>();
    for (Schema.Member member : schema.members()) {
      Optional<?> value = value(member);
      value.ifPresent(arguments::add);
      value.ifPresent(known -> values.put(member.component().getName(), known));
    }
    return arguments.size() == schema.members().size()
        ? Optional.of(made(schema, arguments))
        : Optional.empty();
  }

  private Object made(Schema.Members schema, List<Object> arguments) {
    Object record = schema.make(arguments);
    if (record instanceof Checked checked) {
      checked.check(object);
    }
    return record;
  }

  private Optional<?> value(Schema.Member member) {
    if (member.schema() instanceof Schema.Self self) {
      return Optional.of(self.place() ? object.place() : object);
    }
    if (member.inline()) {
      return new Binding(object, new HashMap<>(values)).records(member.schema());
    }
    Optional<Object> value = stated(member);
    return member.optional() ? Optional.of(value) : value.or(member::empty);
  }

  private Optional<Object> stated(Schema.Member member) {
    Optional<Node> first = object.member(member.key());
    Optional<Node> other = member.or().flatMap(object::member);
    if (member.or().isPresent() && member.schema() instanceof Schema.Bool) {
      return Optional.of(first.isPresent() || other.isEmpty());
    }
    if (first.isPresent() && other.isPresent()) {
      oneOf(List.of(member.key(), member.or().get()));
    }
    return stated(member, first.or(() -> other));
  }

  private Optional<Object> stated(Schema.Member member, Optional<Node> node) {
    if (member.schema() instanceof Schema.Measured && format(member.schema()).isEmpty()) {
      return Optional.empty();
    }
    if (node.isEmpty() && member.required()) {
      object.missing(member.key(), expected(member.schema()));
    }
    return node.isPresent()
        ? value(member.schema(), node.get())
        : member
            .otherwise()
            .flatMap(text -> format(member.schema()).flatMap(each -> parsed(each, text)));
  }

  /** How a text is read; empty for other values, and for a quantity of nobody knows what. */
  private Optional<Format<?>> format(Schema schema) {
    if (schema instanceof Schema.Text text) {
      return Optional.of(text.format());
    }
    return schema instanceof Schema.Measured measured
            && values.get(measured.component()) instanceof Measurable known
        ? Optional.of(Format.quantity(known.dimension(), known.units()))
        : Optional.empty();
  }

  private Message expected(Schema schema) {
    if (schema instanceof Schema.Whole whole) {
      return whole.expected();
    } else if (schema instanceof Schema.Bool) {
      return Format.BOOL;
    } else if (schema instanceof Schema.Items list) {
      return list.alone() ? expected(list.item()) : Format.LIST;
    }
    Message other = schema instanceof Schema.Any ? Format.VALUE : Format.OBJECT;
    return format(schema).map(Format::expected).orElse(other);
  }

  private Optional<Object> value(Schema schema, Node node) {
    if (schema instanceof Schema.Any) {
      return Optional.of(node);
    } else if (schema instanceof Schema.Bool && node instanceof Node.Bool bool) {
      return Optional.of(bool.value());
    } else if (schema instanceof Schema.Whole whole && node instanceof Node.Num number) {
      return whole(whole, number);
    } else if (schema instanceof Schema.Items list && node instanceof Node.Items items) {
      return Optional.of(items(list, items));
    } else if (schema instanceof Schema.Items list && list.alone()) {
      return value(list.item(), node).map(List::of);
    } else if (schema instanceof Schema.Entries map && node instanceof Node.Obj entries) {
      return Optional.of(entries(map, entries));
    } else if (!Schema.records(schema).isEmpty() && node instanceof Node.Obj inner) {
      return whole(schema, Fields.of(inner, object.faults()));
    }
    Optional<Object> value =
        node instanceof Node.Text text
            ? format(schema).flatMap(format -> parsed(format, text.value()))
            : Optional.empty();
    if (value.isEmpty()) {
      object.refuse(node, expected(schema));
    }
    return value;
  }

  private static Optional<Object> parsed(Format<?> format, String text) {
    return format.parser().apply(text).map(Object.class::cast);
  }

  private Optional<Object> whole(Schema.Whole schema, Node.Num number) {
    try {
      int value = number.value().intValueExact();
      if (value >= schema.least() && value <= schema.most()) {
        return Optional.of(value);
      }
      boolean open = schema.most() == Integer.MAX_VALUE;
      Message least = say("json.at-least", "{0} or more", schema.least());
      object.refuse(number, open ? least : schema.expected());
    } catch (ArithmeticException notWhole) {
      object.refuse(number, schema.expected());
    }
    return Optional.empty();
  }

  private List<Object> items(Schema.Items schema, Node.Items list) {
    List<Object> bound = new ArrayList<>();
    list.items().forEach(item -> value(schema.item(), item).ifPresent(bound::add));
    if (list.items().size() < schema.least()) {
      object.fault(
          list, say("json.items", "a list of {0}", list.items().size()), schema.expected());
    }
    if (!schema.unique().isEmpty()) {
      unique(schema.unique(), list);
    }
    return List.copyOf(bound);
  }

  private void unique(String key, Node.Items list) {
    Set<String> texts = new HashSet<>();
    for (Node item : list.items()) {
      if (item instanceof Node.Obj inner && inner.members().get(key) instanceof Node.Text text) {
        if (text.value().isBlank()) {
          object.refuse(text, say("json.a-letter", "at least one letter"));
        } else if (!texts.add(text.value())) {
          object.fault(
              text, say("json.twice", "{0} twice", text.found()), say("json.once", "each once"));
        }
      }
    }
  }

  private Map<String, Object> entries(Schema.Entries schema, Node.Obj map) {
    Map<String, Object> bound = new LinkedHashMap<>();
    map.members()
        .forEach((key, node) -> value(schema.value(), node).ifPresent(it -> bound.put(key, it)));
    return Collections.unmodifiableMap(bound);
  }

  /** The record with the components of these keys that the object states otherwise. */
  Object changed(Schema type, Object record, Set<String> keys) {
    Optional<Schema.Members> other = other(type, record, keys);
    if (other.isPresent()) {
      return members(other.get()).orElse(record);
    }
    Schema.Members schema = ofType(type, record);
    List<Object> arguments = new ArrayList<>();
    for (Schema.Member member : schema.members()) {
      Object now = changed(member, member.of(record), keys);
      arguments.add(now);
      values.put(member.component().getName(), now);
    }
    return schema.members().stream().map(each -> each.of(record)).toList().equals(arguments)
        ? record
        : made(schema, arguments);
  }

  private Object changed(Schema.Member member, Object was, Set<String> keys) {
    if (member.inline()) {
      return new Binding(object, new HashMap<>(values)).changed(member.schema(), was, keys);
    }
    // Which of two keys it stands under is no number, and stays.
    boolean second = member.or().isPresent() && values.containsValue(false);
    String key = second ? member.or().orElseThrow() : member.key();
    return !(member.schema() instanceof Schema.Bool) && keys.contains(key) && object.has(key)
        ? value(member).map(Object.class::cast).orElse(was)
        : was;
  }

  private static Schema.Members ofType(Schema type, Object record) {
    return Schema.records(type).stream()
        .filter(each -> each.type().isInstance(record))
        .findFirst()
        .orElseThrow();
  }

  /** Another record of the choice, where the object states the key that marks it. */
  private Optional<Schema.Members> other(Schema type, Object record, Set<String> keys) {
    return type instanceof Schema.ByKey choice
        ? choice.records().stream()
            .filter(each -> isStated(choice.mark(each), keys))
            .filter(each -> !isStated(choice.mark(ofType(type, record)), keys))
            .findFirst()
        : Optional.empty();
  }

  private boolean isStated(String key, Set<String> keys) {
    return keys.contains(key) && object.object().members().containsKey(key);
  }
}

package org.flitchbook.json;

import static org.flitchbook.message.Message.say;

import java.lang.reflect.Constructor;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.RecordComponent;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.flitchbook.message.Listing;
import org.flitchbook.message.Message;

/** What a value of a document must be, so that a {@link Binder} can make a value of Java of it. */
public sealed interface Schema {

  /** A text. */
  record Text(Format<?> format) implements Schema {}

  /** A quantity that measures what the value of a component before it says. */
  record Measured(String component) implements Schema {}

  record Whole(int least, int most) implements Schema {

    Message expected() {
      return least == most ? Message.of(least) : Format.WHOLE;
    }
  }

  record Bool() implements Schema {}

  /** Whatever stands there. */
  record Any() implements Schema {}

  /**
   * A list.
   *
   * @param unique the key whose text each item has for itself; empty where there is none
   * @param alone whether an item may stand there in place of a list of it
   */
  record Items(Schema item, int least, String unique, boolean alone) implements Schema {

    Message expected() {
      return item instanceof Members members
          ? say("json.objects", "{0} or more of {1}", least, Listing.commas(members.keys()))
          : say("json.at-least", "{0} or more", least);
    }
  }

  /** An object with keys that are not known. */
  record Entries(Schema value) implements Schema {}

  /** An object whose members are the components of a record. */
  record Members(Class<? extends Record> type, List<Member> members) implements Schema {

    Object make(List<Object> arguments) {
      try {
        Class<?>[] types =
            members.stream().map(each -> each.component().getType()).toArray(Class<?>[]::new);
        Constructor<?> constructor = type.getDeclaredConstructor(types);
        constructor.setAccessible(true);
        return constructor.newInstance(arguments.toArray());
      } catch (InvocationTargetException refused) {
        throw new IllegalStateException(type + " refuses what was read", refused.getCause());
      } catch (ReflectiveOperationException wrong) {
        throw new LinkageError("the constructor of a record", wrong);
      }
    }

    /** The keys that must or may stand in the object. */
    public List<String> keys() {
      return members.stream().flatMap(Member::keys).toList();
    }
  }

  /** One of several records, by the word under a key. */
  record ByWord(String key, Map<String, Members> records) implements Schema {}

  /** One of several records, by the first key of each that no other has. */
  record ByKey(List<Members> records) implements Schema {

    String mark(Members one) {
      return one.keys().stream()
          .filter(
              key ->
                  records.stream()
                      .noneMatch(each -> !each.equals(one) && each.keys().contains(key)))
          .findFirst()
          .orElseThrow(() -> new IllegalArgumentException(one.type() + " has no key of its own"));
    }
  }

  /**
   * No member: the object itself, or its place.
   *
   * @param open whether the object may have keys that are not known here
   */
  record Self(boolean place, boolean open) implements Schema {}

  /**
   * A component of a record.
   *
   * @param or another key under which the value may stand
   * @param optional whether the component is an {@code Optional}
   * @param required whether the key must be there
   * @param otherwise the text that stands for a missing key
   * @param empty what stands for a value that is missing or wrong; without it there is no record
   * @param inline whether its members are those of the object around it
   */
  record Member(
      RecordComponent component,
      String key,
      Optional<String> or,
      Schema schema,
      boolean optional,
      boolean required,
      Optional<String> otherwise,
      Optional<Object> empty,
      boolean inline) {

    Object of(Object record) {
      try {
        component.getAccessor().setAccessible(true);
        return component.getAccessor().invoke(record);
      } catch (ReflectiveOperationException wrong) {
        throw new LinkageError("an accessor of a record", wrong);
      }
    }

    private Stream<String> keys() {
      Stream<String> own = Stream.concat(Stream.of(key), or.stream());
      Stream<String> inner = records(schema).stream().flatMap(each -> each.keys().stream());
      return schema instanceof Self ? Stream.of() : inline ? inner : own;
    }
  }

  /** The records that an object may be. */
  static List<Members> records(Schema schema) {
    if (schema instanceof ByWord choice) {
      return List.copyOf(choice.records().values());
    } else if (schema instanceof ByKey choice) {
      return choice.records();
    }
    return schema instanceof Members members ? List.of(members) : List.of();
  }
}

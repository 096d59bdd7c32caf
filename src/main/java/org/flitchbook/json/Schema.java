package org.flitchbook.json;

import java.lang.reflect.RecordComponent;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** What a value of a document must be, so that a {@link Binder} can make a value of Java of it. */
public sealed interface Schema {

  /** A text. */
  record Text(Format<?> format) implements Schema {}

  /** A quantity that measures what the value of a component before it says. */
  record Measured(String component) implements Schema {}

  record Whole(int least) implements Schema {}

  record Bool() implements Schema {}

  /** Whatever stands there. */
  record Any() implements Schema {}

  /**
   * @param unique the key whose text each item has for itself; empty where there is none
   */
  record Items(Schema item, int least, String unique) implements Schema {}

  /** An object with keys that are not known. */
  record Entries(Schema value) implements Schema {}

  /** An object whose members are the components of a record. */
  record Members(Class<? extends Record> type, List<Member> members) implements Schema {

    /** By which it is known among others. */
    String firstKey() {
      return members.get(0).key();
    }
  }

  /** One of several records, by the word under a key. */
  record ByWord(String key, Map<String, Members> records) implements Schema {}

  /** One of several records, by the first key of each. */
  record ByKey(List<Members> records) implements Schema {}

  /** No member: the object itself, or its place. */
  record Self(boolean place) implements Schema {}

  /**
   * A component of a record.
   *
   * @param optional whether the component is an {@code Optional}
   * @param required whether the key must be there
   * @param otherwise the text that stands for a missing key
   * @param empty what stands for a value that is missing or wrong; without it there is no record
   * @param inline whether its members are those of the object around it
   */
  record Member(
      RecordComponent component,
      String key,
      Schema schema,
      boolean optional,
      boolean required,
      Optional<String> otherwise,
      Optional<Object> empty,
      boolean inline) {

    boolean isKey() {
      return !inline && !(schema instanceof Self);
    }
  }
}

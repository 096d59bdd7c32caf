package org.flitchbook.json;

import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import org.flitchbook.input.Fault;
import org.flitchbook.input.Place;
import org.flitchbook.input.SourceFile;
import org.flitchbook.message.Message;

/**
 * Makes a record of an object, each component from the member of its name. The component's type
 * says what must stand there: a text with a {@link Format}, an enum by its word, a whole number, a
 * boolean, a quantity, a length of time, a record, a list or map of these, or one of the records of
 * a sealed interface ({@link Choice}). A component of type {@code Optional} may be missing; {@link
 * Key} says what else there is to know. A component of type {@code Place} is the place of the
 * object, one of type {@code Fields} the object itself, and its user then {@link Fields#end ends}
 * it; every other object is ended here.
 *
 * <p>Whatever is wrong is a fault, and all of it is found in one reading: a text, list or {@code
 * Optional} that is wrong becomes an empty one beside its fault, an item of a list is left out, and
 * a record that lacks anything else is not made. Nothing that a file holds is an exception.
 *
 * @param types the formats by the type that they give
 * @param named the formats by their names, for a type that is written in more than one way
 */
public record Binder(Map<Class<?>, Format<?>> types, Map<String, Format<?>> named) {

  /** Knows texts, dates and zones. */
  public static final Binder PLAIN =
      new Binder(
          Map.of(String.class, Format.ANY, LocalDate.class, Format.DATE, ZoneId.class, Format.ZONE),
          Map.of());

  public Binder {
    types = Map.copyOf(types);
    named = Map.copyOf(named);
  }

  public <T> Binder with(Class<T> type, Format<T> format) {
    Map<Class<?>, Format<?>> more = new HashMap<>(types);
    more.put(type, format);
    return new Binder(more, named);
  }

  public Binder with(String name, Format<?> format) {
    Map<String, Format<?>> more = new HashMap<>(named);
    more.put(name, format);
    return new Binder(types, more);
  }

  /**
   * Reads an object.
   *
   * @param type a record, or a sealed interface of records
   * @return empty beside a fault; one that is there may have faults too
   * @throws IllegalArgumentException where a component's type is none of those above
   */
  public <T> Optional<T> bind(Fields object, Class<T> type) {
    return Binding.whole(schema(type), object).map(type::cast);
  }

  /**
   * What was bound.
   *
   * @param faults what is wrong with it, and what those who ask its {@link Fields} find later
   */
  public record Bound<T>(Optional<T> value, List<Fault> faults) {

    /** What is made of it, beside the same faults. */
    public <U> Bound<U> map(Function<T, U> use) {
      return new Bound<>(value.map(use), faults);
    }
  }

  /** The object that a whole file is. */
  public <T> Bound<T> read(SourceFile file, Class<T> type) {
    Parsed parsed = Json.read(file.name(), file.bytes());
    List<Fault> faults = new ArrayList<>(parsed.faults());
    return new Bound<>(
        parsed.object().flatMap(object -> bind(Fields.of(object, faults), type)), faults);
  }

  /**
   * The object that one of the templates is.
   *
   * @param none said where there is no such file
   * @param expected what it would have held
   */
  public <T> Bound<T> read(
      List<SourceFile> templates, String name, Class<T> type, Message none, Message expected) {
    return templates.stream()
        .filter(each -> each.name().equals(name))
        .findFirst()
        .map(file -> read(file, type))
        .orElseGet(
            () ->
                new Bound<>(
                    Optional.empty(),
                    List.of(Fault.broken("missing file", Place.of(name), none, expected))));
  }

  /**
   * A record of that type with those components changed whose key is among the keys and stands in
   * the object. The object may hold more, and is not ended.
   */
  public <T> T change(T record, Class<T> type, Fields object, Set<String> keys) {
    return type.cast(new Binding(object, new HashMap<>()).changed(schema(type), record, keys));
  }

  /** What stands in an object of that type. */
  public Schema schema(Class<?> type) {
    return new SchemaReader(this).of(type);
  }
}

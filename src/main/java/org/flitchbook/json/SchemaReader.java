package org.flitchbook.json;

import java.lang.reflect.ParameterizedType;
import java.lang.reflect.RecordComponent;
import java.lang.reflect.Type;
import java.math.BigInteger;
import java.time.Duration;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.flitchbook.input.Place;
import org.flitchbook.measure.Dimension;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Ratio;
import org.flitchbook.message.Argument;

/** Reads off a type what must stand in a document for it. */
final class SchemaReader {

  /** What stands for a value that is missing or wrong, so that the record can still be made. */
  private static final Map<Class<?>, Object> EMPTY =
      Map.of(
          String.class,
          "",
          int.class,
          0,
          boolean.class,
          false,
          LocalDate.class,
          LocalDate.EPOCH,
          ZoneId.class,
          ZoneOffset.UTC,
          List.class,
          List.of(),
          Map.class,
          Map.of());

  private static final Format<Duration> TIME =
      Format.of(
          Format.quantity(Dimension.TIME).expected(),
          text -> Quantity.parse(text, Dimension.TIME).flatMap(SchemaReader::duration));

  /** A component without the annotation is as one with nothing in it. */
  private record Plain(@Key String component) {}

  private static final Key PLAIN = Plain.class.getRecordComponents()[0].getAnnotation(Key.class);

  private final Binder binder;

  SchemaReader(Binder binder) {
    this.binder = binder;
  }

  Schema of(Class<?> type) {
    return of(type, PLAIN);
  }

  private Schema of(Type type, Key key) {
    if (type instanceof ParameterizedType generic) {
      Type[] inner = generic.getActualTypeArguments();
      return generic.getRawType() == List.class
          ? new Schema.Items(of(inner[0], key), key.least(), key.unique(), key.alone())
          : new Schema.Entries(of(inner[1], key));
    }
    return ofClass((Class<?>) type, key);
  }

  private Schema ofClass(Class<?> type, Key key) {
    Optional<Format<?>> format = format(type, key);
    if (format.isPresent()) {
      return new Schema.Text(format.get());
    } else if (type == Quantity.class) {
      return new Schema.Measured(key.of());
    } else if (type == int.class || type == Integer.class) {
      return new Schema.Whole(key.least(), key.most());
    } else if (type == boolean.class || type == Boolean.class) {
      return new Schema.Bool();
    } else if (type == Node.class) {
      return new Schema.Any();
    } else if (type == Fields.class || type == Place.class) {
      return new Schema.Self(type == Place.class, key.open());
    }
    return ofRecords(type);
  }

  private Optional<Format<?>> format(Class<?> type, Key key) {
    Format<?> named = binder.named().get(key.format());
    if (!key.format().isEmpty() && named == null) {
      throw new IllegalArgumentException("no format \"" + key.format() + "\"");
    }
    if (type == Quantity.class && named == null) {
      return key.of().isEmpty() ? Optional.of(Format.quantity(key.dimension())) : Optional.empty();
    }
    Optional<Format<?>> known =
        Optional.ofNullable(named != null ? named : binder.types().get(type));
    return known
        .or(() -> type == Duration.class ? Optional.of(TIME) : Optional.empty())
        .or(() -> type.isEnum() ? Optional.of(words(type)) : Optional.empty());
  }

  private static Format<?> words(Class<?> type) {
    return Format.choice(List.of(type.getEnumConstants()), SchemaReader::word);
  }

  private static String word(Object constant) {
    return constant instanceof Argument argument
        ? argument.json().toString()
        : constant.toString().toLowerCase(Locale.ROOT).replace('_', ' ');
  }

  private static Optional<Duration> duration(Quantity time) {
    Ratio millis = time.inBase().times(Ratio.of(1000));
    return Optional.of(millis)
        .filter(exact -> exact.denominator().equals(BigInteger.ONE))
        .map(exact -> Duration.ofMillis(exact.numerator().longValueExact()));
  }

  private Schema ofRecords(Class<?> type) {
    if (type.isRecord()) {
      return members(type.asSubclass(Record.class));
    }
    if (!type.isSealed()) {
      throw new IllegalArgumentException(type + " can't be bound");
    }
    List<Class<? extends Record>> records = records(type).toList();
    Choice by = type.getAnnotation(Choice.class);
    if (by == null) {
      return new Schema.ByKey(records.stream().map(this::members).toList());
    }
    Map<String, Schema.Members> words = new LinkedHashMap<>();
    for (Class<? extends Record> each : records) {
      Stream.ofNullable(each.getAnnotation(Choice.class))
          .flatMap(choice -> Arrays.stream(choice.value()))
          .forEach(word -> words.put(word, members(each)));
    }
    return new Schema.ByWord(by.value()[0], words);
  }

  private static Stream<Class<? extends Record>> records(Class<?> type) {
    return type.isRecord()
        ? Stream.of(type.asSubclass(Record.class))
        : Arrays.stream(type.getPermittedSubclasses()).flatMap(SchemaReader::records);
  }

  private Schema.Members members(Class<? extends Record> type) {
    return new Schema.Members(
        type, Arrays.stream(type.getRecordComponents()).map(this::member).toList());
  }

  /** None for a number that is written as a text: 0 might not be one that it could be. */
  private static Optional<Object> empty(Class<?> type, Key key) {
    return type == int.class && !key.format().isEmpty()
        ? Optional.empty()
        : Optional.ofNullable(EMPTY.get(type));
  }

  private Schema.Member member(RecordComponent component) {
    Key key = Optional.ofNullable(component.getAnnotation(Key.class)).orElse(PLAIN);
    boolean optional = component.getType() == Optional.class;
    Type type =
        optional
            ? ((ParameterizedType) component.getGenericType()).getActualTypeArguments()[0]
            : component.getGenericType();
    Optional<String> otherwise =
        Optional.of(key.otherwise()).filter(text -> !text.equals(Key.NOTHING));
    return new Schema.Member(
        component,
        key.name().isEmpty() ? component.getName() : key.name(),
        Optional.of(key.or()).filter(or -> !or.isEmpty()),
        of(type, key),
        optional,
        key.required() || !(optional || key.optional() || otherwise.isPresent()),
        otherwise,
        empty(component.getType(), key),
        key.inline());
  }
}

package org.flitchbook.record;

import java.lang.reflect.RecordComponent;
import java.time.Instant;
import java.time.ZoneId;
import java.time.temporal.Temporal;
import java.time.temporal.TemporalAmount;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;
import org.flitchbook.input.Place;
import org.flitchbook.lot.Track;
import org.flitchbook.measure.Quantity;
import org.flitchbook.message.Argument;
import org.flitchbook.reading.Entry;
import org.flitchbook.reading.Moment;

/**
 * Values as maps, lists, texts and numbers. A record becomes a map with its components by their
 * names; a place that is one of them stands in that map itself, and what is empty has no key. Times
 * are written in the zone.
 */
record JsonTree(ZoneId zone) {

  Object of(Object value) {
    if (value instanceof Quantity quantity) {
      return new Members()
          .with("value", JsonForm.number(quantity))
          .with("unit", quantity.unit().symbol())
          .tree();
    }
    if (value instanceof Place place) {
      return JsonForm.place(place).tree();
    }
    if (value instanceof Argument argument) {
      return argument.json();
    }
    if (value instanceof Entry entry) {
      return entry(entry).tree();
    }
    if (value instanceof Moment moment) {
      return of(moment.written());
    }
    if (value instanceof Instant time) {
      return time.atZone(zone).toOffsetDateTime().toString();
    }
    return value instanceof Record record ? components(record) : collected(value);
  }

  private Object collected(Object value) {
    if (value instanceof Collection<?> values) {
      return values.stream().map(this::of).toList();
    }
    if (value instanceof Map<?, ?> map) {
      Members members = new Members();
      map.forEach((key, each) -> members.with(of(key).toString(), of(each)));
      return members.tree();
    }
    if (value instanceof Temporal || value instanceof TemporalAmount) {
      return value.toString();
    }
    if (value instanceof String || value instanceof Number || value instanceof Boolean) {
      return value;
    }
    throw new IllegalArgumentException(value.getClass() + " has no form in JSON");
  }

  /** What an entry says, and where it stands. */
  Members entry(Entry entry) {
    return new Members()
        .with("what", entry.what().word())
        .with("item", entry.item())
        .unlessEmpty("piece", entry.piece())
        .with("quantity", entry.shown())
        .with("time", of(entry.time()))
        .with("by", entry.by())
        .and(JsonForm.place(entry.place()));
  }

  /** The readings of a track are left to the evidence. */
  private Map<String, Object> components(Record record) {
    Members members = new Members();
    for (RecordComponent component : record.getClass().getRecordComponents()) {
      Object value = value(component, record);
      if (value instanceof Place place) {
        members.and(JsonForm.place(place));
      } else if (!(value instanceof Track)) {
        Optional<?> present = value instanceof Optional<?> maybe ? maybe : Optional.of(value);
        members.with(component.getName(), present.map(this::of));
      }
    }
    return members.tree();
  }

  private static Object value(RecordComponent component, Record record) {
    try {
      return Objects.requireNonNull(component.getAccessor().invoke(record), component.getName());
    } catch (ReflectiveOperationException impossible) {
      throw new LinkageError(record.getClass() + " hides " + component.getName(), impossible);
    }
  }

  /** The members of an object while it is put together, in their order. */
  static final class Members {

    private final Map<String, Object> tree = new LinkedHashMap<>();

    /** A stream becomes a list; what is missing has no key. */
    Members with(String key, Object value) {
      if (value instanceof Optional<?> maybe) {
        maybe.ifPresent(present -> with(key, present));
      } else {
        tree.put(key, plain(value));
      }
      return this;
    }

    private static Object plain(Object value) {
      if (value instanceof Stream<?> values) {
        return values.map(Members::plain).toList();
      }
      return value instanceof Members members ? members.tree : value;
    }

    Members unlessEmpty(String key, Object value) {
      boolean empty = value.equals("") || value.equals(List.of()) || value.equals(Map.of());
      return empty ? this : with(key, value);
    }

    Members and(Members more) {
      tree.putAll(more.tree);
      return this;
    }

    Map<String, Object> tree() {
      return tree;
    }
  }
}

package org.flitchbook.record;

import java.lang.reflect.RecordComponent;
import java.time.Instant;
import java.time.ZoneId;
import java.time.temporal.Temporal;
import java.time.temporal.TemporalAmount;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.flitchbook.input.Place;
import org.flitchbook.lot.Track;
import org.flitchbook.measure.Quantity;
import org.flitchbook.message.Argument;
import org.flitchbook.reading.Entry;
import org.flitchbook.reading.Moment;

/**
 * Values as maps, lists, texts and numbers. A record becomes a map with its components by their
 * names; a place that is one of them stands in that map itself, and what is empty has no key.
 *
 * @param zone in which times are written
 */
record JsonTree(ZoneId zone) {

  Object of(Object value) {
    if (value instanceof Quantity quantity) {
      return quantity(quantity);
    }
    if (value instanceof Entry entry) {
      return entry(entry);
    }
    if (value instanceof Place place) {
      return JsonForm.place(place);
    }
    if (value instanceof Argument argument) {
      return argument.json();
    }
    if (value instanceof Record record) {
      return record instanceof Moment moment ? time(moment.written()) : components(record);
    }
    if (value instanceof Collection<?> values) {
      return values.stream().map(this::of).toList();
    }
    return value instanceof Map<?, ?> map ? map(map) : single(value);
  }

  private Object single(Object value) {
    if (value instanceof Instant time) {
      return time(time);
    }
    if (value instanceof Temporal || value instanceof TemporalAmount) {
      return value.toString();
    }
    if (value instanceof String || value instanceof Number || value instanceof Boolean) {
      return value;
    }
    throw new IllegalArgumentException(value.getClass() + " has no form in JSON");
  }

  String time(Instant time) {
    return time.atZone(zone).toOffsetDateTime().toString();
  }

  private static Map<String, Object> quantity(Quantity quantity) {
    Map<String, Object> tree = new LinkedHashMap<>();
    tree.put("value", JsonForm.number(quantity));
    tree.put("unit", quantity.unit().symbol());
    return tree;
  }

  /** What an entry says, and where it stands. */
  Map<String, Object> entry(Entry entry) {
    Map<String, Object> tree = new LinkedHashMap<>();
    tree.put("what", entry.what().word());
    tree.put("item", entry.item());
    if (!entry.piece().isEmpty()) {
      tree.put("piece", entry.piece());
    }
    tree.put("quantity", entry.shown());
    tree.put("time", time(entry.time().written()));
    tree.put("by", entry.by());
    tree.putAll(JsonForm.place(entry.place()));
    return tree;
  }

  private Map<String, Object> map(Map<?, ?> map) {
    Map<String, Object> tree = new LinkedHashMap<>();
    map.forEach((key, value) -> tree.put(of(key).toString(), of(value)));
    return tree;
  }

  private Map<String, Object> components(Record record) {
    Map<String, Object> tree = new LinkedHashMap<>();
    for (RecordComponent component : record.getClass().getRecordComponents()) {
      Object value = value(component, record);
      Optional<?> present = value instanceof Optional<?> maybe ? maybe : Optional.of(value);
      present.ifPresent(each -> put(tree, component.getName(), each));
    }
    return tree;
  }

  /** The readings of a track are left to the evidence. */
  private void put(Map<String, Object> tree, String name, Object value) {
    if (value instanceof Place place) {
      tree.putAll(JsonForm.place(place));
    } else if (!(value instanceof Track)) {
      tree.put(name, of(value));
    }
  }

  private static Object value(RecordComponent component, Record record) {
    try {
      return Objects.requireNonNull(component.getAccessor().invoke(record), component.getName());
    } catch (ReflectiveOperationException impossible) {
      throw new LinkageError(record.getClass() + " hides " + component.getName(), impossible);
    }
  }
}

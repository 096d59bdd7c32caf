package org.flitchbook.json;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import org.flitchbook.Golden;
import org.flitchbook.measure.Dimension;
import org.flitchbook.measure.Unit;
import org.flitchbook.message.Listing;
import org.flitchbook.message.Message;

/** Writes what a binder takes for a record as JSON Schema 2020-12, for the help of an editor. */
public final class JsonSchema {

  private static final String NUMBER = "(0|[1-9][0-9]*)(\\.[0-9]+)?";

  /** What a text looks like whose format is no list of words, by the id of what is expected. */
  private static final Map<String, String> PATTERNS =
      Map.ofEntries(
          Map.entry("json.a-date", "^[0-9]{4}-[0-9]{2}-[0-9]{2}$"),
          Map.entry("reading.day-zero", "^[0-9]{4}-[0-9]{2}-[0-9]{2}$"),
          Map.entry("reading.offset.such-as", "^[+-][0-9]{1,6} ?(s|min|h)$"),
          Map.entry("practice.count", "^[1-9][0-9]*$"),
          Map.entry("json.a-zone", "^([A-Za-z_]+(/[A-Za-z0-9_+-]+)+|UTC|[+-][0-9]{2}:[0-9]{2})$"),
          Map.entry("json.a-number", "^" + NUMBER + "$"),
          Map.entry("doubt.rules.count", "^[0-9]{1,9}$"),
          Map.entry("plan.a-period", "^[1-9][0-9]? (year|month)s?$"),
          Map.entry("plan.support", "\\S"),
          Map.entry("plan.address", "^https?://\\S+$"),
          Map.entry("plan.fingerprint", "^([0-9A-Fa-f]{2}[: ]?){31}[0-9A-Fa-f]{2}$"),
          Map.entry("plan.difference", "^" + NUMBER + " (°F|°C)$"),
          Map.entry("plan.share-of-the-whole", "^" + NUMBER + " (%|ppm|mg/kg)$"),
          Map.entry("plan.share-of-rind", "^" + NUMBER + " (%|ppm|mg/kg)$"));

  /** Whatever a limit may measure. */
  private static final String AMOUNT = "^-?" + NUMBER + "( (°F|°C|%|ppm|mg/kg|s|min|h|d))?$";

  private final Map<String, Object> definitions = new TreeMap<>();
  private final Map<Class<?>, Map<String, Schema>> more;

  /**
   * @param more keys that the user of a record asks for itself
   */
  private JsonSchema(Map<Class<?>, Map<String, Schema>> more) {
    this.more = more;
  }

  /** Compares the file of that name in {@code docs/schema} with what the binder takes. */
  public static void check(
      String name, String title, Schema schema, Map<Class<?>, Map<String, Schema>> more) {
    Map<String, Object> tree = new LinkedHashMap<>();
    tree.put("$schema", "https://json-schema.org/draft/2020-12/schema");
    tree.put("$id", name);
    tree.put("title", title);
    JsonSchema writer = new JsonSchema(more);
    tree.putAll(writer.object((Schema.Members) schema));
    tree.put("$defs", writer.definitions);
    Golden.check(
        "../../../../../docs/schema/" + name, new String(Json.write(tree), StandardCharsets.UTF_8));
  }

  private Object of(Schema schema) {
    if (schema instanceof Schema.Text text) {
      return text(text.format());
    } else if (schema instanceof Schema.Measured) {
      return ordered("type", "string", "pattern", AMOUNT);
    } else if (schema instanceof Schema.Whole whole) {
      return whole.least() == whole.most()
          ? Map.of("const", whole.least())
          : ordered("type", "integer", "minimum", whole.least());
    } else if (schema instanceof Schema.Bool) {
      return Map.of("type", "boolean");
    } else if (schema instanceof Schema.Items list) {
      Object item = of(list.item());
      Map<String, Object> several =
          ordered("type", "array", "minItems", list.least(), "items", item);
      return list.alone() ? Map.of("anyOf", List.of(item, several)) : several;
    } else if (schema instanceof Schema.Entries map) {
      return ordered("type", "object", "additionalProperties", of(map.value()));
    }
    return defined(schema);
  }

  private static Map<String, Object> ordered(Object... pairs) {
    Map<String, Object> map = new LinkedHashMap<>();
    for (int i = 0; i < pairs.length; i += 2) {
      map.put((String) pairs[i], pairs[i + 1]);
    }
    return map;
  }

  private Object text(Format<?> format) {
    Message expected = format.expected();
    if (expected.id().equals("json.a-text")) {
      return Map.of("type", "string");
    }
    Object body =
        format.choices().isEmpty()
            ? ordered("type", "string", "pattern", pattern(expected))
            : Map.of("enum", format.choices());
    if (format.choices().size() < 10 || expected.id().equals("value")) {
      return body;
    }
    definitions.put(expected.id(), body);
    return Map.of("$ref", "#/$defs/" + expected.id());
  }

  private static String pattern(Message expected) {
    if (expected.id().equals("json.a-quantity") || expected.id().equals("practice.above-zero")) {
      Dimension dimension = (Dimension) expected.arguments().get(0);
      List<?> parts =
          expected.arguments().size() == 1
              ? Unit.of(dimension)
              : ((Listing) expected.arguments().get(1)).parts();
      List<String> units = parts.stream().map(Object::toString).toList();
      boolean signed = dimension == Dimension.TEMPERATURE || dimension == Dimension.LENGTH;
      String mass = dimension == Dimension.SHARE ? "|mg/kg" : "";
      return "^" + (signed ? "-?" : "") + NUMBER + " (" + String.join("|", units) + mass + ")$";
    }
    return Optional.ofNullable(PATTERNS.get(expected.id()))
        .orElseThrow(() -> new AssertionError("no pattern for " + expected.id()));
  }

  private Object defined(Schema schema) {
    Schema.Members around =
        schema instanceof Schema.Members members ? members : Schema.records(schema).get(0);
    String name =
        schema instanceof Schema.Members
            ? around.type().getSimpleName()
            : around.type().getInterfaces()[0].getSimpleName();
    if (!definitions.containsKey(name)) {
      definitions.put(name, Map.of());
      definitions.put(
          name, schema instanceof Schema.Members members ? object(members) : choice(schema));
    }
    return Map.of("$ref", "#/$defs/" + name);
  }

  private Map<String, Object> choice(Schema schema) {
    Shape shape = new Shape();
    shape.choice(schema);
    return shape.tree();
  }

  private Map<String, Object> object(Schema.Members members) {
    Shape shape = new Shape();
    shape.add(members);
    return shape.tree();
  }

  /** The members of one object, whichever records they come from. */
  private final class Shape {

    private final Map<String, Object> properties = new LinkedHashMap<>();
    private final Set<String> required = new LinkedHashSet<>();
    private final List<Object> conditions = new ArrayList<>();
    private final List<Schema.ByWord> words = new ArrayList<>();

    private void add(Schema.Members members) {
      for (Schema.Member member : members.members()) {
        if (member.schema() instanceof Schema.Self) {
          continue;
        }
        if (!member.inline()) {
          put(member);
        } else if (member.schema() instanceof Schema.Members inner) {
          add(inner);
        } else {
          choice(member.schema());
        }
      }
      more.getOrDefault(members.type(), Map.of()).forEach((key, each) -> put(key, of(each)));
    }

    private void put(Schema.Member member) {
      if (member.or().isPresent() && member.schema() instanceof Schema.Bool) {
        return;
      }
      put(member.key(), of(member.schema()));
      member.or().ifPresent(or -> put(or, of(member.schema())));
      if (member.or().isPresent()) {
        conditions.add(oneOf(List.of(member.key(), member.or().get())));
      } else if (member.required()) {
        required.add(member.key());
      }
    }

    /** Where two kinds have one key, either will do; what fits which stands in the conditions. */
    private void put(String key, Object schema) {
      Object before = properties.get(key);
      if (before instanceof Map<?, ?> map && map.get("anyOf") instanceof List<?> several) {
        Set<Object> all = new LinkedHashSet<>(several);
        all.add(schema);
        properties.put(key, Map.of("anyOf", List.copyOf(all)));
      } else {
        properties.put(
            key,
            before == null || before.equals(schema)
                ? schema
                : Map.of("anyOf", List.of(before, schema)));
      }
    }

    private void choice(Schema schema) {
      if (schema instanceof Schema.ByWord byWord) {
        properties.put(byWord.key(), Map.of("enum", List.copyOf(byWord.records().keySet())));
        required.add(byWord.key());
        words.add(byWord);
      } else {
        Schema.ByKey byKey = (Schema.ByKey) schema;
        conditions.add(oneOf(byKey.records().stream().map(byKey::mark).toList()));
      }
      for (Schema.Members each : Schema.records(schema)) {
        Shape shape = new Shape();
        shape.add(each);
        if (schema instanceof Schema.ByWord byWord) {
          shape.properties.remove(byWord.key());
        }
        shape.properties.forEach(this::put);
      }
    }

    private Object oneOf(List<String> keys) {
      return Map.of("oneOf", keys.stream().map(key -> Map.of("required", List.of(key))).toList());
    }

    private Map<String, Object> tree() {
      for (Schema.ByWord choice : words) {
        Set<String> common = new LinkedHashSet<>(properties.keySet());
        choice.records().values().forEach(each -> common.removeAll(each.keys()));
        common.add(choice.key());
        choice.records().forEach((word, each) -> conditions.add(only(choice, word, each, common)));
      }
      Map<String, Object> tree = new LinkedHashMap<>();
      tree.put("type", "object");
      tree.put("properties", properties);
      tree.put("required", List.copyOf(required));
      tree.put("additionalProperties", false);
      if (!conditions.isEmpty()) {
        tree.put("allOf", conditions);
      }
      return tree;
    }

    private Object only(
        Schema.ByWord choice, String word, Schema.Members record, Set<String> common) {
      Shape shape = new Shape();
      shape.add(record);
      shape.properties.remove(choice.key());
      Set<String> names = new LinkedHashSet<>(common);
      names.addAll(shape.properties.keySet());
      Map<String, Object> then = new LinkedHashMap<>();
      then.put("properties", shape.properties);
      then.put("required", List.copyOf(shape.required));
      then.put("propertyNames", Map.of("enum", List.copyOf(names)));
      if (!shape.conditions.isEmpty()) {
        then.put("allOf", shape.conditions);
      }
      Map<String, Object> when = Map.of("properties", Map.of(choice.key(), Map.of("const", word)));
      return ordered("if", when, "then", then);
    }
  }
}

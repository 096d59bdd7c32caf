package org.flitchbook.plan;

import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import org.flitchbook.json.Json;
import org.flitchbook.json.Node;

/**
 * As much of JSON Schema 2020-12 as the files in {@code docs/schema} use. A keyword that it does
 * not know is an error, so that none is passed over.
 */
final class Schemas {

  private static final Set<String> SILENT =
      Set.of("$schema", "$id", "$defs", "title", "description", "then", "else");

  private final Map<String, Node.Obj> files = new LinkedHashMap<>();

  /** A schema with the file that its references start from. */
  private record At(String file, Node schema) {}

  private Node.Obj file(String name) {
    return files.computeIfAbsent(name, each -> parse(Draft.text(Path.of("docs", "schema", each))));
  }

  static Node.Obj parse(String text) {
    return Json.read("", text.getBytes(StandardCharsets.UTF_8)).object().orElseThrow();
  }

  /** What of a document the schema does not allow. */
  List<String> faults(String schema, Node document) {
    return check(new At(schema, file(schema)), document, "$");
  }

  private List<String> check(At at, Node node, String path) {
    if (at.schema() instanceof Node.Bool allowed) {
      return allowed.value() ? List.of() : List.of(path + " not allowed");
    }
    Map<String, Node> schema = ((Node.Obj) at.schema()).members();
    List<String> faults = new ArrayList<>();
    for (Map.Entry<String, Node> keyword : schema.entrySet()) {
      faults.addAll(check(at, schema, keyword.getKey(), keyword.getValue(), node, path));
    }
    return faults;
  }

  private List<String> check(
      At at, Map<String, Node> schema, String keyword, Node value, Node node, String path) {
    return switch (keyword) {
      case "$ref" -> check(resolve(at.file(), text(value)), node, path);
      case "type" -> fault(isOf(text(value), node), path, "no " + text(value));
      case "minimum" ->
          fault(
              !(node instanceof Node.Num each) || each.value().intValue() >= number(value),
              path,
              "below " + number(value));
      case "const" -> fault(same(value, node), path, "not " + value.shown());
      case "enum" ->
          fault(items(value).stream().anyMatch(each -> same(each, node)), path, "not in the list");
      case "pattern" ->
          fault(
              !(node instanceof Node.Text text)
                  || Pattern.compile(text(value)).matcher(text.value()).find(),
              path,
              "not like " + text(value));
      case "minLength", "minItems", "minProperties" ->
          fault(size(node) >= number(value), path, keyword + " " + number(value));
      case "uniqueItems" -> fault(unique(node), path, "an item twice");
      case "properties", "required", "additionalProperties", "propertyNames" ->
          object(at, schema, keyword, value, node, path);
      case "items" -> eachItem(at, value, node, path);
      case "allOf", "anyOf", "oneOf" -> several(at, keyword, value, node, path);
      case "if" -> conditional(at, schema, node, path);
      default -> {
        if (!SILENT.contains(keyword)) {
          throw new AssertionError("the schema keyword " + keyword + " is not known here");
        }
        yield List.of();
      }
    };
  }

  private List<String> object(
      At at, Map<String, Node> schema, String keyword, Node value, Node node, String path) {
    if (!(node instanceof Node.Obj object)) {
      return List.of();
    }
    Map<String, Node> members = object.members();
    List<String> faults = new ArrayList<>();
    switch (keyword) {
      case "properties" ->
          ((Node.Obj) value)
              .members()
              .forEach(
                  (key, inner) -> {
                    if (members.containsKey(key)) {
                      faults.addAll(
                          check(new At(at.file(), inner), members.get(key), path + "." + key));
                    }
                  });
      case "required" ->
          items(value)
              .forEach(
                  key ->
                      faults.addAll(
                          fault(members.containsKey(text(key)), path, "no " + text(key))));
      case "propertyNames" ->
          members
              .keySet()
              .forEach(
                  key ->
                      faults.addAll(
                          check(
                              new At(at.file(), value),
                              new Node.Text(node.place(), key),
                              path + "." + key)));
      default -> {
        Set<String> known =
            schema.get("properties") instanceof Node.Obj named
                ? named.members().keySet()
                : Set.of();
        members.forEach(
            (key, inner) -> {
              if (!known.contains(key)) {
                faults.addAll(check(new At(at.file(), value), inner, path + "." + key));
              }
            });
      }
    }
    return faults;
  }

  private List<String> eachItem(At at, Node value, Node node, String path) {
    List<String> faults = new ArrayList<>();
    if (node instanceof Node.Items items) {
      for (Node item : items.items()) {
        faults.addAll(check(new At(at.file(), value), item, path + "[]"));
      }
    }
    return faults;
  }

  private List<String> several(At at, String keyword, Node value, Node node, String path) {
    List<String> all = new ArrayList<>();
    int passed = 0;
    for (Node each : items(value)) {
      List<String> faults = check(new At(at.file(), each), node, path);
      passed += faults.isEmpty() ? 1 : 0;
      all.addAll(faults);
    }
    boolean good = keyword.equals("oneOf") ? passed == 1 : passed > 0;
    return keyword.equals("allOf") ? all : fault(good, path, keyword + " of " + all);
  }

  private List<String> conditional(At at, Map<String, Node> schema, Node node, String path) {
    boolean holds = check(new At(at.file(), schema.get("if")), node, path).isEmpty();
    return Optional.ofNullable(schema.get(holds ? "then" : "else"))
        .map(branch -> check(new At(at.file(), branch), node, path))
        .orElse(List.of());
  }

  /** The keys that a schema names at a path such as {@code products[].limits[]}. */
  Set<String> keys(String schema, String path) {
    List<At> here = List.of(new At(schema, file(schema)));
    for (String part : path.isEmpty() ? new String[0] : path.split("\\.", -1)) {
      String key = part.replace("[]", "");
      here = here.stream().flatMap(at -> inner(at, "properties", key).stream()).toList();
      if (part.endsWith("[]")) {
        here = here.stream().flatMap(at -> inner(at, "items", "").stream()).toList();
      }
    }
    Set<String> keys = new TreeSet<>();
    here.forEach(at -> keys.addAll(properties(at).keySet()));
    return keys;
  }

  private List<At> inner(At at, String keyword, String key) {
    At known = deref(at);
    Node found =
        keyword.equals("items")
            ? ((Node.Obj) known.schema()).members().get("items")
            : properties(known).get(key);
    return found == null ? List.of() : List.of(deref(new At(known.file(), found)));
  }

  private Map<String, Node> properties(At at) {
    At known = deref(at);
    return known.schema() instanceof Node.Obj object
            && object.members().get("properties") instanceof Node.Obj properties
        ? properties.members()
        : Map.of();
  }

  /** A schema that is nothing but a reference stands for what it refers to. */
  private At deref(At at) {
    return at.schema() instanceof Node.Obj object
            && !object.members().containsKey("properties")
            && object.members().get("$ref") instanceof Node.Text reference
        ? deref(resolve(at.file(), reference.value()))
        : at;
  }

  private At resolve(String file, String reference) {
    String[] parts = reference.split("#/\\$defs/", 2);
    String name = parts[0].isEmpty() ? file : parts[0];
    Node found = ((Node.Obj) file(name).members().get("$defs")).members().get(parts[1]);
    if (found == null) {
      throw new AssertionError(reference + " leads nowhere");
    }
    return new At(name, found);
  }

  private static List<String> fault(boolean good, String path, String what) {
    return good ? List.of() : List.of(path + ": " + what);
  }

  private static boolean isOf(String type, Node node) {
    boolean whole = node instanceof Node.Num number && number.value().scale() <= 0;
    return type.equals("integer") ? whole : type.equals(type(node));
  }

  private static String type(Node node) {
    return switch (node.getClass().getSimpleName()) {
      case "Text" -> "string";
      case "Num" -> "number";
      case "Bool" -> "boolean";
      case "Items" -> "array";
      default -> "object";
    };
  }

  private static boolean same(Node a, Node b) {
    if (a instanceof Node.Text x && b instanceof Node.Text y) {
      return x.value().compareTo(y.value()) == 0;
    }
    return a instanceof Node.Num x
        && b instanceof Node.Num y
        && x.value().compareTo(y.value()) == 0;
  }

  private static boolean unique(Node node) {
    List<String> shown = items(node).stream().map(Node::shown).toList();
    return shown.stream().distinct().count() == shown.size();
  }

  private static int size(Node node) {
    if (node instanceof Node.Text text) {
      return text.value().length();
    }
    return node instanceof Node.Obj object ? object.members().size() : items(node).size();
  }

  private static List<Node> items(Node node) {
    return ((Node.Items) node).items();
  }

  private static String text(Node node) {
    return ((Node.Text) node).value();
  }

  private static int number(Node node) {
    BigDecimal value = ((Node.Num) node).value();
    return value.intValueExact();
  }
}

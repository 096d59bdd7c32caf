package org.flitchbook.change;

import static java.util.Optional.ofNullable;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.flitchbook.input.Place;
import org.flitchbook.input.SourceFile;
import org.flitchbook.json.Json;
import org.flitchbook.json.Node;
import org.flitchbook.message.Message;

/**
 * The keys of a JSON file whose values changed. An object in a list is known by its {@code id},
 * {@code code}, {@code initials}, {@code name} or {@code file}, so that one put in before it
 * doesn't make all that follow look changed.
 */
final class KeyChanges {

  private static final List<String> NAMES = List.of("id", "code", "initials", "name", "file");

  private KeyChanges() {}

  /** The changes; empty where one of the files can't be read. */
  static Optional<List<Change>> between(SourceFile before, SourceFile now) {
    Optional<Node.Obj> old = Json.read(before.name(), before.bytes()).object();
    Optional<Node.Obj> current = Json.read(now.name(), now.bytes()).object();
    return old.isEmpty() || current.isEmpty()
        ? Optional.empty()
        : Optional.of(between(leaves(old.get()), leaves(current.get())));
  }

  private static List<Change> between(Map<String, Node> old, Map<String, Node> now) {
    Map<String, Node> all = new LinkedHashMap<>(now);
    old.forEach(all::putIfAbsent);
    return all.keySet().stream()
        .flatMap(path -> between(path, ofNullable(old.get(path)), ofNullable(now.get(path))))
        .toList();
  }

  private static Stream<Change> between(String path, Optional<Node> old, Optional<Node> now) {
    Place was = old.or(() -> now).orElseThrow().place();
    Place is = now.map(Node::place).orElse(was);
    Change change =
        Change.of(
            new Place(was.file(), was.line(), path),
            new Place(is.file(), is.line(), path),
            old.map(KeyChanges::shown),
            now.map(KeyChanges::shown));
    return old.map(KeyChanges::says).equals(now.map(KeyChanges::says))
        ? Stream.of()
        : Stream.of(change);
  }

  /** The values that hold no other values, by the path that leads to them. */
  private static Map<String, Node> leaves(Node.Obj root) {
    Map<String, Node> leaves = new LinkedHashMap<>();
    collect("", root, leaves);
    return leaves;
  }

  private static void collect(String path, Node node, Map<String, Node> leaves) {
    if (node instanceof Node.Obj object && !object.members().isEmpty()) {
      String inside = path.isEmpty() ? "" : path + ".";
      object.members().forEach((key, value) -> collect(inside + key, value, leaves));
    } else if (node instanceof Node.Items list && !list.items().isEmpty()) {
      for (int i = 0; i < list.items().size(); i++) {
        Node item = list.items().get(i);
        collect(path + "[" + item.firstText(NAMES).orElse(String.valueOf(i)) + "]", item, leaves);
      }
    } else {
      String free = path;
      for (int again = 2; leaves.containsKey(free); again++) {
        free = path + " (" + again + ")";
      }
      leaves.put(free, node);
    }
  }

  /** The whole value, where {@link Node#shown} may cut it short; 1.0 is 1. */
  private static String says(Node node) {
    if (node instanceof Node.Text text) {
      return "\"" + text.value();
    }
    return node instanceof Node.Num number
        ? number.value().stripTrailingZeros().toString()
        : node.shown();
  }

  private static Message shown(Node node) {
    return Message.of(node instanceof Node.Text text ? "\"" + text.value() + "\"" : node.shown());
  }
}

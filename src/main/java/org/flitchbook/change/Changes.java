package org.flitchbook.change;

import static java.util.Optional.ofNullable;
import static java.util.function.Function.identity;
import static java.util.stream.Collectors.toMap;
import static org.flitchbook.message.Message.say;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.flitchbook.input.Place;
import org.flitchbook.input.SourceFile;
import org.flitchbook.json.Json;
import org.flitchbook.json.Node;
import org.flitchbook.message.Message;
import org.flitchbook.sheet.Sheet;
import org.jspecify.annotations.Nullable;

/** Compares two sets of files: those that a record was made from, and those that are there now. */
public final class Changes {

  /** More of one file are counted, not listed: a record must stay one that can be read. */
  private static final int MOST = 200;

  private static final int SHORT_HASH = 12;

  private Changes() {}

  /** What changed where only the hashes are known: which files, and no more. */
  public static List<Change> ofHashes(
      SortedMap<String, String> before, SortedMap<String, String> now) {
    Map<String, String> all = new TreeMap<>(before);
    all.putAll(now);
    return all.keySet().stream()
        .filter(name -> !Objects.equals(before.get(name), now.get(name)))
        .map(name -> whole(name, ofHash(before.get(name)), ofHash(now.get(name))))
        .toList();
  }

  private static Optional<Message> ofHash(@Nullable String hash) {
    return ofNullable(hash).map(known -> say("change.hash", "a file with the SHA-256 {0}", known));
  }

  /** A change of something that stands in no file. */
  public static Change stated(Message name, Object old, Object now) {
    Place none = Place.of("");
    return new Change(
        Optional.of(name), none, none, Optional.of(Message.of(old)), Optional.of(Message.of(now)));
  }

  /** What changed, file by file in the order of their names; empty where nothing did. */
  public static List<Change> between(List<SourceFile> before, List<SourceFile> now) {
    Map<String, SourceFile> old = named(before);
    Map<String, SourceFile> current = named(now);
    Map<String, SourceFile> all = new TreeMap<>(old);
    all.putAll(current);
    return all.keySet().stream()
        .map(name -> between(ofNullable(old.get(name)), ofNullable(current.get(name))))
        .flatMap(changes -> atMost(changes).stream())
        .toList();
  }

  private static Map<String, SourceFile> named(List<SourceFile> files) {
    return files.stream().collect(toMap(SourceFile::name, identity(), (first, again) -> again));
  }

  private static List<Change> between(Optional<SourceFile> old, Optional<SourceFile> now) {
    if (old.isPresent() && now.isPresent() && old.get().content().equals(now.get().content())) {
      return List.of();
    }
    SourceFile either = old.or(() -> now).orElseThrow();
    Optional<List<Change>> inside = Optional.empty();
    if (Sheet.ofFile(either.baseName()).isPresent()) {
      inside = SheetChanges.between(old, now);
    } else if (old.isPresent() && now.isPresent()) {
      inside = inside(old.get(), now.get());
    }
    return inside
        .filter(found -> !found.isEmpty())
        .orElseGet(
            () -> List.of(whole(either.name(), old.map(Changes::shown), now.map(Changes::shown))));
  }

  private static Optional<List<Change>> inside(SourceFile old, SourceFile now) {
    String name = now.name().toLowerCase(Locale.ROOT);
    if (name.endsWith(".csv")) {
      return Optional.of(LogChanges.between(old, now));
    }
    return name.endsWith(".json") ? Keys.between(old, now) : Optional.empty();
  }

  private static Change whole(String name, Optional<Message> old, Optional<Message> now) {
    Place file = Place.of(name);
    return Change.of(file, file, old, now);
  }

  private static Message shown(SourceFile file) {
    String hash = file.sha256().substring(0, SHORT_HASH);
    return say(
        "change.file", "a file of {0} bytes, SHA-256 {1} …", file.content().remaining(), hash);
  }

  private static List<Change> atMost(List<Change> changes) {
    if (changes.size() <= MOST) {
      return changes;
    }
    Message more = say("change.more", "and {0} more changes in this file", changes.size() - MOST);
    String file = changes.get(0).place().file();
    Change rest = whole(file, Optional.of(Message.of("…")), Optional.of(more));
    return Stream.concat(changes.stream().limit(MOST), Stream.of(rest)).toList();
  }

  /**
   * The keys of a JSON file whose values changed. An object in a list is known by its {@code id},
   * {@code code}, {@code initials}, {@code name} or {@code file}, so that one put in before it
   * doesn't make all that follow look changed.
   */
  private static final class Keys {

    private static final List<String> NAMES = List.of("id", "code", "initials", "name", "file");

    private Keys() {}

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
              old.map(Keys::shown),
              now.map(Keys::shown));
      return old.map(Keys::says).equals(now.map(Keys::says)) ? Stream.of() : Stream.of(change);
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
}

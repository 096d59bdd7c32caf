package org.flitchbook.evidence;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Collectors;
import org.flitchbook.input.SourceFile;
import org.flitchbook.json.Json;
import org.flitchbook.json.Node;
import org.jspecify.annotations.Nullable;

/**
 * Fills in what the templates of an older record do not have yet: a file or a number that stood in
 * the code of the version that made it. What a record carries is never replaced, and a rule that it
 * does not carry is not added.
 */
final class EarlierTemplates {

  /** For each version the templates, or the parts of them, that came after it. */
  private static final List<String> VERSIONS = List.of("0.1.0");

  /** The member by which the items of a list are told apart. */
  private static final List<String> NAMES = List.of("rule", "id", "name");

  private EarlierTemplates() {}

  /**
   * The files of a record with what its version had in its code.
   *
   * @param tool the version that made the record
   * @param folder under which a record carries the templates of the program
   */
  static List<SourceFile> filledIn(String tool, List<SourceFile> sources, String folder) {
    if (!VERSIONS.contains(tool)) {
      return sources;
    }
    Map<String, SourceFile> files =
        sources.stream()
            .collect(
                Collectors.toMap(
                    SourceFile::name, file -> file, (one, other) -> one, LinkedHashMap::new));
    later(tool).members().forEach((name, added) -> fillIn(files, name, (Node.Obj) added, folder));
    return List.copyOf(files.values());
  }

  private static void fillIn(
      Map<String, SourceFile> files, String name, Node.Obj added, String folder) {
    String known = files.containsKey(name) ? name : folder + name;
    SourceFile file = files.get(known);
    Optional<Node.Obj> tree =
        file == null ? Optional.of(added) : Json.read(known, file.bytes()).object();
    tree.map(each -> SourceFile.of(known, Json.write(merged(each, added))))
        .ifPresent(whole -> files.put(known, whole));
  }

  private static Node.Obj later(String tool) {
    String name = "after-" + tool + ".json";
    try (InputStream in =
        Objects.requireNonNull(EarlierTemplates.class.getResourceAsStream(name), name)) {
      return Json.read(name, in.readAllBytes()).object().orElseThrow();
    } catch (IOException unreadable) {
      throw new UncheckedIOException(name + " can't be read", unreadable);
    }
  }

  /** The members of both; where both have one that is a value, that of the record. */
  private static Map<String, Object> merged(Node.Obj own, Node.Obj added) {
    Map<String, Object> members = new LinkedHashMap<>();
    added.members().forEach((key, value) -> members.put(key, tree(value)));
    own.members()
        .forEach((key, value) -> members.put(key, merged(value, added.members().get(key))));
    return members;
  }

  private static @Nullable Object merged(Node own, @Nullable Node added) {
    if (own instanceof Node.Obj one && added instanceof Node.Obj other) {
      return merged(one, other);
    }
    if (own instanceof Node.Items items && added instanceof Node.Items others) {
      List<Object> all = new ArrayList<>();
      items.items().forEach(each -> all.add(merged(each, ofSameName(each, others))));
      return all;
    }
    return tree(own);
  }

  private static @Nullable Node ofSameName(Node item, Node.Items others) {
    Optional<String> name = item.firstText(NAMES);
    return others.items().stream()
        .filter(other -> name.isPresent() && name.equals(other.firstText(NAMES)))
        .findFirst()
        .orElse(null);
  }

  private static @Nullable Object tree(@Nullable Node node) {
    if (node instanceof Node.Obj object) {
      Map<String, Object> members = new LinkedHashMap<>();
      object.members().forEach((key, value) -> members.put(key, tree(value)));
      return members;
    }
    if (node instanceof Node.Items items) {
      return items.items().stream().map(EarlierTemplates::tree).toList();
    }
    if (node instanceof Node.Num number) {
      return number.value();
    }
    if (node instanceof Node.Bool bool) {
      return bool.value();
    }
    return node instanceof Node.Text text ? text.value() : null;
  }
}

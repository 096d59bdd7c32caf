package org.flitchbook.evidence;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
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
   */
  static List<SourceFile> filledIn(String tool, List<SourceFile> sources) {
    if (!VERSIONS.contains(tool)) {
      return sources;
    }
    Map<String, SourceFile> files = new LinkedHashMap<>();
    sources.forEach(file -> files.putIfAbsent(file.name(), file));
    later(tool).members().forEach((name, added) -> fillIn(files, name, added));
    return List.copyOf(files.values());
  }

  private static void fillIn(Map<String, SourceFile> files, String name, Node added) {
    String known = files.containsKey(name) ? name : RecordEvidence.TOOL + name;
    SourceFile file = files.get(known);
    Optional<? extends Node> own =
        file == null ? Optional.of(added) : Json.read(known, file.bytes()).object();
    own.map(each -> Objects.requireNonNull(merged(each.tree(), added.tree())))
        .ifPresent(tree -> files.put(known, SourceFile.of(known, Json.write(tree))));
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
  private static @Nullable Object merged(@Nullable Object own, @Nullable Object added) {
    if (own instanceof Map<?, ?> one && added instanceof Map<?, ?> other) {
      Map<Object, Object> members = new LinkedHashMap<>(other);
      one.forEach((key, value) -> members.put(key, merged(value, other.get(key))));
      return members;
    }
    if (own instanceof List<?> items && added instanceof List<?> others) {
      return items.stream().map(each -> merged(each, ofSameName(each, others))).toList();
    }
    return own;
  }

  private static @Nullable Object ofSameName(@Nullable Object item, List<?> others) {
    Optional<?> name = name(item);
    return others.stream()
        .filter(other -> name.isPresent() && name.equals(name(other)))
        .findFirst()
        .orElse(null);
  }

  private static Optional<?> name(@Nullable Object item) {
    return item instanceof Map<?, ?> members
        ? NAMES.stream().map(members::get).filter(String.class::isInstance).findFirst()
        : Optional.empty();
  }
}

package org.flitchbook.change;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import org.flitchbook.input.Place;
import org.flitchbook.input.SourceFile;
import org.flitchbook.sheet.Sheet;
import org.flitchbook.words.Words;

/** Compares two sets of files: those that a record was made from, and those that are there now. */
public final class Changes {

  /** More of one file are counted, not listed: a record must stay one that can be read. */
  private static final int MOST = 200;

  private static final int SHORT_HASH = 12;

  private final Words words;

  private Changes(Words words) {
    this.words = words;
  }

  /**
   * What changed, file by file in the order of their names; empty where nothing did.
   *
   * @param words for what is told of rows and files as a whole
   */
  public static List<Change> between(Words words, List<SourceFile> before, List<SourceFile> now) {
    return new Changes(words).between(before, now);
  }

  /** What changed where only the hashes are known: which files, and no more. */
  public static List<Change> ofHashes(
      Words words, SortedMap<String, String> before, SortedMap<String, String> now) {
    Map<String, String> all = new TreeMap<>(before);
    all.putAll(now);
    return all.keySet().stream()
        .flatMap(
            name ->
                ofHash(
                    words,
                    name,
                    Optional.ofNullable(before.get(name)),
                    Optional.ofNullable(now.get(name)))
                    .stream())
        .toList();
  }

  private static Optional<Change> ofHash(
      Words words, String name, Optional<String> before, Optional<String> now) {
    Place file = Place.of(name);
    Optional<String> old =
        before.map(hash -> words.say("change.hash", "a file with the SHA-256 {0}", hash));
    Optional<String> current =
        now.map(hash -> words.say("change.hash", "a file with the SHA-256 {0}", hash));
    if (old.isEmpty() || current.isEmpty()) {
      return old.map(hash -> Change.removed(file, hash))
          .or(() -> current.map(hash -> Change.added(file, hash)));
    }
    return old.equals(current)
        ? Optional.empty()
        : Optional.of(Change.changed(file, file, old.get(), current.get()));
  }

  /** A change of something that stands in no file. */
  public static Change stated(String name, String old, String now) {
    return Change.changed(Place.of(name), Place.of(name), old, now);
  }

  private List<Change> between(List<SourceFile> before, List<SourceFile> now) {
    Map<String, SourceFile> old = named(before);
    Map<String, SourceFile> current = named(now);
    Map<String, SourceFile> all = new TreeMap<>(old);
    all.putAll(current);
    List<Change> changes = new ArrayList<>();
    for (String name : all.keySet()) {
      changes.addAll(
          atMost(
              between(Optional.ofNullable(old.get(name)), Optional.ofNullable(current.get(name)))));
    }
    return changes;
  }

  private static Map<String, SourceFile> named(List<SourceFile> files) {
    Map<String, SourceFile> named = new TreeMap<>();
    files.forEach(file -> named.put(file.name(), file));
    return named;
  }

  private List<Change> between(Optional<SourceFile> old, Optional<SourceFile> now) {
    if (old.isPresent() && now.isPresent() && old.get().content().equals(now.get().content())) {
      return List.of();
    }
    SourceFile either = old.or(() -> now).orElseThrow();
    Optional<List<Change>> inside = Optional.empty();
    if (Sheet.ofFile(either.baseName()).isPresent()) {
      inside = SheetChanges.between(words, old, now);
    } else if (old.isPresent() && now.isPresent()) {
      inside = inside(old.get(), now.get());
    }
    return inside.filter(found -> !found.isEmpty()).orElseGet(() -> List.of(whole(old, now)));
  }

  private Optional<List<Change>> inside(SourceFile old, SourceFile now) {
    String name = now.name().toLowerCase(Locale.ROOT);
    if (name.endsWith(".csv")) {
      return Optional.of(LogChanges.between(words, old, now));
    }
    return name.endsWith(".json") ? KeyChanges.between(old, now) : Optional.empty();
  }

  private Change whole(Optional<SourceFile> old, Optional<SourceFile> now) {
    if (old.isEmpty()) {
      SourceFile added = now.orElseThrow();
      return Change.added(Place.of(added.name()), shown(added));
    }
    Place place = Place.of(old.get().name());
    return now.map(file -> Change.changed(place, place, shown(old.get()), shown(file)))
        .orElseGet(() -> Change.removed(place, shown(old.get())));
  }

  private String shown(SourceFile file) {
    String hash = file.sha256().substring(0, SHORT_HASH);
    return words.say(
        "change.file", "a file of {0} bytes, SHA-256 {1} …", file.content().remaining(), hash);
  }

  private List<Change> atMost(List<Change> changes) {
    if (changes.size() <= MOST) {
      return changes;
    }
    List<Change> shorter = new ArrayList<>(changes.subList(0, MOST));
    Place file = Place.of(changes.get(0).place().file());
    String more =
        words.say("change.more", "and {0} more changes in this file", changes.size() - MOST);
    shorter.add(Change.changed(file, file, "…", more));
    return shorter;
  }
}

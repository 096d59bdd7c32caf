package org.flitchbook.change;

import static java.util.Optional.ofNullable;
import static java.util.function.Function.identity;
import static java.util.stream.Collectors.toMap;
import static org.flitchbook.message.Message.say;

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
    return name.endsWith(".json") ? KeyChanges.between(old, now) : Optional.empty();
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
}

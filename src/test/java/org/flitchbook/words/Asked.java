package org.flitchbook.words;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * What the sources of the program ask for: every literal that looks like a key of a room, and the
 * words of every family.
 *
 * @param families the names of the families, as they stand in the calls
 */
record Asked(Set<String> keys, Set<String> families) {

  private static final Path SOURCES = Path.of("src", "main", "java", "org", "flitchbook");

  /** The rooms that have wording. The other roots of keys are families. */
  private static final List<String> ROOMS =
      List.of(
          "words",
          "document",
          "pdf",
          "record",
          "check",
          "input",
          "disk",
          "book",
          "planning",
          "judging",
          "evidence",
          "archive",
          "closing",
          "keys",
          "signing",
          "proving",
          "tracing",
          "cli",
          "ledger",
          "sign",
          "change",
          "planned",
          "lot",
          "doubt",
          "reading");

  private static final Pattern KEY =
      Pattern.compile("\"((?:" + String.join("|", ROOMS) + ")(?:\\.[a-z0-9-]+)+)\"");

  /** Files that lie in a book's folder. */
  private static final Set<String> FILES = Set.of("ledger.jsonl", "ledger.lock", "ledger.torn-");

  private static final Pattern COUNTED = Pattern.compile("\\bcount\\(\\s*\"([^\"]+\\.[^\"]+)\"");
  private static final Pattern WORD = Pattern.compile("\\b(?:word|either)\\(\\s*\"([^\"]+)\",");

  static Asked bySources() {
    Asked asked = new Asked(new TreeSet<>(), new TreeSet<>());
    try (Stream<Path> files = Files.walk(SOURCES)) {
      files.filter(file -> file.toString().endsWith(".java")).forEach(asked::read);
    } catch (IOException unreadable) {
      throw new UncheckedIOException(unreadable);
    }
    Families.ALL.forEach(
        (family, words) -> words.forEach(word -> asked.keys.add(Words.key(family, word))));
    return asked;
  }

  private void read(Path file) {
    String text = text(file);
    Set<String> counted = new TreeSet<>();
    Matcher count = COUNTED.matcher(text);
    while (count.find()) {
      counted.add(count.group(1));
      keys.add(count.group(1) + ".one");
      keys.add(count.group(1) + ".many");
    }
    KEY.matcher(text).results().map(each -> each.group(1)).forEach(keys::add);
    keys.removeAll(FILES);
    keys.removeAll(counted);
    WORD.matcher(text).results().map(each -> each.group(1)).forEach(families::add);
  }

  private static String text(Path file) {
    try {
      return Files.readString(file);
    } catch (IOException unreadable) {
      throw new UncheckedIOException(unreadable);
    }
  }
}

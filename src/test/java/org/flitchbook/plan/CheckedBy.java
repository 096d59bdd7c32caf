package org.flitchbook.plan;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Which test classes name a limit: in their own source, or in a table of limits whose name they
 * name.
 *
 * @param texts what each test class says, its tables included, by its simple name
 */
record CheckedBy(Map<String, String> texts) {

  private static final Path SOURCES = Path.of("src", "test", "java");
  private static final Path TABLES =
      Path.of("src", "test", "resources", "org", "flitchbook", "plan");
  private static final int SHOWN = 3;

  static CheckedBy read() {
    List<Path> tables = files(TABLES, ".csv");
    Map<String, String> texts = new TreeMap<>();
    for (Path source : files(SOURCES, "Test.java")) {
      String text = Draft.text(source);
      String rows =
          tables.stream()
              .filter(table -> text.contains(name(table)))
              .map(CheckedBy::letters)
              .collect(Collectors.joining("\n"));
      texts.merge(name(source).replace(".java", ""), text + "\n" + rows, String::concat);
    }
    return new CheckedBy(texts);
  }

  /** Ids are ASCII, and some tables are in another encoding on purpose. */
  private static String letters(Path table) {
    try {
      return Files.readString(table, StandardCharsets.ISO_8859_1);
    } catch (IOException unread) {
      throw new UncheckedIOException(unread);
    }
  }

  private static List<Path> files(Path folder, String end) {
    try (Stream<Path> all = Files.walk(folder)) {
      return all.filter(path -> name(path).endsWith(end)).sorted().toList();
    } catch (IOException unread) {
      throw new UncheckedIOException(unread);
    }
  }

  private static String name(Path path) {
    return String.valueOf(path.getFileName());
  }

  /** The simple names, sorted. An id that is only a part of another one is not named by it. */
  Set<String> of(String id) {
    Pattern whole = Pattern.compile("(?<![\\w.-])" + Pattern.quote(id) + "(?![\\w-]|\\.\\w)");
    Set<String> names = new TreeSet<>();
    texts.forEach(
        (name, text) -> {
          if (text.contains(id) && whole.matcher(text).find()) {
            names.add(name);
          }
        });
    return names;
  }

  /** The first three of them. */
  String shortly(String id) {
    Set<String> names = of(id);
    String first = names.stream().limit(SHOWN).collect(Collectors.joining(", "));
    return names.size() > SHOWN ? first + ", …" : first;
  }
}

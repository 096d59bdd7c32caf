package org.flitchbook.words;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * What the program can say, gathered from its sources: each id with the English that stands beside
 * it.
 *
 * @param texts by id
 * @param twice ids that are said in two ways
 * @param families the closed sets whose words are asked for
 */
public record Said(Map<String, String> texts, List<String> twice, Set<String> families) {

  private static final Path SOURCES = Path.of("src", "main", "java", "org", "flitchbook");

  private static final String LITERAL = "\"(?:[^\"\\\\]|\\\\.)*\"";
  private static final String TEXT = "(" + LITERAL + "(?:\\s*\\+\\s*" + LITERAL + ")*)";
  private static final String ID = "\"([a-z][a-z-]*(?:\\.[a-z0-9-]+)+)\"";

  /** An id and behind it a text among the arguments of any call; a limit has an id of its own. */
  private static final Pattern SAY = Pattern.compile("(?<!\\blimit)[(,]\\s*" + ID + ",\\s*" + TEXT);

  /** The same with a number between them, and a text for one and one for many. */
  private static final Pattern COUNT =
      Pattern.compile("\\bcount\\([^\"]*" + ID + ",[^\"]*?,\\s*" + TEXT + ",\\s*" + TEXT);

  private static final Pattern FAMILY =
      Pattern.compile("\\b(?:word|Word|either)\\(\\s*\"([a-z-]+)\",");

  public static Said bySources() {
    Said said = new Said(new TreeMap<>(), new ArrayList<>(), new TreeSet<>());
    try (Stream<Path> files = Files.walk(SOURCES)) {
      files.filter(file -> file.toString().endsWith(".java")).forEach(said::read);
    } catch (IOException unreadable) {
      throw new UncheckedIOException(unreadable);
    }
    return said;
  }

  private void read(Path file) {
    String source = text(file);
    SAY.matcher(source).results().forEach(each -> put(each.group(1), each.group(2)));
    Matcher counts = COUNT.matcher(source);
    while (counts.find()) {
      put(counts.group(1) + ".one", counts.group(2));
      put(counts.group(1) + ".many", counts.group(3));
    }
    FAMILY.matcher(source).results().forEach(each -> families.add(each.group(1)));
  }

  private void put(String id, String literals) {
    String english =
        Pattern.compile(LITERAL)
            .matcher(literals)
            .results()
            .map(each -> each.group().substring(1, each.group().length() - 1))
            .collect(Collectors.joining())
            .replace("\\u00a0", "\u00a0")
            .translateEscapes();
    String before = texts.put(id, english);
    if (before != null && !before.equals(english)) {
      twice.add(id + ": \"" + before + "\" and \"" + english + "\"");
    }
  }

  private static String text(Path file) {
    try {
      return Files.readString(file);
    } catch (IOException unreadable) {
      throw new UncheckedIOException(unreadable);
    }
  }
}

package org.flitchbook.look;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.flitchbook.input.SourceFile;

/**
 * A log of the collection, as its page describes it.
 *
 * @param byHand how somebody would read it, see {@link ByHand}; empty where it is refused
 * @param figures rows, first and last time, and of each column least, greatest and count
 * @param answers to the questions of an entry that the columns do not answer
 * @param says what {@code look} must say
 */
record Shape(String log, String byHand, String figures, Map<String, String> answers, String says) {

  private static final Path FOLDER =
      Path.of("src", "test", "resources", "org", "flitchbook", "look");

  static final Path PAGE = FOLDER.resolve("shapes.md");

  static List<Shape> all() {
    try {
      Map<String, String> says = new HashMap<>();
      rows("| log | `look` says |").forEach(row -> says.put(row.get(0), row.get(1)));
      Stream<Shape> read =
          rows("| log | by hand | rows | first | last | values | answers |")
              .map(row -> read(row, says.get(row.get(0))));
      Stream<Shape> refused =
          rows("| log | refused as |")
              .map(row -> new Shape(row.get(0), "", "", Map.of(), row.get(1)));
      return Stream.concat(read, refused).toList();
    } catch (IOException unreadable) {
      throw new UncheckedIOException(unreadable);
    }
  }

  private static Shape read(List<String> row, String says) {
    Map<String, String> answers = new HashMap<>();
    Arrays.stream(row.get(6).split("; "))
        .filter(answer -> !answer.isEmpty())
        .map(answer -> answer.split(" ", 2))
        .forEach(answer -> answers.put(answer[0], answer[1]));
    return new Shape(
        row.get(0), row.get(1), String.join(" | ", row.subList(2, 6)), Map.copyOf(answers), says);
  }

  /** The rows of the table of the page with that heading. */
  static Stream<List<String>> rows(String heading) throws IOException {
    return Files.readAllLines(PAGE).stream()
        .dropWhile(line -> !line.equals(heading))
        .skip(2)
        .takeWhile(line -> line.startsWith("|"))
        .map(line -> line.substring(2, line.length() - 2).split(" \\| ", -1))
        .map(cells -> Arrays.stream(cells).map(cell -> cell.strip().replace("\\|", "|")).toList());
  }

  boolean isRefused() {
    return byHand.isEmpty();
  }

  byte[] bytes() {
    try {
      return Files.readAllBytes(FOLDER.resolve(log));
    } catch (IOException unreadable) {
      throw new UncheckedIOException(unreadable);
    }
  }

  SourceFile file() {
    return SourceFile.of("2026-02-24/" + log, bytes());
  }

  static SourceFile layout(String json) {
    return SourceFile.of("2026-02-24/logs.json", json.getBytes(UTF_8));
  }

  /** The files beside the page. */
  static List<String> files() throws IOException {
    try (Stream<Path> files = Files.list(FOLDER)) {
      return files
          .filter(file -> !file.equals(PAGE))
          .map(file -> String.valueOf(file.getFileName()))
          .sorted()
          .toList();
    }
  }
}

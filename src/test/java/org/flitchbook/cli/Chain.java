package org.flitchbook.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import org.flitchbook.ledger.Event;
import org.flitchbook.ledger.Ledger;
import org.flitchbook.ledger.LedgerLine;

/** A book's ledger as its file has it. */
final class Chain {

  private Chain() {}

  static Path file(Path book) {
    return book.resolve("ledger.jsonl");
  }

  /** The finished lines: one without an end is none. */
  static List<JsonNode> lines(Path book) {
    String text = Tree.text(file(book));
    return text.substring(0, text.lastIndexOf('\n') + 1).lines().map(Ran::json).toList();
  }

  /** The events, each as its word, its revision and what it is about. */
  static List<String> events(Path book) {
    return lines(book).stream()
        .map(
            line ->
                (line.get("event").asText()
                        + " r"
                        + line.get("revision").asText()
                        + " "
                        + line.get("about").asText())
                    .strip())
        .toList();
  }

  static JsonNode last(Path book) {
    List<JsonNode> lines = lines(book);
    return lines.get(lines.size() - 1);
  }

  /** The texts of an object of a line, by their keys. */
  static Map<String, String> texts(JsonNode object) {
    Map<String, String> texts = new TreeMap<>();
    object.fieldNames().forEachRemaining(key -> texts.put(key, object.get(key).asText()));
    return texts;
  }

  /** The last revision of which it tells. */
  static int revision(Path book) {
    return lines(book).stream().mapToInt(line -> line.get("revision").asInt()).max().orElse(0);
  }

  /** What breaks the chain; a torn last line does not. */
  static List<String> broken(Path book) {
    return Ledger.read(Tree.bytes(file(book))).faults().stream().map(Object::toString).toList();
  }

  /** What breaks the chain, and a torn last line. */
  static List<String> faults(Path book) {
    Ledger ledger = Ledger.read(Tree.bytes(file(book)));
    return Stream.concat(ledger.faults().stream(), ledger.torn().stream())
        .map(Object::toString)
        .toList();
  }

  /** The events of a book, changed by somebody, in a chain that holds. */
  static void rewrite(Path book, UnaryOperator<List<Event>> change) {
    Ledger ledger = Ledger.read(Tree.bytes(file(book)));
    List<Event> events = new ArrayList<>(ledger.lines().stream().map(LedgerLine::event).toList());
    byte[] chain = Ledger.read(new byte[0]).append(change.apply(events));
    Tree.write(book, () -> Files.write(file(book), chain));
    assertEquals(List.of(), faults(book));
  }
}

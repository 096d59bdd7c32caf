package org.flitchbook.cli;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import org.flitchbook.input.SourceFile;
import org.flitchbook.ledger.Event;
import org.flitchbook.ledger.EventType;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.io.TempDir;

/** Somebody who owns the folder changes a file, and hangs on or changes a line to match. */
final class ForgedLedgerTest {

  private static final LocalDate DAY = LocalDate.parse(Tree.DAY);
  private static final String R1 = "records/" + Tree.DAY + "/r1/";
  private static final String JSON = R1 + "26047-B1.json";
  private static final String PDF = R1 + "26047-B1.pdf";

  @TempDir private static Path shared;
  private static Path signed;

  @TempDir private Path folder;

  @BeforeAll
  static void sign() {
    signed = Smokeyard.signed(shared).book;
  }

  /** A line hung on that says of a changed file whatever the forger likes. */
  private static void hangOn(Path book, EventType type, int revision, String path) {
    Map<String, String> before = hash(signed, path);
    Chain.rewrite(
        book,
        events -> {
          Event last = events.get(events.size() - 1);
          events.add(
              Event.of(type, last.at(), last.tool())
                  .on(DAY, revision)
                  .by("MA", "")
                  .files(before, hash(book, path))
                  .facts(last.facts()));
          return events;
        });
  }

  private static Map<String, String> hash(Path book, String path) {
    return Map.of(path, SourceFile.of("", Tree.bytes(book.resolve(path))).sha256());
  }

  private static void turn(Path book) {
    Tree.edit(book.resolve(JSON), "\"met\"", "\"not met\"");
  }

  /** The first line changed, and all that follow hung on again. */
  private static void first(Path book, UnaryOperator<Event> change) {
    Chain.rewrite(
        book,
        events -> {
          events.set(0, change.apply(events.get(0)));
          return events;
        });
  }

  private static Event told(Event event, String fact, String text) {
    Map<String, String> facts = new TreeMap<>(event.facts());
    facts.put(fact, text);
    return event.facts(facts);
  }

  private static Event signedOtherwise(Event event, String fact, String text) {
    return event.is(EventType.SIGNED) ? told(event, fact, text) : event;
  }

  private static void each(Path book, UnaryOperator<Event> change) {
    Chain.rewrite(book, events -> new ArrayList<>(events.stream().map(change).toList()));
  }

  private interface Deed {
    void to(Path book) throws Exception;
  }

  private record Forged(String name, Deed deed, String said) {}

  private static Stream<Forged> lines() {
    return Stream.of(
        new Forged(
            "a JSON changed by a line that says signed",
            book -> {
              turn(book);
              hangOn(book, EventType.SIGNED, 1, JSON);
            },
            "✗ ledger.jsonl: Line 4 does not count: it says that a signature changed " + JSON),
        new Forged(
            "a JSON changed by a line that says amended, of the same revision",
            book -> {
              turn(book);
              hangOn(book, EventType.AMENDED, 1, JSON);
            },
            "✗ ledger.jsonl: Line 4 does not count: it says \"amended\" of r1, where the last"),
        new Forged(
            "the same of a new revision",
            book -> {
              turn(book);
              hangOn(book, EventType.AMENDED, 2, JSON);
            },
            "✗ ledger.jsonl: Line 4 does not count: it lists " + JSON + ", which does not lie in"),
        new Forged(
            "a JSON changed by a second close",
            book -> {
              turn(book);
              hangOn(book, EventType.CLOSED, 1, JSON);
            },
            "✗ ledger.jsonl: Line 4 does not count: it says \"closed\" of r1"),
        new Forged(
            "a JSON changed by a release",
            book -> {
              turn(book);
              hangOn(book, EventType.RELEASED, 1, JSON);
            },
            "✗ ledger.jsonl: Line 4 does not count: it says \"released\" and that this changed"),
        new Forged(
            "bytes behind a PDF, by a line that says signed",
            book -> {
              Path pdf = book.resolve(PDF);
              Files.writeString(pdf, "%", java.nio.file.StandardOpenOption.APPEND);
              hangOn(book, EventType.SIGNED, 1, PDF);
            },
            "It holds 2 signatures, and the ledger has lines of 3."),
        new Forged(
            "a JSON changed and the close with it",
            book -> {
              turn(book);
              first(
                  book,
                  close -> {
                    Map<String, String> outputs = new TreeMap<>(close.outputs());
                    outputs.putAll(hash(book, JSON));
                    return close.files(close.inputs(), outputs);
                  });
            },
            "✗ " + JSON + ": It is not the JSON that 26047-B1.pdf carries."),
        new Forged(
            "another verdict in the close",
            book -> first(book, close -> told(close, "verdict of 26047-B1", "not met")),
            "Line 1 of the ledger states this close otherwise than day.json"),
        new Forged(
            "another moment in the close",
            book -> first(book, close -> told(close, "judged at", "2026-02-25T06:00:00Z")),
            "Line 1 of the ledger states this close otherwise than day.json"),
        new Forged(
            "another person in the close",
            book -> first(book, close -> close.by("IQ", "")),
            "Line 1 of the ledger states this close otherwise than day.json"),
        new Forged(
            "an input left out of the close",
            book ->
                first(
                    book,
                    close -> {
                      Map<String, String> inputs = new TreeMap<>(close.inputs());
                      inputs.remove("2026-02-16/cure.csv");
                      return close.files(inputs, close.outputs());
                    }),
            "Line 1 of the ledger lists other inputs than the bundle of its revision holds."),
        new Forged(
            "a signature in another box",
            book -> each(book, event -> signedOtherwise(event, "box", "reviewed")),
            "and no valid signature in it says the same."),
        new Forged(
            "a signature with another key",
            book -> each(book, event -> signedOtherwise(event, "key", "ab".repeat(32))),
            "and no valid signature in it says the same."),
        new Forged(
            "a signature as something else",
            book -> each(book, event -> signedOtherwise(event, "role", "maker")),
            "and no valid signature in it says the same."),
        new Forged(
            "a signature by somebody else",
            book -> each(book, event -> event.is(EventType.SIGNED) ? event.by("IQ", "") : event),
            "and no valid signature in it says the same."),
        new Forged(
            "a signature without its line",
            book -> Chain.rewrite(book, events -> events.subList(0, 2)),
            "✗ " + PDF + ": It is not the one that line 2 of the ledger lists."));
  }

  @TestFactory
  Stream<DynamicTest> no_line_excuses_what_its_event_does_not_do() {
    return lines().map(each -> DynamicTest.dynamicTest(each.name(), () -> prove(each)));
  }

  private void prove(Forged forged) throws Exception {
    Path book = Tree.copy(signed, folder.resolve(forged.name()));
    forged.deed().to(book);
    Ran ran = Ran.of("prove", book).expect(1);
    assertTrue(ran.flat().contains(forged.said()), () -> forged.said() + "\n" + ran.out());
  }
}

package org.flitchbook.cli;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.TreeMap;
import java.util.function.BiFunction;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.flitchbook.input.SourceFile;
import org.flitchbook.ledger.Event;
import org.flitchbook.seal.PdfFile;

/** Something done to the files of a book, the places drawn by chance. */
@FunctionalInterface
interface BookDeed {

  LocalDate DAY = LocalDate.parse(Tree.DAY);

  Pattern WORD = Pattern.compile("\"(met|[A-Za-z ]{3,})\"");
  Pattern MEMBER = Pattern.compile("(?m)^ *\"[A-Za-z]+\" ?: (\"[^\"]*\"|[0-9.]+),\n");
  Pattern ROW = Pattern.compile("(?m)^.+\n");
  Pattern BOUND = Pattern.compile("\"[0-9]+(?= (ppm|d|h|°F|%|g)\")");
  Pattern LIMIT = Pattern.compile("(?m)^ *\\{\"limit\".*\\},\n");
  Pattern PERSON = Pattern.compile("(?<=\"name\": )\"(Maud|Ismet|Odo) ");
  Pattern KEY = Pattern.compile("[0-9a-f]{64}");
  Pattern KEY_MEMBER = Pattern.compile(", \"key\": \"[0-9a-f]{64}\"");

  Pattern RECORD = Pattern.compile("records/.*");
  Pattern RECORD_JSON = Pattern.compile("records/.*[.]json");
  Pattern RECORD_PDF = Pattern.compile("records/.*[.]pdf");
  Pattern EVIDENCE =
      Pattern.compile(
          "evidence/(2.*|plan[.]json|templates/(classes|doubts|practice|limits/us)[.]json)");

  /** What a bundle has of the program, and no record needs. */
  Pattern NOT_CARRIED = Pattern.compile("evidence/templates/(words/.*|limits/(ca|eu|gb)[.]json)");

  void to(Path book, SplittableRandom chance) throws Exception;

  /** What is edited. */
  enum Kind {
    RECORD_JSON,
    BUNDLE,
    LEDGER,
    DAY_FILES,
    PLAN
  }

  /** A text changed somewhere. */
  @FunctionalInterface
  interface Change {
    String of(String text, SplittableRandom chance);
  }

  /** Something done to some things of which there are more. */
  @FunctionalInterface
  interface Deed<T> {
    void to(T all, SplittableRandom chance);
  }

  static <T> T drawn(List<T> all, SplittableRandom chance) {
    return all.get(chance.nextInt(all.size()));
  }

  /** One part of a text that reads so, as something else. */
  static String part(String text, Pattern pattern, SplittableRandom chance, String now) {
    MatchResult part = drawn(pattern.matcher(text).results().toList(), chance);
    return text.substring(0, part.start()) + now + text.substring(part.end());
  }

  static String digit(String text, SplittableRandom chance) {
    MatchResult digit = drawn(Pattern.compile("[0-9]").matcher(text).results().toList(), chance);
    int other = (digit.group().charAt(0) - '0' + chance.nextInt(1, 10)) % 10;
    return text.substring(0, digit.start()) + other + text.substring(digit.end());
  }

  static String letter(String text, SplittableRandom chance) {
    int at = chance.nextInt(text.length());
    String other = text.charAt(at) == 'x' ? "y" : "x";
    return text.substring(0, at) + other + text.substring(at + 1);
  }

  /** A fingerprint that no key has. */
  static String print(SplittableRandom chance) {
    return String.format("%016x", chance.nextLong()).repeat(4);
  }

  private static void change(Path file, Change change, SplittableRandom chance) throws Exception {
    Files.writeString(file, change.of(Tree.text(file), chance));
  }

  static Path folder(Path book) {
    return book.resolve(Smokeyard.RECORD).getParent();
  }

  static List<Path> records(Path book, String end) {
    return Tree.walk(folder(book)).stream().filter(each -> each.toString().endsWith(end)).toList();
  }

  /** The close made to list a file as it is now. */
  static void relist(Path book, Path file) {
    String name = Tree.name(book, file);
    Chain.rewrite(
        book,
        events -> {
          Map<String, String> outputs = new TreeMap<>(events.get(0).outputs());
          outputs.remove(name);
          if (Files.exists(file)) {
            outputs.put(name, SourceFile.of("", Tree.bytes(file)).sha256());
          }
          events.set(0, events.get(0).files(events.get(0).inputs(), outputs));
          return events;
        });
  }

  static void json(Path book, SplittableRandom chance, Change change) throws Exception {
    Path json = drawn(records(book, ".json"), chance);
    change(json, change, chance);
    relist(book, json);
  }

  /** With its manifest written again, and its hash in the close. */
  static BookDeed bundle(Deed<Map<String, byte[]>> deed) {
    return (book, chance) -> {
      Path zip = folder(book).resolve("bundle.zip");
      Map<String, byte[]> files = Zipped.read(zip);
      deed.to(files, chance);
      Zipped.write(zip, files);
      relist(book, zip);
    };
  }

  static List<String> names(Map<String, byte[]> files, Pattern wanted) {
    return files.keySet().stream().filter(wanted.asMatchPredicate()).toList();
  }

  static void digit(Map<String, byte[]> files, Pattern wanted, SplittableRandom chance) {
    String name = drawn(names(files, wanted), chance);
    files.put(name, digit(new String(files.get(name), UTF_8), chance).getBytes(UTF_8));
  }

  static BookDeed ledger(Deed<List<Event>> deed) {
    return (book, chance) ->
        Chain.rewrite(
            book,
            events -> {
              deed.to(events, chance);
              return events;
            });
  }

  /** One line of the ledger, the last one in every second case: nothing states that. */
  static BookDeed line(BiFunction<Event, SplittableRandom, Event> change) {
    return ledger(
        (events, chance) -> {
          int line = chance.nextBoolean() ? events.size() - 1 : chance.nextInt(events.size());
          events.set(line, change.apply(events.get(line), chance));
        });
  }

  static Event later(Event event, SplittableRandom chance) {
    return new Event(
        event.what(),
        event.at().plusSeconds(chance.nextInt(1, 9999)),
        event.tool(),
        event.day(),
        event.revision(),
        event.about(),
        event.by(),
        event.reason(),
        event.inputs(),
        event.outputs(),
        event.facts());
  }

  /** One of some texts changed. */
  static Map<String, String> one(
      Map<String, String> texts, SplittableRandom chance, Change change) {
    Map<String, String> changed = new TreeMap<>(texts);
    String key = drawn(List.copyOf(changed.keySet()), chance);
    changed.put(key, change.of(texts.get(key), chance));
    return changed;
  }

  /** All that was written down, by hand or by a logger. */
  static List<Path> days(Path book) {
    return Tree.walk(book).stream()
        .filter(each -> Tree.name(book, each).matches("[0-9-]{10}/.*"))
        .toList();
  }

  static void day(Path book, SplittableRandom chance, Change change) throws Exception {
    change(drawn(days(book), chance), change, chance);
  }

  static void plan(Path book, SplittableRandom chance, Change change) throws Exception {
    change(book.resolve("plan.json"), change, chance);
  }

  /** The second signature goes with its line, as if it had never been there. */
  static void cutBehindFirstSignature(Path book) throws Exception {
    Path pdf = book.resolve(Smokeyard.RECORD);
    byte[] whole = Tree.bytes(pdf);
    int end = PdfFile.signatures(whole).orElseThrow().signatures().get(0).end();
    Files.write(pdf, Arrays.copyOf(whole, end));
    Chain.rewrite(book, events -> events.subList(0, 2));
  }
}

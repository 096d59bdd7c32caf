package org.flitchbook.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.SplittableRandom;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.flitchbook.SeededRun;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Nothing that stands in a file makes a terminal do anything but show letters, or fakes a line. */
final class PrintableTest {

  private static final long SEED = 20260224;
  private static final int CASES = SeededRun.cases("Letters for a terminal", SEED, 300);

  /** Where a line that a file begins would begin. */
  private static final String LINE = "Zq9";

  /** Colour, title, bell, C1, the direction of writing, what is not seen, ends of lines. */
  private static final List<String> LETTERS =
      List.of(
          "\033[31m",
          "\033]0;x\007",
          "\b\b",
          "\177",
          "\u009b31m",
          "\u0085" + LINE,
          "\u202e",
          "\u2066",
          "\u061c",
          "\u200b",
          "\ufeff",
          "\u00ad",
          "\u2028" + LINE,
          "\u2029" + LINE,
          "\n" + LINE,
          "\r" + LINE,
          "\r\n" + LINE,
          "\013" + LINE,
          "\f" + LINE,
          "\udb40\udc41");

  private static final Pattern OBEYED =
      Pattern.compile("[\\p{Cc}\\p{Cf}\\p{Zl}\\p{Zp}&&[^\\n]]|(?m)^" + LINE);

  private static final Pattern JSON_TEXT = Pattern.compile("(?<=\")[^\"\\\\]+(?=\")");
  private static final Pattern CELL = Pattern.compile("[^,\\n]+");

  @TempDir private Path folder;

  private static void assertShown(String where, Ran ran) {
    List<String> obeyed = OBEYED.matcher(ran.all()).results().map(MatchResult::group).toList();
    assertEquals(List.of(), obeyed, () -> where + ": " + ran.all());
  }

  private static void runAll(String where, Path book) {
    Path day = book.resolve(Tree.DAY);
    List<Object[]> commands =
        List.of(
            new Object[] {"check", day},
            new Object[] {"check", day, "--json"},
            new Object[] {"look", day.resolve("probes-a.csv")},
            new Object[] {"look", day.resolve("probes-a.csv"), "--json"},
            new Object[] {"plan", "check", book},
            new Object[] {"trace", "26047-B1", "--book", book},
            new Object[] {"trace", "26047-B1", "--book", book, "--json"},
            new Object[] {"prove", book},
            new Object[] {"prove", book, "--json"},
            new Object[] {"close", day, "--reason", "again", "--as", "MA"});
    commands.forEach(words -> assertShown(where + " " + List.of(words), Ran.of(words)));
  }

  /** One place of one file, chosen by chance, gets such letters; raw, or escaped in JSON. */
  private static String spoil(Path book, SplittableRandom chance) throws Exception {
    List<Path> files =
        Tree.walk(book).stream()
            .filter(each -> Tree.name(book, each).matches(".*(on|csv|l)"))
            .toList();
    Path file = files.get(chance.nextInt(files.size()));
    String letters = LETTERS.get(chance.nextInt(LETTERS.size()));
    boolean isTable = file.toString().endsWith(".csv");
    String text = Tree.text(file);
    List<MatchResult> places = (isTable ? CELL : JSON_TEXT).matcher(text).results().toList();
    MatchResult place = places.get(chance.nextInt(places.size()));
    int at = place.start() + chance.nextInt(place.group().length() + 1);
    boolean isEscaped = !isTable && chance.nextInt(4) > 0;
    String cell = text.substring(place.start(), at) + letters + text.substring(at, place.end());
    Files.writeString(
        file,
        text.substring(0, place.start())
            + (isTable
                ? "\"" + cell + "\""
                : cell.replace(letters, isEscaped ? escaped(letters) : letters))
            + text.substring(place.end()));
    return Tree.name(book, file) + " " + escaped(cell);
  }

  private static String escaped(String letters) {
    StringBuilder escaped = new StringBuilder();
    letters.chars().forEach(each -> escaped.append("\\u%04x".formatted(each)));
    return escaped.toString();
  }

  @Test
  void letters_in_any_field_of_a_book_are_only_shown() throws Exception {
    for (int i = 0; i < CASES; i++) {
      Path book = Tree.closedExample(folder);
      String where = spoil(book, new SplittableRandom(SEED + i));
      runAll(where, book);
      Tree.delete(book);
    }
  }

  @Test
  void letters_in_names_of_files_are_only_shown() throws Exception {
    for (String letters : SeededRun.share("Letters in names", SEED, LETTERS, 4)) {
      Path book = Tree.closedExample(folder);
      Path day = book.resolve(Tree.DAY);
      Path records = book.resolve("records").resolve(Tree.DAY).resolve("r1");
      Files.writeString(day.resolve("cure" + letters + ".csv"), "lot,time\n");
      Files.writeString(book.resolve("cure" + letters + ".csv"), "lot,time\n");
      Files.writeString(records.resolve("x" + letters + ".pdf"), "no PDF");
      Files.createDirectory(day.resolve("a" + letters + ".json"));
      runAll("a name with " + escaped(letters), book);
      for (String command : List.of("prove", "look", "check", "close")) {
        assertShown(command, Ran.of(command, records.resolve("x" + letters + ".pdf")));
        assertShown(command, Ran.of(command, records.resolve("none" + letters)));
        assertShown(command, Ran.of(command, "--" + letters));
      }
      assertShown("trace", Ran.of("trace", letters, "--book", book));
      Tree.delete(book);
    }
  }

  /** Texts of a signed record, as its bytes hold them, replaced by others of the same length. */
  @ParameterizedTest
  @ValueSource(strings = {"Maud Achterberg", "26047-B1"})
  void letters_in_a_record_are_only_shown(String text) throws Exception {
    Smokeyard yard = Smokeyard.signed(folder.resolve("yard"));
    String bytes = new String(Tree.bytes(yard.record), StandardCharsets.ISO_8859_1);
    assertTrue(bytes.contains(text));
    for (String letters : List.of("\033[31m", "\u009b3m", "\n" + LINE, "\r" + LINE)) {
      String other = (text.charAt(0) + letters + text).substring(0, text.length());
      Files.write(yard.record, bytes.replace(text, other).getBytes(StandardCharsets.ISO_8859_1));
      assertShown(text, Ran.of("prove", yard.record));
      assertShown(text, Ran.of("prove", yard.record, "--json"));
      assertShown(text, Ran.of("prove", yard.book));
      assertShown(text, yard.sign("MA"));
    }
  }
}

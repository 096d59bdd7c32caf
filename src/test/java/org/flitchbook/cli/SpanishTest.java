package org.flitchbook.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.flitchbook.Golden;
import org.flitchbook.Wording;
import org.flitchbook.words.Said;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The demo day under a plan that speaks Spanish. */
final class SpanishTest {

  private static final Pattern WORD = Pattern.compile("(?<!\\p{N})\\b\\p{L}{3,}\\b(?!\\p{N})");

  /** Files and their columns, limits by their ids. */
  private static final Pattern NAME = Pattern.compile("\\S*(?:[/_]|\\w\\.\\w)\\S*");

  private static Path records;
  private static Set<String> english;

  @BeforeAll
  static void close() {
    records = DemoDay.inSpanish();
    english = words(String.join(" ", Said.bySources().texts().values()));
    english.removeAll(words(String.join(" ", Wording.of("es").texts().values())));
    english.removeAll(words(String.join(" ", Wording.of("es").names().values())));
  }

  private static Set<String> words(String text) {
    return WORD.matcher(text)
        .results()
        .map(MatchResult::group)
        .map(word -> word.toLowerCase(Locale.ROOT))
        .collect(Collectors.toCollection(TreeSet::new));
  }

  /** What people wrote into the book, and what the rule set quotes. */
  private static Set<String> quoted() {
    Stream<Path> files =
        Stream.concat(
            Tree.walk(Tree.DEMO).stream(),
            Stream.of("classes.json", "limits/us.json").map(Path.of("templates")::resolve));
    return words(files.map(Tree::text).collect(Collectors.joining(" ")));
  }

  @TestFactory
  Stream<DynamicTest> no_english_word_of_the_program_is_printed() {
    Set<String> distinctive = new TreeSet<>(english);
    distinctive.removeAll(quoted());
    return DemoDay.PRINTS.stream()
        .map(name -> DynamicTest.dynamicTest(name, () -> assertSpanish(name, distinctive)));
  }

  /** The English print of the same has such words, or that none is found would prove nothing. */
  private static void assertSpanish(String name, Set<String> distinctive) {
    assertEquals(Set.of(), printed(records, name, distinctive));
    assertNotEquals(Set.of(), printed(DemoDay.records(), name, distinctive));
  }

  private static Set<String> printed(Path records, String name, Set<String> distinctive) {
    String text = Pdfs.text(records.resolve(name + ".pdf"));
    Set<String> printed = words(NAME.matcher(text).replaceAll(" "));
    printed.retainAll(distinctive);
    return printed;
  }

  @Test
  void a_whole_record_reads_so() {
    Golden.check("cli/demo/26047-B1.es.txt", GoldenTest.steady(records.resolve("26047-B1.pdf")));
  }

  @Test
  void verdicts_and_numbers_are_those_of_the_english_record() {
    Path other = DemoDay.records();
    assertEquals(judged(other.resolve("day.json")), judged(records.resolve("day.json")));
  }

  private static Map<String, String> judged(Path json) {
    Map<String, String> judged = new TreeMap<>();
    Ran.json(Tree.text(json))
        .path("lots")
        .forEach(
            lot ->
                lot.path("findings")
                    .forEach(
                        found ->
                            judged.put(
                                lot.path("lot").asText() + " " + found.path("limit").asText(),
                                found.path("covers").asText()
                                    + " "
                                    + found.path("verdict").asText()
                                    + " "
                                    + found.path("value")
                                    + " "
                                    + found.path("margin"))));
    return judged;
  }

  @Test
  void the_boxes_to_sign_stand_on_the_first_page_as_in_english() {
    String first = Pdfs.text(records.resolve("26047-B1.pdf")).split("\f", -1)[0];
    assertTrue(first.contains("Nombre y apellidos"), first);
  }

  @ParameterizedTest
  @CsvSource({"26047-B1, Firma", "deviations, Desviaciones abiertas", "day, Hoja del día"})
  void a_print_names_what_it_is(String name, String told) {
    assertTrue(Pdfs.text(records.resolve(name + ".pdf")).contains(told));
  }
}

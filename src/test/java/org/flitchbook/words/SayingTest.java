package org.flitchbook.words;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.flitchbook.input.Fault;
import org.flitchbook.input.SourceFile;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

final class SayingTest {

  private static final Words WORDS =
      new Words(
          "xx",
          Map.of(
              "t.plain", "as it is",
              "t.two", "{1} before {0}, and {1} again",
              "t.lots.one", "one lot {1}",
              "t.lots.many", "{0} lots {1}",
              "words.or", "{0} or {1}",
              "words.and", "{0} and {1}",
              "what.green-weight", "verde",
              "what.ph", "pe hache",
              "sum.rind", "corteza"),
          Map.of("option 1", "opción 1"));

  @Test
  void values_go_into_their_places_wherever_the_language_has_them() {
    assertEquals("as it is", WORDS.say("t.plain", "x"));
    assertEquals("b before a, and b again", WORDS.say("t.two", "x", "a", "b"));
    assertEquals("$1 before {1}, and $1 again", WORDS.say("t.two", "x", "{1}", "$1"));
  }

  @Test
  void one_thing_is_told_otherwise_than_several() {
    assertEquals("one lot held", WORDS.count("t.lots", 1, "x", "x", "held"));
    assertEquals("0 lots held", WORDS.count("t.lots", 0, "x", "x", "held"));
    assertEquals("2 lots held", WORDS.count("t.lots", 2, "x", "x", "held"));
  }

  @ParameterizedTest
  @CsvSource({"what, green weight, verde", "what, pH, pe hache", "what, odd one, odd one"})
  void a_word_without_a_wording_is_shown_as_it_is(String family, String word, String shown) {
    assertEquals(shown, WORDS.word(family, word));
  }

  @ParameterizedTest
  @CsvSource({"option 1, opción 1", "option 7, option 7"})
  void a_limit_without_a_name_in_the_language_keeps_that_of_its_rule_set(
      String name, String shown) {
    assertEquals(shown, WORDS.word("name", name));
  }

  @Test
  void things_are_listed_with_a_word_before_the_last() {
    assertEquals("", WORDS.either(List.of()));
    assertEquals("a", WORDS.either(List.of("a")));
    assertEquals("a, b or c", WORDS.either(List.of("a", "b", "c")));
  }

  @ParameterizedTest
  @ValueSource(strings = {"t.none", "t.two"})
  void a_key_or_a_value_that_is_missing_is_an_error_of_the_program(String key) {
    assertThrows(IllegalArgumentException.class, () -> WORDS.say(key, "a"));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          # file | version | language | words          | fault
          es     | 1       | es       | {"a.b": 3}     | 1:words.a.b: found 3, expected a text
          es     | 1       | fr       | {}             | 1:language: found "fr", expected a language such as es, as the file is called
          my     | 2       | my       | {}             | 1:flitchbook: found another version, expected 1
          my own | 1       | my own   | {}             | 1:language: found "my own", expected a language such as es, as the file is called
          es     | 1       | es       | {}, "wrods": 1 | 1:wrods: found the key "wrods", expected one of flitchbook, language, made, by, words, names
          """)
  void a_file_that_is_none_is_refused(
      String name, String version, String language, String words, String fault) {
    List<Fault> faults = new ArrayList<>();
    assertTrue(Words.read(file(name, version, language, words), faults).isEmpty());
    assertEquals("[templates/words/" + name + ".json:" + fault + "]", faults.toString());
  }

  @Test
  void a_books_own_wording_must_have_the_keys_and_places_of_another_language() {
    List<SourceFile> all =
        List.of(
            words("en", "{\"a\": \"{0}\", \"b\": \"b\"}"),
            words("fr", "{\"a\": \"à\", \"c\": \"c\"}"));
    List<Fault> faults = new ArrayList<>();
    assertTrue(Words.choose("fr", all, List.of("templates/words/fr.json"), faults).isEmpty());
    assertEquals(
        List.of(
            "templates/words/fr.json: found no \"b\", expected a wording of it, such as \"b\"",
            "templates/words/fr.json:words.a: found other places, expected the places {0}",
            "templates/words/fr.json: found \"c\", expected a key of en"),
        faults.stream().map(Fault::toString).toList());
  }

  @Test
  void a_language_that_there_is_not_is_told_with_those_that_there_are() {
    List<Fault> faults = new ArrayList<>();
    assertTrue(
        Words.choose("fr", List.of(words("en", "{}"), words("es", "{}")), List.of(), faults)
            .isEmpty());
    assertEquals(
        "[templates/words/fr.json: found no such file, expected one of en, es]", faults.toString());
  }

  private static SourceFile words(String language, String words) {
    return file(language, "1", language, words);
  }

  private static SourceFile file(String name, String version, String language, String words) {
    String text =
        """
        {"flitchbook": %s, "language": "%s", "made": "x", "by": "x", "words": %s}
        """
            .formatted(version, language, words);
    return SourceFile.of("templates/words/" + name + ".json", text.getBytes(UTF_8));
  }
}

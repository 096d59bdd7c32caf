package org.flitchbook.words;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Map;
import org.flitchbook.input.SourceFile;
import org.flitchbook.message.Listing;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

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

  @Test
  void what_a_language_lacks_is_said_in_english() {
    assertEquals("a, in English", WORDS.say("t.none", "{0}, in English", "a"));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          # file | version | language | words                | fault
          es     | 1       | es       | {"words.and": 3}     | 1:words.words.and: found 3, expected a text
          es     | 1       | fr       | {}                   | 1:language: found "fr", expected a language such as es, as the file is called
          my     | 2       | my       | {}                   | 1:flitchbook: found 2, expected 1
          my own | 1       | my own   | {}                   | 1:language: found "my own", expected a language such as es, as the file is called
          es     | 1       | es       | {}, "wrods": 1       | 1:wrods: found the key "wrods", expected one of flitchbook, language, made, by, words, names
          en     | 1       | en       | {"words.nor": "nor"} | 1:words.words.nor: found words.nor, expected an id of templates/words/es.json
          fr     | 1       | fr       | {"words.and": "{0} et {2}"} | 1:words.words.and: found other places, expected the places {0} {1}
          """)
  void a_books_file_that_is_none_is_refused(
      String name, String version, String language, String words, String fault) {
    Words.Chosen chosen = Words.of(name, List.of(file(name, version, language, words)));
    assertEquals("[templates/words/" + name + ".json:" + fault + "]", chosen.faults().toString());
    assertEquals("a", chosen.words().say("value", "{0}", "a"));
  }

  @ParameterizedTest
  @CsvSource({"en, a plus b, 'a, b or c'", "es, a plus b, 'a, b o c'"})
  void a_book_may_lay_any_text_over_those_of_the_tool(String language, String and, String or) {
    String texts = "{\"words.and\": \"{0} plus {1}\", \"what.salt\": \"sea salt\"}";
    Words.Chosen chosen = Words.of(language, List.of(words(language, texts)));
    assertEquals(List.of(), chosen.faults());
    assertEquals(and, Listing.and(List.of("a", "b")).in(chosen.words()));
    assertEquals("sea salt", chosen.words().word("what", "salt"));
    assertEquals(language, chosen.words().language());
    assertEquals(or, chosen.words().either(List.of("a", "b", "c")));
  }

  @Test
  void a_language_that_only_the_book_has_falls_back_to_english_text_by_text() {
    List<SourceFile> own = List.of(words("fr", "{\"words.and\": \"{0} et {1}\"}"));
    Words french = Words.of("fr", own).words();
    assertEquals("a et b", Listing.and(List.of("a", "b")).in(french));
    assertEquals("a or b", french.either(List.of("a", "b")));
    assertEquals(List.of("en", "es", "fr"), Words.languages(own));
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

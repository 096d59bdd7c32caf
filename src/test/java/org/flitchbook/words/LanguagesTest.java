package org.flitchbook.words;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.flitchbook.Wording;
import org.junit.jupiter.api.Test;

/** The languages say the same things, and what the program asks for. */
final class LanguagesTest {

  private static final Words ENGLISH = Wording.of("en");
  private static final Words SPANISH = Wording.of("es");

  private final Asked asked = Asked.bySources();

  @Test
  void both_languages_have_the_same_keys() {
    assertEquals(new TreeSet<>(ENGLISH.texts().keySet()), new TreeSet<>(SPANISH.texts().keySet()));
  }

  @Test
  void both_languages_have_the_same_places_in_each_wording() {
    assertEquals(places(ENGLISH), places(SPANISH));
  }

  private static Map<String, Set<String>> places(Words words) {
    Map<String, Set<String>> places = new TreeMap<>();
    words
        .texts()
        .forEach(
            (key, text) ->
                places.put(
                    key,
                    Words.PLACE
                        .matcher(text)
                        .results()
                        .map(MatchResult::group)
                        .collect(Collectors.toCollection(TreeSet::new))));
    return places;
  }

  @Test
  void no_wording_is_blank_or_has_a_brace_that_is_no_place() {
    assertEquals(List.of(), Stream.of(ENGLISH, SPANISH).flatMap(LanguagesTest::odd).toList());
  }

  private static Stream<String> odd(Words words) {
    return words.texts().entrySet().stream()
        .filter(each -> each.getValue().isBlank() || hasOddBrace(each.getValue()))
        .map(each -> words.language() + ": " + each.getKey());
  }

  private static boolean hasOddBrace(String text) {
    String without = Words.PLACE.matcher(text).replaceAll("");
    return without.contains("{") || without.contains("}");
  }

  @Test
  void every_key_that_the_program_asks_for_has_a_wording() {
    assertTrue(asked.keys().size() > 5);
    Set<String> lacking = new TreeSet<>(asked.keys());
    lacking.removeAll(ENGLISH.texts().keySet());
    assertEquals(Set.of(), lacking);
  }

  @Test
  void every_wording_is_asked_for_by_the_program() {
    Set<String> idle = new TreeSet<>(ENGLISH.texts().keySet());
    idle.removeAll(asked.keys());
    assertEquals(Set.of(), idle);
  }

  @Test
  void spanish_has_a_name_for_each_limit_option_and_exemption() {
    assertEquals(Families.names(), new TreeSet<>(SPANISH.names().keySet()));
  }

  @Test
  void every_family_of_words_that_the_program_asks_for_is_known() {
    Set<String> known = new TreeSet<>(Families.ALL.keySet());
    known.add("name"); // the words of this family stand by themselves, see Families.names()
    assertEquals(known, asked.families());
  }
}

package org.flitchbook.words;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.flitchbook.message.Message;
import org.junit.jupiter.api.Test;

/** Another language says what the program says, and nothing else. */
final class LanguagesTest {

  private static final Words SPANISH = Words.of("es", List.of()).words();

  private final Said said = Said.bySources();

  @Test
  void an_id_has_one_english_text() {
    assertTrue(said.texts().size() > 800, said.texts().size() + " ids");
    assertEquals(List.of(), said.twice());
  }

  @Test
  void spanish_says_each_id_and_no_other() {
    Set<String> ids = new TreeSet<>(said.texts().keySet());
    Families.ALL.forEach(
        (family, words) -> words.forEach(word -> ids.add(Words.key(family, word))));
    assertEquals(ids, new TreeSet<>(SPANISH.texts().keySet()));
  }

  @Test
  void spanish_has_the_places_of_the_english() {
    Map<String, String> spanish = new HashMap<>(SPANISH.texts());
    spanish.keySet().retainAll(said.texts().keySet());
    Map<String, String> english = new HashMap<>(said.texts());
    english.keySet().retainAll(spanish.keySet());
    assertEquals(places(english), places(spanish));
  }

  private static Map<String, Set<String>> places(Map<String, String> texts) {
    Map<String, Set<String>> places = new TreeMap<>();
    texts.forEach(
        (id, text) ->
            places.put(
                id,
                Message.PLACE
                    .matcher(text)
                    .results()
                    .map(MatchResult::group)
                    .collect(Collectors.toCollection(TreeSet::new))));
    return places;
  }

  @Test
  void no_text_is_blank_or_has_a_brace_that_is_no_place() {
    assertEquals(
        List.of(), Stream.of(said.texts(), SPANISH.texts()).flatMap(LanguagesTest::odd).toList());
  }

  private static Stream<String> odd(Map<String, String> texts) {
    return texts.entrySet().stream()
        .filter(each -> each.getValue().isBlank() || hasOddBrace(each.getValue()))
        .map(each -> each.getKey() + ": " + each.getValue());
  }

  private static boolean hasOddBrace(String text) {
    String without = Message.PLACE.matcher(text).replaceAll("");
    return without.contains("{") || without.contains("}");
  }

  @Test
  void spanish_has_a_name_for_each_limit_option_and_exemption() {
    assertEquals(Families.names(), new TreeSet<>(SPANISH.names().keySet()));
  }

  @Test
  void every_family_of_words_that_the_program_asks_for_is_known() {
    Set<String> known = new TreeSet<>(Families.ALL.keySet());
    known.add("name");
    assertEquals(known, said.families());
  }

  @Test
  void the_languages_of_the_tool_are_english_and_those_that_have_a_file() throws IOException {
    Set<String> languages = new TreeSet<>(Set.of(Words.DEFAULT));
    try (Stream<Path> files = Files.list(Path.of("templates", "words"))) {
      files.forEach(file -> languages.add(file.getFileName().toString().replace(".json", "")));
    }
    assertEquals(List.copyOf(languages), Words.languages(List.of()));
  }
}

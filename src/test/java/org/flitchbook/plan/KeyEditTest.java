package org.flitchbook.plan;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.flitchbook.input.SourceFile;
import org.flitchbook.plan.Person.PersonKey;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A key goes into the text of a plan, and nothing else of the text changes. */
final class KeyEditTest {

  private static final String PRINT = "ab".repeat(32);
  private static final LocalDate DAY = LocalDate.of(2026, 2, 24);

  private static SourceFile plan(String text) {
    return SourceFile.of("plan.json", text.replace("§", PRINT).replace("¶", "\n").getBytes(UTF_8));
  }

  private static String shown(byte[] text) {
    return new String(text, UTF_8).replace(PRINT, "§").replace("\n", "¶");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '~',
      textBlock =
          """
          {"people": [{"initials": "MA"}]}            | {"people": [{"initials": "MA", "key": "§"}]}
          {"people":[{"initials":"MA"}]}              | {"people":[{"initials":"MA", "key": "§"}]}
          {"people": [{ "initials": "MA" } ] }        | {"people": [{ "initials": "MA", "key": "§" } ] }
          {"x": "é", "people": [{"initials": "MA", "r": [1, {"a": 2}]}]} | {"x": "é", "people": [{"initials": "MA", "r": [1, {"a": 2}], "key": "§"}]}
          {"people": [{"initials": "IQ"},¶  {¶    "r": [],¶    "initials": "MA"¶  }]} | {"people": [{"initials": "IQ"},¶  {¶    "r": [],¶    "initials": "MA",¶    "key": "§"¶  }]}
          """)
  void a_key_is_entered_as_the_last_member_of_its_person(String before, String after) {
    assertEquals(after, shown(Plans.enterKey(plan(before), "MA", PRINT)));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '~',
      textBlock =
          """
          {"people": [{"initials": "MA", "key": "§"}]}          | {"people": [{"initials": "MA", "keys": [{"fingerprint": "§", "until": "2026-02-24"}]}]}
          {"people": [{"key": "§", "initials": "MA"}]}          | {"people": [{"keys": [{"fingerprint": "§", "until": "2026-02-24"}], "initials": "MA"}]}
          {"people": [{"initials": "MA", "keys": [], "key": "§"}]} | {"people": [{"initials": "MA", "keys": [{"fingerprint": "§", "until": "2026-02-24"}]}]}
          {"people": [{"key": "§", "keys": [{"x": 1}],¶ "initials": "MA"}]} | {"people": [{ "keys": [{"x": 1}, {"fingerprint": "§", "until": "2026-02-24"}],¶ "initials": "MA"}]}
          {"people": [{"initials": "MA",¶ "keys": [¶  {"x": 1}¶ ],¶ "key": "§"}]} | {"people": [{"initials": "MA",¶ "keys": [¶  {"x": 1},¶  {"fingerprint": "§", "until": "2026-02-24"}¶ ]}]}
          """)
  void a_retired_key_gets_its_last_day(String before, String after) {
    assertEquals(after, shown(Plans.retireKey(plan(before), "MA", PRINT, DAY)));
  }

  @Test
  void a_byte_order_mark_stays() {
    String before = "\ufeff{\"people\": [{\"initials\": \"MA\"}]}";
    String after = "\ufeff{\"people\": [{\"initials\": \"MA\", \"key\": \"§\"}]}";
    assertEquals(after, shown(Plans.enterKey(plan(before), "MA", PRINT)));
  }

  @Test
  void nobody_of_these_initials_is_refused() {
    SourceFile plan = plan("{\"people\": [{\"initials\": \"MA\"}]}");
    assertThrows(IllegalArgumentException.class, () -> Plans.enterKey(plan, "IQ", PRINT));
    assertThrows(IllegalArgumentException.class, () -> Plans.retireKey(plan, "MA", PRINT, DAY));
  }

  @Test
  void the_example_plan_is_read_with_the_key_entered_and_with_it_retired() {
    Draft draft = Draft.example();
    SourceFile plan = plan(draft.files().get(Draft.PLAN));
    String entered = new String(Plans.enterKey(plan, "IQ", PRINT), UTF_8);
    Person with = person(draft.whole(Draft.PLAN, entered));
    assertEquals(List.of(PRINT), prints(with.keysInForce(DAY)));
    String retired = new String(Plans.retireKey(plan(entered), "IQ", PRINT, DAY), UTF_8);
    Person without = person(draft.whole(Draft.PLAN, retired));
    assertEquals(List.of(PRINT), prints(without.keysInForce(DAY)));
    assertEquals(List.of(), prints(without.keysInForce(DAY.plusDays(1))));
    assertTrue(without.key(PRINT).isPresent());
  }

  private static Person person(Draft draft) {
    PlanRead read = draft.read();
    assertEquals(List.of(), read.faults());
    return read.plan().orElseThrow().person("IQ").orElseThrow();
  }

  private static List<String> prints(List<PersonKey> keys) {
    return keys.stream().map(PersonKey::fingerprint).toList();
  }

  @Test
  void a_key_counts_from_its_first_to_its_last_day() {
    PersonKey key = new PersonKey(PRINT, Optional.of(DAY), Optional.of(DAY.plusDays(2)));
    assertEquals(
        List.of(false, true, true, true, false),
        IntStream.range(-1, 4).mapToObj(day -> key.isInForce(DAY.plusDays(day))).toList());
  }
}

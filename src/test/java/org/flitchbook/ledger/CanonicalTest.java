package org.flitchbook.ledger;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** The canonical form, held to the samples that RFC 8785 prints. */
final class CanonicalTest {

  @Test
  void texts_are_escaped_as_in_section_3_2_2() {
    assertEquals(
        "{\"string\":\"€$\\u000f\\nA'B\\\"\\\\\\\\\\\"/\"}",
        CanonicalJson.text(Map.of("string", "\u20ac$\u000F\nA'B\"\\\\\"/")));
  }

  @Test
  void keys_are_sorted_as_in_section_3_2_3() {
    Map<String, String> sample =
        Map.of(
            "\u20ac", "Euro Sign",
            "\r", "Carriage Return",
            "\ufb33", "Hebrew Letter Dalet With Dagesh",
            "1", "One",
            "\ud83d\ude00", "Emoji: Grinning Face",
            "\u0080", "Control",
            "\u00f6", "Latin Small Letter O With Diaeresis");
    assertEquals(
        "{\"\\r\":\"Carriage Return\",\"1\":\"One\",\"\u0080\":\"Control\","
            + "\"\u00f6\":\"Latin Small Letter O With Diaeresis\",\"\u20ac\":\"Euro Sign\","
            + "\"\ud83d\ude00\":\"Emoji: Grinning Face\","
            + "\"\ufb33\":\"Hebrew Letter Dalet With Dagesh\"}",
        CanonicalJson.text(sample));
  }

  @Test
  void the_letters_below_a_space_have_the_shortest_escapes() {
    assertEquals(
        "{\"\":\"\\b\\t\\n\\f\\r\\u0000\\u001f\u007f\"}",
        CanonicalJson.text(Map.of("", "\b\t\n\f\r\0\u001f\u007f")));
  }

  @Test
  void whole_numbers_and_objects_have_no_white_space() {
    assertEquals(
        "{\"a\":{},\"b\":{\"c\":-1},\"d\":9007199254740991}",
        CanonicalJson.text(Map.of("d", 9007199254740991L, "a", Map.of(), "b", Map.of("c", -1L))));
  }

  @TestFactory
  Stream<DynamicTest> what_the_form_does_not_have_is_refused() {
    return Stream.<Object>of(1.5, 9007199254740992L, List.of(), true, "\ud83d", "\ude00\ud83d")
        .map(
            value ->
                DynamicTest.dynamicTest(
                    value.getClass().getSimpleName() + " " + value.hashCode(),
                    () ->
                        assertThrows(
                            IllegalArgumentException.class,
                            () -> CanonicalJson.text(Map.of("key", value)))));
  }
}

package org.flitchbook.json;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.flitchbook.input.Fault;
import org.flitchbook.input.Place;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

final class FieldsTest {

  private final List<Fault> faults = new ArrayList<>();

  private Fields fields(String text) {
    return Fields.of(Json.read("plan.json", text.getBytes(UTF_8)).object().orElseThrow(), faults);
  }

  private List<String> said() {
    return faults.stream().map(fault -> fault.severity().word() + " " + fault).toList();
  }

  private static Optional<Integer> length(String text) {
    return text.isEmpty() ? Optional.empty() : Optional.of(text.length());
  }

  private static Arguments row(Consumer<Fields> ask, String text, String... said) {
    return Arguments.of(text, ask, List.of(said));
  }

  static Stream<Arguments> refusals() {
    String missing = "broken plan.json:1:a: found no \"a\", expected ";
    String wrong = "broken plan.json:2:a: found 7, expected ";
    return Stream.of(
        row(f -> f.text("a"), "{}", missing + "a text there"),
        row(f -> f.object("a"), "{}", missing + "an object there"),
        row(f -> f.parsed("a", "a word", FieldsTest::length), "{}", missing + "a word there"),
        row(f -> f.text("a"), "{\n\"a\": 7}", wrong + "a text"),
        row(f -> f.optionalText("a"), "{\n\"a\": 7}", wrong + "a text"),
        row(f -> f.object("a"), "{\n\"a\": 7}", wrong + "an object"),
        row(f -> f.optionalBool("a"), "{\n\"a\": 7}", wrong + "true or false"),
        row(f -> f.objects("a"), "{\n\"a\": 7}", wrong + "a list"),
        row(f -> f.texts("a"), "{\n\"a\": 7}", wrong + "a list"),
        row(f -> f.parsed("a", "a word", FieldsTest::length), "{\n\"a\": 7}", wrong + "a word"),
        row(
            f -> f.parsed("a", "a word", FieldsTest::length),
            "{\"a\": \"\"}",
            "broken plan.json:1:a: found \"\", expected a word"),
        row(
            f -> f.optionalWhole("a"),
            "{\"a\": \"7\"}",
            "broken plan.json:1:a: found \"7\", expected a whole number"),
        row(
            f -> f.optionalWhole("a"),
            "{\"a\": 1.5}",
            "broken plan.json:1:a: found 1.5, expected a whole number"),
        row(
            f -> f.optionalWhole("a"),
            "{\"a\": 2147483648}",
            "broken plan.json:1:a: found 2147483648, expected a whole number"),
        row(
            f -> f.optionalText("a"),
            "{\"a\": null}",
            "broken plan.json:1:a: found null, expected a text"),
        row(
            f -> f.objects("a"),
            "{\"a\": [{},\n 2, {}, \"x\"]}",
            "broken plan.json:2:a[1]: found 2, expected an object",
            "broken plan.json:2:a[3]: found \"x\", expected an object"),
        row(
            f -> f.texts("a"),
            "{\"a\": [\"x\", [], true]}",
            "broken plan.json:1:a[1]: found a list, expected a text",
            "broken plan.json:1:a[2]: found true, expected a text"),
        row(
            f -> {
              f.optionalText("a");
              f.optionalText("b");
              f.end();
            },
            "{\"a\": \"x\",\n\"aa\": 1,\n\"B\": 2}",
            "broken plan.json:2:aa: found the key \"aa\", expected one of a, b",
            "broken plan.json:3:B: found the key \"B\", expected one of a, b"),
        row(
            f -> f.object("a").orElseThrow().object("b").orElseThrow().text("c"),
            "{\"a\":\n{\"b\":\n{}}}",
            "broken plan.json:3:a.b.c: found no \"c\", expected a text there"),
        row(
            f -> f.fault("a", "x", "y"),
            "{\n\"a\": 1}",
            "broken plan.json:2:a: found x, expected y"));
  }

  @ParameterizedTest(name = "{0} {2}")
  @MethodSource("refusals")
  void what_does_not_fit_is_told_with_line_and_path(
      String text, Consumer<Fields> ask, List<String> said) {
    ask.accept(fields(text));
    assertEquals(said, said());
  }

  @Test
  void what_fits_comes_back() {
    Fields fields =
        fields(
            """
            {"text": "x", "whole": 7, "bool": true, "object": {"a": "y"},
             "objects": [{}, {}], "texts": ["p", "q"], "zero": 0, "big": 1e3}
            """);
    assertEquals("x", fields.text("text"));
    assertEquals(Optional.of(7), fields.optionalWhole("whole"));
    assertEquals(Optional.of(0), fields.optionalWhole("zero"));
    assertEquals(Optional.of(1000), fields.optionalWhole("big"));
    assertEquals(Optional.of(true), fields.optionalBool("bool"));
    assertEquals("y", fields.object("object").orElseThrow().text("a"));
    assertEquals(2, fields.objects("objects").size());
    assertEquals(List.of("p", "q"), fields.texts("texts"));
    fields.end();
    assertEquals(List.of(), said());
  }

  @Test
  void what_may_be_missing_is_empty_without_a_fault() {
    Fields fields = fields("{}");
    assertEquals(Optional.empty(), fields.optionalText("a"));
    assertEquals(Optional.empty(), fields.optionalWhole("b"));
    assertEquals(Optional.empty(), fields.optionalBool("c"));
    assertTrue(fields.optionalObject("d").isEmpty());
    assertEquals(Optional.empty(), fields.optionalParsed("e", "x", FieldsTest::length));
    assertEquals(List.of(), fields.texts("f"));
    assertEquals(List.of(), fields.objects("g"));
    fields.end();
    assertEquals(List.of(), said());
  }

  @Test
  void a_missing_text_comes_back_as_nothing_so_that_reading_goes_on() {
    Fields fields = fields("{}");
    assertEquals("", fields.text("a"));
    assertEquals("", fields.text("b"));
    assertEquals(2, faults.size());
  }

  @Test
  void a_place_is_the_keys_own_or_that_of_its_object() {
    Fields fields = fields("{\n\"a\": 1}");
    assertEquals(new Place("plan.json", 2, "a"), fields.place("a"));
    assertEquals(new Place("plan.json", 1, "b"), fields.place("b"));
    assertEquals(new Place("plan.json", 1, ""), fields.place());
  }

  @Test
  void a_long_list_of_known_keys_is_cut_at_forty() {
    Fields fields = fields("{\"x\": 1}");
    for (int i = 0; i < 50; i++) {
      fields.optionalText("k" + i);
    }
    fields.end();
    assertTrue(said().get(0).endsWith(", k38, k39"), said().get(0));
  }
}

package org.flitchbook.json;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.flitchbook.input.Fault;
import org.flitchbook.input.Place;
import org.flitchbook.message.Message;
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

  private static final Binder BINDER =
      Binder.PLAIN.with(
          "word",
          Format.of(Message.of("a word"), text -> Optional.of(text).filter(it -> !it.isEmpty())));

  record Empty() {}

  record Text(String a) {}

  record MaybeText(Optional<String> a) {}

  record Inner(@Key(required = true) Optional<Empty> a) {}

  record Word(@Key(format = "word") String a) {}

  record MaybeWord(@Key(format = "word") Optional<String> a) {}

  record MaybeWhole(Optional<Integer> a) {}

  record MaybeBool(Optional<Boolean> a) {}

  record Objects(@Key(optional = true) List<Empty> a) {}

  record Texts(@Key(optional = true) List<String> a) {}

  record Two(Optional<String> a, Optional<String> b) {}

  record TwoTexts(String a, String b) {}

  record Deep(Deeper a) {}

  record Deeper(Deepest b) {}

  record Deepest(String c) {}

  record Own(@Key(optional = true) int a) implements Checked {
    @Override
    public void check(Fields object) {
      object.fault("a", Message.of("x"), Message.of("y"));
    }
  }

  private static Arguments row(Class<?> type, String text, String... said) {
    return Arguments.of(text, type, List.of(said));
  }

  static Stream<Arguments> refusals() {
    String missing = "broken plan.json:1:a: found no \"a\", expected ";
    String wrong = "broken plan.json:2:a: found 7, expected ";
    return Stream.of(
        row(Text.class, "{}", missing + "a text there"),
        row(Inner.class, "{}", missing + "an object there"),
        row(Word.class, "{}", missing + "a word there"),
        row(Text.class, "{\n\"a\": 7}", wrong + "a text"),
        row(MaybeText.class, "{\n\"a\": 7}", wrong + "a text"),
        row(Inner.class, "{\n\"a\": 7}", wrong + "an object"),
        row(MaybeBool.class, "{\n\"a\": 7}", wrong + "true or false"),
        row(Objects.class, "{\n\"a\": 7}", wrong + "a list"),
        row(Texts.class, "{\n\"a\": 7}", wrong + "a list"),
        row(Word.class, "{\n\"a\": 7}", wrong + "a word"),
        row(Word.class, "{\"a\": \"\"}", "broken plan.json:1:a: found \"\", expected a word"),
        row(
            MaybeWhole.class,
            "{\"a\": \"7\"}",
            "broken plan.json:1:a: found \"7\", expected a whole number"),
        row(
            MaybeWhole.class,
            "{\"a\": 1.5}",
            "broken plan.json:1:a: found 1.5, expected a whole number"),
        row(
            MaybeWhole.class,
            "{\"a\": 2147483648}",
            "broken plan.json:1:a: found 2147483648, expected a whole number"),
        row(MaybeText.class, "{\"a\": null}", "broken plan.json:1:a: found null, expected a text"),
        row(
            Objects.class,
            "{\"a\": [{},\n 2, {}, \"x\"]}",
            "broken plan.json:2:a[1]: found 2, expected an object",
            "broken plan.json:2:a[3]: found \"x\", expected an object"),
        row(
            Texts.class,
            "{\"a\": [\"x\", [], true]}",
            "broken plan.json:1:a[1]: found a list, expected a text",
            "broken plan.json:1:a[2]: found true, expected a text"),
        row(
            Two.class,
            "{\"a\": \"x\",\n\"aa\": 1,\n\"B\": 2}",
            "broken plan.json:2:aa: found the key \"aa\", expected one of a, b",
            "broken plan.json:3:B: found the key \"B\", expected one of a, b"),
        row(
            Deep.class,
            "{\"a\":\n{\"b\":\n{}}}",
            "broken plan.json:3:a.b.c: found no \"c\", expected a text there"),
        row(Own.class, "{\n\"a\": 1}", "broken plan.json:2:a: found x, expected y"));
  }

  @ParameterizedTest(name = "{0} {2}")
  @MethodSource("refusals")
  void what_does_not_fit_is_told_with_line_and_path(String text, Class<?> type, List<String> said) {
    BINDER.bind(fields(text), type);
    assertEquals(said, said());
  }

  record Fitting(
      String text,
      Optional<Integer> whole,
      Optional<Boolean> bool,
      Text object,
      List<Empty> objects,
      List<String> texts,
      Optional<Integer> zero,
      Optional<Integer> big) {}

  @Test
  void what_fits_comes_back() {
    Fields fields =
        fields(
            """
            {"text": "x", "whole": 7, "bool": true, "object": {"a": "y"},
             "objects": [{}, {}], "texts": ["p", "q"], "zero": 0, "big": 1e3}
            """);
    Fitting fitting = BINDER.bind(fields, Fitting.class).orElseThrow();
    assertEquals("x", fitting.text());
    assertEquals(Optional.of(7), fitting.whole());
    assertEquals(Optional.of(0), fitting.zero());
    assertEquals(Optional.of(1000), fitting.big());
    assertEquals(Optional.of(true), fitting.bool());
    assertEquals("y", fitting.object().a());
    assertEquals(2, fitting.objects().size());
    assertEquals(List.of("p", "q"), fitting.texts());
    assertEquals(List.of(), said());
  }

  private <T> T nothing(Class<T> type) {
    return BINDER.bind(fields("{}"), type).orElseThrow();
  }

  @Test
  void what_may_be_missing_is_empty_without_a_fault() {
    assertEquals(Optional.empty(), nothing(MaybeText.class).a());
    assertEquals(Optional.empty(), nothing(MaybeWhole.class).a());
    assertEquals(Optional.empty(), nothing(MaybeBool.class).a());
    record MaybeObject(Optional<Empty> d) {}
    assertTrue(nothing(MaybeObject.class).d().isEmpty());
    assertEquals(Optional.empty(), nothing(MaybeWord.class).a());
    assertEquals(List.of(), nothing(Texts.class).a());
    assertEquals(List.of(), nothing(Objects.class).a());
    assertEquals(List.of(), said());
  }

  @Test
  void a_missing_text_comes_back_as_nothing_so_that_reading_goes_on() {
    TwoTexts texts = nothing(TwoTexts.class);
    assertEquals("", texts.a());
    assertEquals("", texts.b());
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
      fields.has("k" + i);
    }
    fields.end();
    assertTrue(said().get(0).endsWith(", k38, k39"), said().get(0));
  }
}

package org.flitchbook.json;

import static java.nio.charset.StandardCharsets.UTF_16LE;
import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

final class JsonTest {

  private static final String FILE = "plan.json";

  private static List<String> said(byte[] bytes) {
    Parsed parsed = Json.read(FILE, bytes);
    assertEquals(parsed.faults().isEmpty(), parsed.object().isPresent());
    return parsed.faults().stream().map(f -> f.severity().word() + " " + f).toList();
  }

  /** {@code line path: value} of every value, the containers first. */
  private static List<String> places(Node node) {
    List<String> all = new ArrayList<>();
    all.add(node.place().line() + " " + node.place().column() + ": " + node.shown());
    if (node instanceof Node.Obj object) {
      object.members().values().forEach(member -> all.addAll(places(member)));
    } else if (node instanceof Node.Items items) {
      items.items().forEach(item -> all.addAll(places(item)));
    }
    return all;
  }

  @Test
  void every_value_knows_its_line_and_path() {
    String text =
        """
        {
          "a": "x",

          "b": {"c": 1.50, "d": [true,
            null, {"e": -2}]}
        }
        """;
    assertEquals(
        List.of(
            "1 : an object",
            "2 a: \"x\"",
            "4 b: an object",
            "4 b.c: 1.50",
            "4 b.d: a list",
            "4 b.d[0]: true",
            "5 b.d[1]: null",
            "5 b.d[2]: an object",
            "5 b.d[2].e: -2"),
        places(Json.read(FILE, text.getBytes(UTF_8)).object().orElseThrow()));
  }

  private static Arguments row(String called, String text, String place, String found) {
    return Arguments.of(called, text, "broken " + FILE + place + ": found " + found);
  }

  static Stream<Arguments> unreadable() {
    String end = "the end of the file inside an object, a list or a text, expected JSON";
    return Stream.of(
        row("a list outermost", "\n[1]", ":2", "a list, expected an object"),
        row("a number outermost", "12", ":1", "12, expected an object"),
        row("a key twice", "{\"a\": 1,\n\"a\": 2}", ":2", "Duplicate field 'a', expected JSON"),
        row("cut off in an object", "{\"a\": 1,\n", ":2", end),
        row("cut off in a text", "{\"a\":\n \"x", ":2", end),
        row("cut off in a list", "{\"a\": [1,", ":1", end));
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("unreadable")
  void what_is_no_document_is_broken(String called, String text, String said) {
    assertEquals(List.of(said), said(text.getBytes(UTF_8)));
  }

  @ParameterizedTest
  @MethodSource("wrong")
  void other_breaches_of_the_grammar_are_told_with_their_line(String text, int line) {
    List<String> said = said(text.getBytes(UTF_8));
    assertEquals(1, said.size());
    assertTrue(said.get(0).startsWith("broken plan.json:" + line + ": found "), said.get(0));
    assertTrue(said.get(0).endsWith(", expected JSON"), said.get(0));
    assertTrue(said.get(0).lines().count() == 1, said.get(0));
  }

  static Stream<Arguments> wrong() {
    return Stream.of(
        Arguments.of("{\"a\": 1}\n x", 2),
        Arguments.of("{\"a\": 1}\n{}", 2),
        Arguments.of("{\n\"a\": 1,\n}", 3),
        Arguments.of("{\n'a': 1}", 2),
        Arguments.of("{\"a\": 01}", 1),
        Arguments.of("{\"a\": .5}", 1),
        Arguments.of("{\"a\": NaN}", 1),
        Arguments.of("{\n// why\n\"a\": 1}", 2),
        Arguments.of("{\"a\": \"x\ny\"}", 1),
        Arguments.of("{\"a\" 1}", 1),
        Arguments.of("{\"a\": tr", 1),
        Arguments.of("Time,P1", 1));
  }

  @Test
  void a_byte_order_mark_is_passed_over() {
    byte[] marked = "\uFEFF{\"a\": 1}".getBytes(UTF_8);
    assertEquals(List.of(), said(marked));
  }

  @ParameterizedTest(name = "{index}")
  @MethodSource("deep")
  void nesting_a_hundred_thousand_deep_is_a_fault_and_no_crash(String text) {
    assertEquals(
        List.of(
            "broken plan.json:1: found nesting or a value beyond what is read (1,000 deep),"
                + " expected JSON"),
        said(text.getBytes(UTF_8)));
  }

  static Stream<String> deep() {
    return Stream.of(
        "{\"a\":" + "[".repeat(100_000) + "]".repeat(100_000) + "}",
        "{\"a\":".repeat(100_000) + "1" + "}".repeat(100_000),
        "[".repeat(100_000));
  }

  @Test
  void nesting_nine_hundred_deep_is_read() {
    String text = "{\"a\":" + "[".repeat(900) + "]".repeat(900) + "}";
    assertEquals(List.of(), said(text.getBytes(UTF_8)));
  }

  @Test
  void a_number_of_two_thousand_digits_is_a_fault() {
    assertEquals(
        List.of(
            "broken plan.json:1: found nesting or a value beyond what is read (1,000 deep),"
                + " expected JSON"),
        said(("{\"a\": " + "9".repeat(2_000) + "}").getBytes(UTF_8)));
  }

  @Test
  void numbers_are_read_exactly() {
    Node.Obj object =
        Json.read(FILE, "{\"a\": 0.1, \"b\": 1e3}".getBytes(UTF_8)).object().orElseThrow();
    assertEquals(new BigDecimal("0.1"), ((Node.Num) object.members().get("a")).value());
    assertEquals(new BigDecimal("1e3"), ((Node.Num) object.members().get("b")).value());
  }

  @Test
  void what_is_written_always_has_the_same_form() {
    Map<String, Object> tree = new LinkedHashMap<>();
    tree.put("z", "°F \"x\"\n");
    tree.put("a", List.of(new BigDecimal("149.366"), 2, true));
    tree.put("m", Map.of("k", List.of()));
    assertEquals(
        """
        {
          "z" : "°F \\"x\\"\\n",
          "a" : [
            149.366,
            2,
            true
          ],
          "m" : {
            "k" : [ ]
          }
        }
        """,
        new String(Json.write(tree), UTF_8));
  }

  @Test
  void what_is_written_can_be_read() {
    byte[] bytes = Json.write(Map.of("a", List.of(1, "\u0000\uD83D\uDC16", Map.of("b", 0.5))));
    assertEquals(List.of(), said(bytes));
  }

  @Test
  void what_has_no_form_in_JSON_is_refused() {
    Map<String, Object> endless = new LinkedHashMap<>();
    endless.put("a", new Object());
    assertThrows(IllegalArgumentException.class, () -> Json.write(endless));
  }

  @Test
  void UTF_16_is_told_or_read_but_never_garbled() {
    Parsed parsed = Json.read(FILE, "{\"a\": \"°F\"}".getBytes(UTF_16LE));
    parsed.object().ifPresent(o -> assertEquals("\"°F\"", o.members().get("a").shown()));
    assertEquals(parsed.object().isEmpty(), !parsed.faults().isEmpty());
  }
}

package org.flitchbook.cli;

import static org.junit.jupiter.api.Assertions.assertAll;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The JSON of {@code check}: its keys, their types, and the figures of the example book. */
final class JsonFormTest {

  private static final Predicate<JsonNode> TEXT = JsonNode::isTextual;
  private static final Predicate<JsonNode> NUMBER = JsonNode::isNumber;
  private static final Predicate<JsonNode> LIST = JsonNode::isArray;
  private static final Predicate<JsonNode> TREE = JsonNode::isObject;
  private static final Predicate<JsonNode> LINE = atLeast(0);
  private static final Predicate<JsonNode> HASH = text("[0-9a-f]{64}");
  private static final Predicate<JsonNode> VERDICT = text("met|not met|not shown|pending");

  private static final Map<String, Predicate<JsonNode>> WHOLE =
      Map.of(
          "flitchbook",
          text("1"),
          "book",
          text(".+"),
          "day",
          text("\\d{4}-\\d\\d-\\d\\d"),
          "plan",
          TREE,
          "lots",
          LIST,
          "faults",
          LIST);

  private static final Map<String, Predicate<JsonNode>> LOT =
      Map.of("lot", text(".+"), "product", TEXT, "verdict", VERDICT, "findings", LIST);

  private static final Map<String, Predicate<JsonNode>> FINDING =
      Map.of(
          "limit", text("[a-z0-9.-]+"),
          "covers", text(".+"),
          "ccp", TEXT,
          "step", text(".+"),
          "rank", text("critical|operating|record"),
          "verdict", VERDICT,
          "formula", TEXT,
          "reason", TEXT,
          "source", TREE,
          "evidence", LIST);

  private static final Map<String, Predicate<JsonNode>> VALUE =
      Map.of(
          "quantity",
          text(".+"),
          "value",
          NUMBER,
          "unit",
          text(".+"),
          "bound",
          text("<=|>="),
          "limitValue",
          NUMBER,
          "margin",
          NUMBER);

  private static final Map<String, Predicate<JsonNode>> SOURCE =
      Map.of(
          "document", text(".+"),
          "clause", TEXT,
          "edition", text(".+"),
          "standing", text("read|second-hand|memory|derived|plan"));

  private static final Map<String, Predicate<JsonNode>> PART =
      Map.of("from", NUMBER, "to", NUMBER, "verdict", VERDICT);

  private static final Map<String, Predicate<JsonNode>> FAULT =
      Map.of(
          "rule", text(".+"),
          "severity", text("stop|ask|note"),
          "lot", TEXT,
          "file", text(".+"),
          "line", LINE,
          "found", text(".+"),
          "expected", text(".+"));

  @TempDir private static Path folder;
  private static Ran example;
  private static Ran demo;

  @BeforeAll
  static void check() {
    example = Ran.of("check", "--json", Tree.example(folder).resolve(Tree.DAY)).expect(0);
    demo = Ran.of("check", "--json", Tree.DEMO.resolve(Tree.DAY)).expect(1);
  }

  private static Predicate<JsonNode> text(String form) {
    return node -> node.isTextual() && node.asText().matches(form);
  }

  private static Predicate<JsonNode> atLeast(int least) {
    return node -> node.isInt() && node.asInt() >= least;
  }

  @Test
  void nothing_else_stands_on_either_stream() {
    assertAll(
        () -> assertEquals("", example.err()),
        () -> assertEquals("", demo.err()),
        () -> assertTrue(example.out().startsWith("{") && example.out().endsWith("}\n")),
        () -> assertEquals("book", example.json().get("book").asText()),
        () -> assertEquals("wrenfold", demo.json().get("book").asText()));
  }

  @Test
  void every_key_is_there_and_of_its_type() {
    List<String> wrong = new ArrayList<>();
    for (Ran ran : List.of(example, demo)) {
      JsonNode whole = ran.json();
      compare(wrong, "whole", whole, WHOLE);
      compare(wrong, "plan", whole.path("plan"), Map.of("version", TEXT, "sha256", HASH));
      whole.path("lots").forEach(lot -> lot(wrong, lot));
      whole.path("faults").forEach(fault -> compare(wrong, "fault", fault, FAULT));
    }
    assertEquals(List.of(), wrong);
  }

  private static void lot(List<String> wrong, JsonNode lot) {
    String name = lot.path("lot").asText();
    compare(wrong, name, lot, LOT);
    for (JsonNode finding : lot.path("findings")) {
      String where = name + " " + finding.path("limit").asText();
      compare(wrong, where, finding, FINDING);
      compare(wrong, where, finding.path("source"), SOURCE);
      value(wrong, where, finding);
      finding
          .path("evidence")
          .forEach(each -> compare(wrong, where, each, Map.of("file", TEXT, "line", LINE)));
      finding.path("parts").forEach(part -> part(wrong, where, part));
    }
  }

  private static void part(List<String> wrong, String where, JsonNode part) {
    compare(wrong, where + " part", part, PART);
    value(wrong, where + " part", part);
  }

  private static void value(List<String> wrong, String where, JsonNode holder) {
    if (holder.has("value")) {
      compare(wrong, where, holder, VALUE);
    } else if (holder.path("verdict").asText().equals("met") && holder.has("bound")) {
      wrong.add(where + " has a bound and no value");
    }
  }

  private static void compare(
      List<String> wrong, String where, JsonNode tree, Map<String, Predicate<JsonNode>> form) {
    form.forEach(
        (key, isRight) -> {
          if (!tree.has(key) || !isRight.test(tree.get(key))) {
            wrong.add(where + ": " + key + " is " + tree.get(key));
          }
        });
  }

  @Test
  void no_limit_is_found_twice_in_a_lot() {
    for (JsonNode lot : demo.json().get("lots")) {
      List<String> limits = lot.get("findings").findValuesAsText("limit");
      assertEquals(limits.size(), Set.copyOf(limits).size(), lot.get("lot").asText());
    }
  }

  @Test
  void a_lot_is_as_bad_as_its_worst_critical_finding() {
    List<String> worstFirst = List.of("not met", "not shown", "pending", "met");
    for (JsonNode lot : demo.json().get("lots")) {
      String worst =
          StreamSupport.stream(lot.get("findings").spliterator(), false)
              .filter(each -> each.get("rank").asText().equals("critical"))
              .map(each -> each.get("verdict").asText())
              .min((a, b) -> worstFirst.indexOf(a) - worstFirst.indexOf(b))
              .orElseThrow();
      assertEquals(worst, lot.get("verdict").asText(), lot.get("lot").asText());
    }
  }

  @Test
  void the_top_of_a_finding_shows_its_part_with_the_least_margin() {
    for (JsonNode finding : demo.json().findParents("parts")) {
      double least = Double.MAX_VALUE;
      for (JsonNode part : finding.get("parts")) {
        least = part.has("margin") ? Math.min(least, part.get("margin").asDouble()) : least;
      }
      if (finding.has("margin")) {
        assertEquals(least, finding.get("margin").asDouble(), 1e-6, finding.toString());
      }
    }
  }

  /** 11.5 g of 6.25 % on 4812 g, and the times between the log's own crossings. */
  @Test
  void the_example_has_the_figures_worked_out_by_hand() {
    JsonNode lot = example.json().get("lots").get(0);
    JsonNode nitrite = finding(lot, "us.424.22-b-3.nitrite");
    JsonNode parts = finding(lot, "us.b99.cooling-1").get("parts");
    assertAll(
        () -> assertEquals("26047-B1", lot.get("lot").asText()),
        () -> assertEquals("met", lot.get("verdict").asText()),
        () -> assertEquals(149.366, nitrite.get("value").asDouble(), 0.0005),
        () -> assertEquals(50.634, nitrite.get("margin").asDouble(), 0.0005),
        () -> assertEquals(200, nitrite.get("limitValue").asInt()),
        () -> assertEquals(2, parts.size()),
        () -> assertEquals(130, parts.get(0).get("from").asInt()),
        () -> assertEquals(80, parts.get(0).get("to").asInt()),
        () -> assertEquals(70, parts.get(0).get("interpolated").asDouble(), 2),
        () -> assertEquals(80, parts.get(1).get("from").asInt()),
        () -> assertEquals(40, parts.get(1).get("to").asInt()),
        () -> assertEquals(197, parts.get(1).get("interpolated").asDouble(), 2));
  }

  private static JsonNode finding(JsonNode lot, String limit) {
    return StreamSupport.stream(lot.get("findings").spliterator(), false)
        .filter(each -> each.get("limit").asText().equals(limit))
        .findFirst()
        .orElseThrow();
  }
}

package org.flitchbook.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.flitchbook.input.SourceFile;
import org.flitchbook.message.Message;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** A limit covers a hazard only where its kind, quantity, numbers and step can. */
final class CoverageTest {

  private static final String NOT_FULLY_COOKED = "heat treated, not fully cooked, not shelf stable";
  private static final String OWN =
      "{\"id\": \"own.x\", \"covers\": \"%s\", \"step\": \"%s\", \"rank\": \"critical\", %s,"
          + " \"because\": \"x\", \"support\": \"y\"}";

  private static Product product(Draft draft) {
    return draft.plan().products().get(0);
  }

  /** The least plan of a cooked product, whose class asks for each hazard that there is. */
  private static Product with(String limits, String ownLimits) {
    return product(
        Draft.of("least.json")
            .with(NOT_FULLY_COOKED, "fully cooked, not shelf stable")
            .with(
                "\"limits\": []",
                "\"limits\": [" + limits + "], \"ownLimits\": [" + ownLimits + "]"));
  }

  private static boolean isCovered(Product product, String hazard) {
    return product.missing().stream().noneMatch(each -> each.covers().equals(hazard));
  }

  private static List<String> open(Product product) {
    return product.open().stream().map(Message::toString).toList();
  }

  @ParameterizedTest(name = "{0} by {2} in {1}: {3}")
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '~',
      textBlock =
          """
          # hazard        | step    | limit                                                                                                   | covers
          nitrite ceiling | cure    | "kind": "ceiling", "quantity": "ingoing nitrite", "atMost": "625 ppm"                                   | true
          nitrite ceiling | cure    | "kind": "ceiling", "quantity": "ingoing nitrite", "atMost": "625.1 ppm"                                 | false
          nitrite ceiling | cure    | "kind": "ceiling", "quantity": "ingoing nitrite ion", "atMost": "80 ppm"                                | true
          nitrite ceiling | cure    | "kind": "floor", "quantity": "ingoing nitrite", "atLeast": "120 ppm"                                    | false
          nitrite ceiling | cure    | "kind": "ceiling", "quantity": "ingoing nitrate", "atMost": "200 ppm"                                   | false
          nitrite ceiling | cure    | "kind": "ceiling", "quantity": "ingoing salt", "atMost": "200 ppm"                                      | false
          nitrite ceiling | release | "kind": "ceiling", "quantity": "residual nitrite", "atMost": "100 ppm"                                  | false
          nitrate         | cure    | "kind": "ceiling", "quantity": "ingoing nitrate", "atMost": "0 ppm"                                     | true
          nitrate         | release | "kind": "ceiling", "quantity": "residual nitrate", "atMost": "250 ppm"                                  | true
          nitrate         | cure    | "kind": "ceiling", "quantity": "ingoing nitrite", "atMost": "0 ppm"                                     | false
          nitrate         | cure    | "kind": "ceiling", "quantity": "ingoing nitrate", "atMost": "2188 ppm"                                  | false
          cold holding    | cure    | "kind": "holding", "what": "cooler temperature", "atMost": "41 °F", "every": "16 h"                      | true
          cold holding    | cure    | "kind": "holding", "what": "internal temperature", "atMost": "8 °C", "every": "16 h"                     | true
          cold holding    | cure    | "kind": "holding", "what": "cooler temperature", "atMost": "8.1 °C", "every": "16 h"                     | false
          cold holding    | cure    | "kind": "holding", "what": "cooler temperature", "atMost": "41 °C", "every": "16 h"                      | false
          cold holding    | cure    | "kind": "holding", "what": "cooler temperature", "atLeast": "41 °F", "every": "16 h"                     | false
          cold holding    | cure    | "kind": "holding", "what": "chamber temperature", "atMost": "41 °F", "every": "16 h"                     | false
          cold holding    | cure    | "kind": "holding", "what": "humidity", "atMost": "80 %", "every": "16 h"                                 | false
          cold holding    | chill   | "kind": "holding", "what": "cooler temperature", "atMost": "41 °F", "every": "16 h"                      | false
          cold holding    | dry     | "kind": "holding", "what": "cooler temperature", "atMost": "41 °F", "every": "16 h"                      | false
          cold holding    | cure    | "kind": "cadence", "what": "cooler temperature", "every": "16 h"                                        | false
          come-up         | smoke   | "kind": "span", "what": "internal temperature", "from": "50 °F", "to": "130 °F", "atMost": "6 h"         | true
          come-up         | smoke   | "kind": "span", "what": "internal temperature", "from": "10 °C", "to": "54.4 °C", "atMost": "6 h"        | true
          come-up         | smoke   | "kind": "span", "what": "internal temperature", "from": "60 °F", "to": "120 °F", "atMost": "6 h"         | true
          come-up         | smoke   | "kind": "span", "what": "internal temperature", "from": "60.1 °F", "to": "130 °F", "atMost": "6 h"       | false
          come-up         | smoke   | "kind": "span", "what": "internal temperature", "from": "50 °F", "to": "119.9 °F", "atMost": "6 h"       | false
          come-up         | smoke   | "kind": "span", "what": "internal temperature", "from": "130 °F", "to": "50 °F", "atMost": "6 h"         | false
          come-up         | smoke   | "kind": "span", "what": "chamber temperature", "from": "50 °F", "to": "130 °F", "atMost": "6 h"          | false
          come-up         | smoke   | "kind": "duration", "from": "into smoke", "to": "out of smoke", "atMost": "60 min"                      | true
          come-up         | smoke   | "kind": "duration", "from": "into smoke", "to": "out of smoke", "atLeast": "60 min"                     | false
          come-up         | smoke   | "kind": "duration", "from": "into smoke", "to": "into smoke", "atMost": "60 min"                        | false
          come-up         | smoke   | "kind": "floor", "quantity": "peak internal temperature", "atLeast": "145 °F"                           | false
          cooling         | chill   | "kind": "span", "what": "internal temperature", "from": "120 °F", "to": "55 °F", "atMost": "6 h"         | true
          cooling         | chill   | "kind": "span", "what": "internal temperature", "from": "119.9 °F", "to": "40 °F", "atMost": "6 h"       | false
          cooling         | chill   | "kind": "span", "what": "internal temperature", "from": "130 °F", "to": "55.1 °F", "atMost": "6 h"       | false
          cooling         | chill   | "kind": "span", "what": "internal temperature", "from": "130 °F", "to": "120 °F", "atMost": "6 h"        | false
          cooling         | chill   | "kind": "span", "what": "internal temperature", "from": "50 °F", "to": "130 °F", "atMost": "6 h"         | false
          cooling         | chill   | "kind": "span", "what": "cooler temperature", "from": "130 °F", "to": "40 °F", "atMost": "6 h"           | false
          cooling         | smoke   | "kind": "span", "what": "internal temperature", "from": "130 °F", "to": "40 °F", "atMost": "6 h"         | false
          cooling         | chill   | "kind": "ceiling", "quantity": "peak internal temperature", "atMost": "165 °F"                          | false
          cooling         | chill   | "kind": "holding", "what": "internal temperature", "atMost": "40 °F", "every": "16 h"                    | false
          cooling         | chill   | "kind": "duration", "from": "out of smoke", "to": "into chill", "atMost": "90 min"                      | false
          lethality       | smoke   | "kind": "time-at-temperature", "what": "internal temperature", "rows": [{"atLeast": "54 °C", "for": "2 h"}]   | true
          lethality       | smoke   | "kind": "time-at-temperature", "what": "internal temperature", "rows": [{"atLeast": "145 °F", "for": "4 min"}, {"atLeast": "53.9 °C", "for": "2 h"}] | false
          lethality       | smoke   | "kind": "time-at-temperature", "what": "chamber temperature", "rows": [{"atLeast": "145 °F", "for": "4 min"}] | false
          lethality       | smoke   | "kind": "floor", "quantity": "peak internal temperature", "atLeast": "145 °F"                           | false
          humidity        | smoke   | "kind": "share", "options": [{"name": "a", "while": {"what": "humidity", "atLeast": "90 %"}, "share": "50 %"}] | true
          humidity        | smoke   | "kind": "share", "options": [{"name": "a", "while": {"what": "steam", "is": "on"}, "share": "50 %"}, {"name": "b", "while": {"what": "chamber temperature", "atLeast": "90 °F"}, "share": "50 %"}] | false
          humidity        | smoke   | "kind": "entry", "what": "steam"                                                                        | false
          """)
  void an_own_limit(String hazard, String step, String limit, boolean covers) {
    Product product = with("", OWN.formatted(hazard, step, limit));
    assertEquals(covers, isCovered(product, hazard));
    assertEquals(covers ? 0 : 1, product.open().size(), open(product).toString());
    for (Message each : product.open()) {
      assertTrue(
          each.toString().startsWith("own.x says that it covers " + hazard + ", and can't. "),
          each.toString());
    }
  }

  @ParameterizedTest(name = "stages {0}: {1}")
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          130-80 80-40        | true
          80-40 130-80        | true
          130-55 120-40       | true
          130-90 80-40        | false
          130-80 75-40 90-80  | false
          130-80 80-40 40-130 | false
          """)
  void the_stages_of_a_cooling_leave_no_hole(String stages, boolean covers) {
    String written =
        List.of(stages.split(" ", -1)).stream()
            .map(each -> each.split("-", -1))
            .map(
                each ->
                    "{\"from\": \"%s °F\", \"to\": \"%s °F\", \"atMost\": \"2 h\"}"
                        .formatted(each[0], each[1]))
            .collect(Collectors.joining(", "));
    String span =
        "\"kind\": \"span\", \"what\": \"internal temperature\", \"stages\": [" + written + "]";
    assertEquals(covers, isCovered(with("", OWN.formatted("cooling", "chill", span)), "cooling"));
  }

  /** It would be printed as the cooling that was met. */
  @Test
  void an_own_limit_of_another_kind_is_told_beside_one_that_covers() {
    String peak =
        "\"kind\": \"ceiling\", \"quantity\": \"peak internal temperature\", \"atMost\": \"165"
            + " °F\"";
    Product product =
        with("{\"limit\": \"us.b99.cooling-1\"}", OWN.formatted("cooling", "chill", peak));
    assertTrue(isCovered(product, "cooling"));
    assertEquals(
        List.of(
            "own.x says that it covers cooling, and can't. Cooling is covered by a span of the"
                + " internal temperature in the step chill, without a hole from 120 °F or above to"
                + " 55 °F or below."),
        open(product));
  }

  @Test
  void cold_holding_of_the_drying_is_well_beside_that_of_the_cure() {
    Product product =
        with(
            "{\"limit\": \"us-retail.fc22.3-501.16.cold-cure\"}, {\"limit\":"
                + " \"us-retail.fc22.3-501.16.cold-dry\"}",
            OWN.formatted(
                "cold holding",
                "dry",
                "\"kind\": \"holding\", \"what\": \"cooler temperature\", \"atMost\": \"41 °F\","
                    + " \"every\": \"16 h\""));
    assertTrue(isCovered(product, "cold holding"));
    assertEquals(List.of(), open(product));
  }

  @ParameterizedTest(name = "any of {0}: {1} covered: {2}; {3}")
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          us.b99.cooling-1 us-retail.fc22.3-501.14-a.cooling  | cooling         | true  |
          us.b99.cooling-1 us.a21.come-up                     | cooling         | false | cooling and come-up
          us.a21.come-up us.b99.cooling-1                     | come-up         | false | come-up and cooling
          us.424.22-b-3.nitrite us.hb.12.nitrite-floor        | nitrite ceiling | false | nitrite ceiling and nitrite floor
          us.424.22-b-3.nitrite us.424.22-b-3.surfaces us.424.21-c.nitrate-bacon | nitrate | false | nitrite ceiling and surfaces and nitrate
          us-retail.fc22.3-501.16.cold-cure us-retail.fc22.3-501.16.cold-dry     | cold holding | false |
          """)
  void a_group_covers_only_where_each_of_its_limits_does(
      String limits, String hazard, boolean covers, String hazards) {
    String ids =
        List.of(limits.split(" ", -1)).stream()
            .map(id -> "\"" + id + "\"")
            .collect(Collectors.joining(", "));
    Product product = with("{\"anyOf\": [" + ids + "]}", "");
    assertEquals(covers, isCovered(product, hazard));
    String told =
        "anyOf joins limits for "
            + hazards
            + "; the best verdict of a group counts, so that it may hold limits for one of them"
            + " only";
    assertEquals(
        hazards == null ? List.of() : List.of(told),
        open(product).stream().filter(each -> each.startsWith("anyOf")).toList());
  }

  /** A loose limit beside a critical one would be the best verdict. */
  @Test
  void a_group_with_an_operating_limit_covers_nothing() {
    Draft draft =
        Draft.of("least.json")
            .with(
                "\"limits\": []",
                "\"limits\": [{\"anyOf\": [\"us.b99.cooling-1\","
                    + " \"us-retail.fc22.3-501.14-a.cooling\"]}]");
    assertTrue(isCovered(product(draft), "cooling"));
    Draft operating =
        draft.with(
            Draft.RETAIL,
            "\"covers\": \"cooling\", \"step\": \"chill\", \"rank\": \"critical\"",
            "\"covers\": \"cooling\", \"step\": \"chill\", \"rank\": \"operating\"");
    assertEquals(false, isCovered(product(operating), "cooling"));
  }

  private static List<String> doubted(String limits, String confirmed) {
    return open(
        product(
            Draft.of("least.json")
                .with("\"limits\": []", "\"limits\": [" + limits + "]")
                .with(
                    "\"reassessBy\": \"2027-01-05\"",
                    "\"reassessBy\": \"2027-01-05\", \"confirms\": [" + confirmed + "]")));
  }

  @Test
  void a_limit_that_is_in_doubt_until_something_is_confirmed_is_told() {
    String nrte = "{\"limit\": \"us.a21.come-up-nrte\"}";
    assertEquals(
        List.of(
            "us.a21.come-up-nrte can't be met until the plan confirms it or the stricter"
                + " us.b21.come-up-partly, with what supports that, under \"confirms\""),
        doubted(nrte, ""));
    assertEquals(
        List.of(),
        doubted(nrte, "{\"limit\": \"us.b21.come-up-partly\", \"support\": \"letter\"}"));
  }

  @Test
  void a_group_with_one_limit_that_is_in_no_doubt_can_be_met() {
    assertEquals(
        List.of(),
        doubted(
            "{\"anyOf\": [\"us.a21.come-up-nrte\", \"us-retail.fc22.3-401.14.first-heat\"]}", ""));
  }

  @Test
  void a_hazard_that_no_coverage_is_stated_for_is_covered_by_what_says_so() {
    Draft draft =
        Draft.of("least.json")
            .with(Draft.CLASSES, "\"covers\": \"cooling\",", "\"covers\": \"chilling\",")
            .with(
                "\"limits\": []",
                "\"limits\": [], \"ownLimits\": ["
                    + OWN.formatted("cooling", "chill", "\"kind\": \"entry\", \"what\": \"weight\"")
                    + "]");
    assertTrue(isCovered(product(draft), "cooling"));
    assertEquals(List.of(), open(product(draft)));
  }

  private static Classes shipped() {
    Draft draft = Draft.example();
    byte[] bytes =
        Optional.ofNullable(draft.files().get(Draft.CLASSES))
            .orElseThrow()
            .getBytes(java.nio.charset.StandardCharsets.UTF_8);
    return Classes.read(List.of(SourceFile.of(Draft.CLASSES, bytes))).value().orElseThrow();
  }

  @Test
  void each_hazard_of_a_class_says_what_covers_it() {
    for (Classes.ProductClass each : shipped().classes()) {
      for (String hazard : each.covers()) {
        assertTrue(shipped().coverage(hazard).isPresent(), hazard);
      }
    }
  }

  /** Beside the parts of another limit, each has a kind by which its hazard is covered. */
  @ParameterizedTest
  @ValueSource(strings = {"us", "us-retail", "eu", "gb", "ca", "au-nz", "codex"})
  void the_limits_of_a_rule_set_can_cover_what_they_say(String name) {
    Path file = Path.of("templates", "limits", name + ".json");
    RuleSet set =
        RuleSet.read(
                SourceFile.of(
                    file.toString(),
                    Draft.text(file).getBytes(java.nio.charset.StandardCharsets.UTF_8)))
            .value()
            .orElseThrow();
    Catalogue catalogue = new Catalogue(List.of(set));
    assertEquals(
        List.of(),
        set.limits().values().stream()
            .filter(limit -> limit.rank() == Rank.CRITICAL && !catalogue.isPart(limit.id()))
            .filter(
                limit ->
                    shipped()
                        .coverage(limit.covers())
                        .filter(known -> !known.isByKind(limit.kind()))
                        .isPresent())
            .map(Limit::id)
            .toList());
  }
}

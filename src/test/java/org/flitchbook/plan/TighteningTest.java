package org.flitchbook.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A plan may make a limit of any kind tighter; looser only with support. */
final class TighteningTest {

  private static final String REFUSED =
      "plan.json:18:products[0].limits[0].support: found trial.limit loosened without support,"
          + " expected numbers no looser than a document 1, or the \"support\" for it";

  private static Draft trial(String kind, String override) {
    String set =
        """
        {"flitchbook": 1, "ruleSet": "trial", "title": "t", "made": "2026-11-25", "by": "b",
         "editions": [], "notRead": [], "limits": [{"id": "trial.limit", "covers": "cooling",
         "step": "cure", "rank": "critical", "because": "b", KIND, "source":
         {"document": "a document", "clause": "1", "edition": "e", "standing": "read"}}]}
        """;
    return Draft.of("least.json")
        .whole("templates/limits/trial.json", set.replace("KIND", kind))
        .with("\"us-retail\"", "\"trial\"")
        .with("\"limits\": []", "\"limits\": [{\"limit\": \"trial.limit\"" + override + "}]");
  }

  @ParameterizedTest(name = "{0} with {2} is {1}")
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          # the limit                                                                       | is      | with
          "kind": "ceiling", "quantity": "ingoing nitrite", "atMost": "200 ppm"             | tighter | "atMost": "199.99 ppm"
          "kind": "ceiling", "quantity": "ingoing nitrite", "atMost": "200 ppm"             | alike   | "atMost": "0.02 %"
          "kind": "ceiling", "quantity": "ingoing nitrite", "atMost": "200 ppm"             | looser  | "atMost": "200.01 ppm"
          "kind": "floor", "quantity": "peak internal temperature", "atLeast": "140 °F"     | tighter | "atLeast": "60.1 °C"
          "kind": "floor", "quantity": "peak internal temperature", "atLeast": "140 °F"     | alike   | "atLeast": "60 °C"
          "kind": "floor", "quantity": "peak internal temperature", "atLeast": "140 °F"     | looser  | "atLeast": "139.9 °F"
          "kind": "floor", "quantity": "water activity", "atLeast": "0.85"                  | looser  | "atLeast": "0.84"
          "kind": "ceiling", "quantity": "water activity", "atMost": "0.85"                 | tighter | "atMost": "0.8"
          "kind": "duration", "from": "into cure", "to": "out of cure", "atLeast": "7 d"    | tighter | "atLeast": "169 h"
          "kind": "duration", "from": "into cure", "to": "out of cure", "atLeast": "7 d"    | alike   | "atLeast": "168 h"
          "kind": "duration", "from": "into cure", "to": "out of cure", "atLeast": "7 d"    | looser  | "atLeast": "167 h"
          "kind": "duration", "from": "into cure", "to": "out of cure", "atMost": "90 min"  | tighter | "atMost": "1 h"
          "kind": "duration", "from": "into cure", "to": "out of cure", "atMost": "90 min"  | looser  | "atMost": "1.6 h"
          "kind": "cadence", "what": "turned", "every": "36 h"                              | tighter | "every": "1 d"
          "kind": "cadence", "what": "turned", "every": "36 h"                              | looser  | "every": "2 d"
          "kind": "holding", "what": "cooler temperature", "atMost": "41 °F", "every": "16 h" | tighter | "atMost": "4 °C"
          "kind": "holding", "what": "cooler temperature", "atMost": "41 °F", "every": "16 h" | alike   | "atMost": "5 °C"
          "kind": "holding", "what": "cooler temperature", "atMost": "41 °F", "every": "16 h" | looser  | "atMost": "5.1 °C"
          "kind": "holding", "what": "cooler temperature", "atMost": "41 °F", "every": "16 h" | tighter | "every": "12 h"
          "kind": "holding", "what": "cooler temperature", "atMost": "41 °F", "every": "16 h" | looser  | "every": "17 h"
          "kind": "holding", "what": "cooler temperature", "atMost": "41 °F", "every": "16 h" | looser  | "allow": "1 min"
          "kind": "holding", "what": "cooler temperature", "atMost": "41 °F", "every": "16 h" | looser  | "atMost": "40 °F", "every": "17 h"
          "kind": "holding", "what": "cooler temperature", "atMost": "41 °F", "every": "16 h", "allow": "30 min" | tighter | "allow": "0 min"
          "kind": "holding", "what": "internal temperature", "atLeast": "135 °F", "every": "2 h" | tighter | "atLeast": "140 °F"
          "kind": "holding", "what": "internal temperature", "atLeast": "135 °F", "every": "2 h" | looser  | "atLeast": "130 °F"
          "kind": "holding", "what": "humidity", "atLeast": "60 %", "every": "2 h"          | tighter | "atLeast": "61 %"
          "kind": "span", "what": "internal temperature", "from": "50 °F", "to": "130 °F", "atMost": "6 h" | tighter | "stages": [{"from": "50 °F", "to": "130 °F", "atMost": "5 h"}]
          "kind": "span", "what": "internal temperature", "from": "50 °F", "to": "130 °F", "atMost": "6 h" | alike   | "stages": [{"from": "10 °C", "to": "130 °F", "atMost": "360 min"}]
          "kind": "span", "what": "internal temperature", "from": "50 °F", "to": "130 °F", "atMost": "6 h" | looser  | "stages": [{"from": "50 °F", "to": "130 °F", "atMost": "361 min"}]
          "kind": "span", "what": "internal temperature", "from": "50 °F", "to": "130 °F", "atMost": "6 h" | looser  | "stages": [{"from": "60 °F", "to": "130 °F", "atMost": "5 h"}]
          "kind": "span", "what": "internal temperature", "from": "50 °F", "to": "130 °F", "atMost": "6 h" | tighter | "stages": [{"from": "50 °F", "to": "130 °F", "atMost": "6 h"}, {"from": "60 °F", "to": "120 °F", "atMost": "2 h"}]
          "kind": "time-at-temperature", "what": "internal temperature", "rows": [{"atLeast": "140 °F", "for": "12 min"}, {"atLeast": "145 °F", "for": "4 min"}] | tighter | "rows": [{"atLeast": "145 °F", "for": "4 min"}]
          "kind": "time-at-temperature", "what": "internal temperature", "rows": [{"atLeast": "140 °F", "for": "12 min"}, {"atLeast": "145 °F", "for": "4 min"}] | tighter | "rows": [{"atLeast": "142 °F", "for": "12 min"}]
          "kind": "time-at-temperature", "what": "internal temperature", "rows": [{"atLeast": "140 °F", "for": "12 min"}, {"atLeast": "145 °F", "for": "4 min"}] | alike   | "rows": [{"atLeast": "60 °C", "for": "720 s"}]
          "kind": "time-at-temperature", "what": "internal temperature", "rows": [{"atLeast": "140 °F", "for": "12 min"}, {"atLeast": "145 °F", "for": "4 min"}] | looser  | "rows": [{"atLeast": "142 °F", "for": "8 min"}]
          "kind": "time-at-temperature", "what": "internal temperature", "rows": [{"atLeast": "140 °F", "for": "12 min"}, {"atLeast": "145 °F", "for": "4 min"}] | looser  | "rows": [{"atLeast": "145 °F", "for": "4 min"}, {"atLeast": "130 °F", "for": "112 min"}]
          """)
  void a_limit_may_be_tightened_and_loosened_only_with_support(
      String kind, String is, String override) {
    boolean refused = is.equals("looser");
    assertEquals(refused ? List.of(REFUSED) : List.of(), trial(kind, ", " + override).faults());
    Draft supported = trial(kind, ", " + override + ", \"support\": \"letter of 2025-11-03\"");
    assertEquals(List.of(), supported.faults());
    Limit limit = supported.plan().products().get(0).limits().get(0);
    assertEquals("letter of 2025-11-03", limit.support().orElseThrow());
    Limit original = trial(kind, "").plan().products().get(0).limits().get(0);
    assertEquals(refused, Tightening.isLooser(limit.kind(), original.kind()));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          "kind": "entry", "what": "reviewed", "before": "dispatched", "with": ["by"] | "every": "1 h"
          "kind": "share", "options": [{"name": "o", "while": {"what": "steam", "is": "on"}, "share": "50 %"}] | "atLeast": "1 h"
          "kind": "cadence", "what": "turned", "every": "36 h" | "atMost": "36 h"
          """)
  void a_number_that_the_kind_has_not_is_an_unknown_key(String kind, String override) {
    List<String> faults = trial(kind, ", " + override).faults();
    assertEquals(1, faults.size(), faults.toString());
    assertEquals(
        true,
        faults.get(0).contains("found the key " + override.substring(0, override.indexOf(':'))));
  }
}

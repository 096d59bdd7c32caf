package org.flitchbook.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Which controls a product's class asks for, and when a stricter limit leaves a doubt. */
final class CoverTest {

  private static final String NOT_FULLY_COOKED = "heat treated, not fully cooked, not shelf stable";

  /** The least plan with these limits chosen. */
  private static Draft with(String... limits) {
    String entries =
        Arrays.stream(limits)
            .map(id -> "{\"limit\": \"" + id + "\"}")
            .collect(Collectors.joining(", "));
    return Draft.of("least.json").with("\"limits\": []", "\"limits\": [" + entries + "]");
  }

  private static String missing(Draft draft) {
    return draft.plan().products().get(0).missing().stream()
        .map(Product.Missing::covers)
        .collect(Collectors.joining(", "));
  }

  private static List<String> doubts(Draft draft) {
    return draft.plan().products().get(0).limits().stream()
        .flatMap(limit -> limit.doubt().stream())
        .toList();
  }

  @Test
  void a_plan_that_is_silent_misses_all_that_its_class_asks_for() {
    assertEquals("nitrite ceiling, nitrate, cold holding, come-up, cooling", missing(with()));
    Draft cooked = with().with(NOT_FULLY_COOKED, "fully cooked, not shelf stable");
    assertEquals(
        "nitrite ceiling, nitrate, cold holding, come-up, cooling, lethality, humidity",
        missing(cooked));
  }

  @Test
  void what_is_missing_names_the_reason_and_the_source() {
    Product.Missing missing = with().plan().products().get(0).missing().get(0);
    assertEquals("9 CFR 417.2 (b)(1)", missing.source().cited());
    assertEquals(true, missing.because().startsWith("Its heat does not make it safe"));
  }

  @Test
  void the_example_misses_nothing() {
    for (Product product : Draft.example().plan().products()) {
      assertEquals(List.of(), product.missing(), product.code());
    }
  }

  @ParameterizedTest(name = "{0} covers cooling: {1}")
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          us.b99.cooling-1                                | true
          us.b99.cooling-2.start                          | false
          us.b99.cooling-2                                | false
          us.b99.cooling-2 us.b99.cooling-2.start         | true
          us.b99.cooling-1 us.b99.cooling-2.start         | true
          us-retail.fc22.3-501.14-a.cooling               | true
          """)
  void a_limit_of_parts_covers_only_with_all_of_them(String limits, boolean covered) {
    assertEquals(!covered, missing(with(limits.split(" ", -1))).contains("cooling"));
  }

  @Test
  void only_a_critical_limit_covers() {
    String own =
        """
        "limits": [], "ownLimits": [{"id": "own.come-up", "covers": "come-up", "step": "smoke",
          "rank": "RANK", "kind": "span", "what": "internal temperature",
          "from": "50 °F", "to": "130 °F", "atMost": "6 h", "because": "x", "support": "y"}]
        """;
    Draft least = Draft.of("least.json");
    for (Rank rank : Rank.values()) {
      Draft draft = least.with("\"limits\": []", own.replace("RANK", rank.word()));
      assertEquals(rank != Rank.CRITICAL, missing(draft).contains("come-up"), rank.word());
    }
  }

  @Test
  void a_named_exemption_covers_its_control_and_no_other() {
    Draft cooked = with().with(NOT_FULLY_COOKED, "fully cooked, not shelf stable");
    Draft exempt =
        cooked.with(
            "\"limits\": []",
            "\"limits\": [], \"exemptions\": [{\"name\": \"cooked by direct heat\", \"support\":"
                + " \"file 6\"}]");
    assertEquals(
        "nitrite ceiling, nitrate, cold holding, come-up, cooling, lethality", missing(exempt));
    Product.Exempt named = exempt.plan().products().get(0).exemptions().get(0);
    assertEquals("file 6", named.support());
    assertEquals("humidity", named.exemption().covers());
    assertEquals(Standing.READ, named.exemption().source().standing());
    assertEquals("pp. 31-33", named.exemption().source().clause());
  }

  @Test
  void a_rule_set_lists_each_exemption_once() {
    String name = "\"name\": \"cooked by direct heat\"";
    Draft twice = with().with(Draft.US, name, "\"name\": \"cooked immersed in liquid\"");
    assertEquals(1, twice.faults().size());
    assertEquals(
        true,
        twice
            .faults()
            .get(0)
            .endsWith("found \"cooked immersed in liquid\" twice, expected each once"),
        twice.faults().get(0));
  }

  @Test
  void a_group_covers_what_its_limits_cover() {
    Draft draft =
        Draft.of("least.json")
            .with(
                "\"limits\": []",
                "\"limits\": [{\"anyOf\": [\"us.b99.cooling-1\", \"us.b99.cooling-2\"], \"ccp\":"
                    + " \"2\"}]");
    assertEquals("nitrite ceiling, nitrate, cold holding, come-up", missing(draft));
    List<Limit> limits = draft.plan().products().get(0).limits();
    assertEquals(
        List.of("us.b99.cooling-1 or us.b99.cooling-2", "us.b99.cooling-1 or us.b99.cooling-2"),
        limits.stream().map(Limit::group).toList());
    assertEquals(
        List.of("2", "2"), limits.stream().map(limit -> limit.monitoring().ccp()).toList());
  }

  @Test
  void a_group_of_one_is_a_limit_and_may_have_its_own_numbers() {
    Limit limit =
        Draft.of("least.json")
            .with(
                "\"limits\": []",
                "\"limits\": [{\"anyOf\": [\"us.424.22-b-3.nitrite\"], \"atMost\": \"180 ppm\"}]")
            .plan()
            .products()
            .get(0)
            .limits()
            .get(0);
    assertEquals("", limit.group());
    assertEquals("180 ppm", ((Kind.Bound) limit.kind()).limit().toString());
  }

  @Test
  void a_stricter_limit_leaves_a_doubt() {
    assertEquals(List.of("us.b21.come-up-partly"), doubts(with("us.a21.come-up-nrte")));
    assertEquals(
        List.of("us.a21.table-2.lethality-6.5"), doubts(with("us.a21.table-6.lethality-5")));
  }

  @ParameterizedTest(name = "{0}")
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          # settled by                       | in the limits                                              | in the plan
          its own confirmation               | {"limit": "us.a21.come-up-nrte"}                           | {"limit": "us.a21.come-up-nrte", "support": "letter"}
          the stricter one's confirmation    | {"limit": "us.a21.come-up-nrte"}                           | {"limit": "us.b21.come-up-partly", "support": "letter"}
          support in the entry               | {"limit": "us.a21.come-up-nrte", "support": "letter"}      |
          """)
  void a_doubt_is_settled_by(String by, String entry, String confirmed) {
    assertEquals(List.of(), doubts(confirming(entry, confirmed == null ? "" : confirmed)));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          {"limit": "us.a21.come-up-nrte", "support": " "} |
          {"limit": "us.a21.come-up-nrte", "ccp": "2"}     |
          {"limit": "us.a21.come-up-nrte"} | {"limit": "us.a21.table-6.lethality-5", "support": "letter"}
          """)
  void a_doubt_is_not_settled_by_less(String entry, String confirmed) {
    assertEquals(
        List.of("us.b21.come-up-partly"),
        doubts(confirming(entry, confirmed == null ? "" : confirmed)));
  }

  private static Draft confirming(String entry, String confirmed) {
    return Draft.of("least.json")
        .with("\"limits\": []", "\"limits\": [" + entry + "]")
        .with(
            "\"reassessBy\": \"2027-01-05\"",
            "\"reassessBy\": \"2027-01-05\", \"confirms\": [" + confirmed + "]");
  }

  @Test
  void a_doubt_is_settled_by_an_own_limit_for_the_same() {
    String own =
        """
        "limits": [{"limit": "us.a21.come-up-nrte"}], "ownLimits": [{"id": "own.x",
          "covers": "COVERS", "step": "smoke", "rank": "critical", "kind": "span",
          "what": "internal temperature", "from": "50 °F", "to": "130 °F", "atMost": "6 h",
          "because": "x", "support": "y"}]
        """;
    Draft least = Draft.of("least.json");
    assertEquals(List.of(), doubts(least.with("\"limits\": []", own.replace("COVERS", "come-up"))));
    assertEquals(
        List.of("us.b21.come-up-partly"),
        doubts(least.with("\"limits\": []", own.replace("COVERS", "finish"))));
  }

  @Test
  void a_limit_that_can_not_apply_to_the_product_leaves_no_doubt() {
    Draft draft = with("us.a21.come-up-nrte");
    String doubting =
        "\"atMost\": \"1 h\",\n      \"when\": {\"class\": [\"" + NOT_FULLY_COOKED + "\"]}";
    assertEquals(
        List.of("us.b21.come-up-partly"),
        doubts(draft.with(Draft.US, doubting, doubting.replace("]}", "], \"cut\": [\"belly\"]}"))));
    for (String other :
        List.of(
            "\"class\": [\"fully cooked, not shelf stable\"]",
            "\"cut\": [\"ham\"]",
            "\"cureMethod\": [\"pumped\"]")) {
      String changed = "\"atMost\": \"1 h\",\n      \"when\": {" + other + "}";
      assertEquals(List.of(), doubts(draft.with(Draft.US, doubting, changed)), other);
    }
  }

  @Test
  void only_the_start_of_option_2_is_a_part_of_another_limit() {
    Catalogue catalogue = new Catalogue(with().plan().ruleSets());
    assertEquals(
        List.of("us.b99.cooling-2.start"),
        catalogue.ruleSets().stream()
            .flatMap(set -> set.limits().keySet().stream())
            .filter(catalogue::isPart)
            .toList());
  }
}

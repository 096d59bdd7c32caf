package org.flitchbook.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.flitchbook.input.SourceFile;
import org.flitchbook.json.Binder;
import org.flitchbook.measure.Dimension;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Unit;
import org.flitchbook.sheet.Step;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

final class ExamplePlanTest {

  private static Limit limit(Plan plan, String product, String id) {
    return plan.product(product).orElseThrow().limits().stream()
        .filter(each -> each.id().equals(id))
        .findFirst()
        .orElseThrow();
  }

  @Test
  void the_example_reads_without_a_fault() {
    Plan plan = Draft.example().plan();
    assertEquals("Wrenfold Smokeyard", plan.establishment().name());
    assertEquals("310 ft", plan.establishment().altitude().orElseThrow().toString());
    assertEquals("3", plan.version());
    assertEquals("2026-01-05", plan.signed().toString());
    assertTrue(plan.person("IQ").orElseThrow().is("reviewer"));
    assertEquals(Optional.empty(), plan.person("XY"));
    assertEquals("0.1 g", step(plan, "S-01", Unit.GRAM));
    assertEquals(
        "0.5 °F", plan.instrument("LG-A").orElseThrow().accuracy().orElseThrow().toString());
    assertEquals("fan fridge", plan.location("F2").orElseThrow().name());
    Ingredient cure = plan.ingredient("C1-7741").orElseThrow();
    assertEquals("6.25 %", cure.sodiumNitrite().orElseThrow().toString());
    assertEquals(Optional.empty(), cure.potassiumNitrite());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          "salt": "91.75 %"
          "salt": "93.95 %"
          "salt": "60 %", "other": "33.75 %"
          "potassiumNitrite": "93.95 %"
          "other": "10 %"
          """)
  void the_shares_of_a_cure_may_be(String shares) {
    assertEquals(List.of(), Draft.example().with("\"salt\": \"93.75 %\"", shares).faults());
  }

  @ParameterizedTest(name = "{0}: {1}")
  @CsvSource({
    "4.99 %, true",
    "5 %, false",
    "8 %, false",
    "8.01 %, true",
    "100 %, true",
    "0.6 %, true",
    "0 %, false"
  })
  void a_strength_that_no_cure_for_a_days_use_has_lacks_its_label(String nitrite, boolean lacks) {
    for (String key : List.of("sodiumNitrite", "potassiumNitrite")) {
      Draft draft =
          Draft.example()
              .with("\"salt\": \"93.75 %\", ", "")
              .with("\"sodiumNitrite\": \"6.25 %\"", "\"%s\": \"%s\"".formatted(key, nitrite));
      assertEquals(lacks, lacksLabel(draft), key);
      assertEquals(
          false,
          lacksLabel(draft.with("\"custodian\": \"MA\"", "\"support\": \"label of the bag\"")));
    }
  }

  private static boolean lacksLabel(Draft draft) {
    Ingredient cure = draft.plan().ingredient("C1-7741").orElseThrow();
    return cure.lacksLabel(draft.plan().practice().dayCure());
  }

  private static String step(Plan plan, String scale, Unit written) {
    return plan.instrument(scale).orElseThrow().readability(written).orElseThrow().toString();
  }

  @ParameterizedTest(name = "{0} in g, kg, oz and lb: {1}")
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          "1 g"                          | 1 g, 1 g, 1 g, 1 g
          ["1 g"]                        | 1 g, 1 g, 1 g, 1 g
          ["5 g", "0.01 lb"]             | 5 g, 5 g, 0.01 lb, 0.01 lb
          ["0.01 lb", "5 g"]             | 5 g, 5 g, 0.01 lb, 0.01 lb
          ["0.002 kg", "0.1 oz"]         | 0.002 kg, 0.002 kg, 0.1 oz, 0.1 oz
          ["1 g", "0.1 oz", "0.01 lb"]   | 1 g, 1 g, 0.1 oz, 0.01 lb
          ["0.1 oz", "0.01 lb"]          | 0.01 lb, 0.01 lb, 0.1 oz, 0.01 lb
          """)
  void a_scale_has_a_step_for_each_unit_that_it_shows(String written, String steps) {
    Plan plan =
        Draft.example().with("\"readability\": \"1 g\"", "\"readability\": " + written).plan();
    assertEquals(
        steps,
        Unit.of(Dimension.MASS).stream()
            .map(unit -> step(plan, "S-10", unit))
            .collect(Collectors.joining(", ")));
  }

  @Test
  void the_plan_of_the_demo_reads_without_a_fault() {
    Draft demo =
        Draft.example()
            .whole(Draft.PLAN, Draft.text(Path.of("demo-data", "wrenfold", "plan.json")));
    assertEquals(List.of(), demo.faults());
  }

  @ParameterizedTest(name = "{0} {1}")
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          # product | limit                     | kind                | step  | rank      | covers
          JTB | us.424.22-b-3.nitrite           | ceiling             | CURE  | CRITICAL  | nitrite ceiling
          JTB | us.424.21-c.nitrate-bacon       | ceiling             | CURE  | CRITICAL  | nitrate
          JTB | us.b99.cooling-1                | span                | CHILL | CRITICAL  | cooling
          JTB | us.319.107.yield                | ceiling             | CHILL | OPERATING | yield
          JTB | own.nitrite-floor               | floor               | CURE  | CRITICAL  | nitrite floor
          JTB | own.cure-days                   | duration            | CURE  | OPERATING | days in cure
          JTB | own.turn                        | cadence             | CURE  | OPERATING | turning
          JTB | own.cure-cold                   | holding             | CURE  | CRITICAL  | cold holding
          JTB | own.come-up                     | span                | SMOKE | CRITICAL  | come-up
          JTB | own.finish                      | floor               | SMOKE | OPERATING | finish
          CPL | us.a21.table-2.lethality-6.5    | time-at-temperature | SMOKE | CRITICAL  | lethality
          CPL | us.a21.table-1.humidity         | share               | SMOKE | CRITICAL  | humidity
          CPL | us.a21.come-up                  | span                | SMOKE | CRITICAL  | come-up
          """)
  void a_limit_in_force_is_what_its_file_says(
      String product, String id, String kind, Step step, Rank rank, String covers) {
    Limit limit = limit(Draft.example().plan(), product, id);
    assertEquals(kind, limit.kind().word());
    assertEquals(step, limit.step());
    assertEquals(rank, limit.rank());
    assertEquals(covers, limit.covers());
    boolean own = id.startsWith("own.");
    assertEquals(own ? Standing.PLAN : limit.source().standing(), limit.source().standing());
    assertEquals(own, limit.support().isPresent());
    assertEquals("", limit.group());
  }

  @Test
  void monitoring_and_source_are_kept_for_print() {
    Limit limit = limit(Draft.example().plan(), "JTB", "us.424.22-b-3.nitrite");
    assertEquals(
        new Limit.Monitoring(
            "1",
            "each weighing of cure",
            "MA",
            "hold the piece; destroy, or ask the process authority"),
        limit.monitoring());
    assertEquals("9 CFR 424.22 (b)(3)", limit.source().cited());
    Limit own = limit(Draft.example().plan(), "JTB", "own.cure-days");
    assertEquals(
        new Source("common practice, no source", "", "plan version 3", Standing.PLAN),
        own.source());
  }

  @Test
  void each_kind_of_the_example_has_its_numbers() {
    Plan plan = Draft.example().plan();
    Kind.Span cooling = (Kind.Span) limit(plan, "JTB", "us.b99.cooling-1").kind();
    assertEquals(
        "130 °F to 80 °F in 1.5 h, 80 °F to 40 °F in 5 h",
        cooling.stages().stream()
            .map(stage -> stage.from() + " to " + stage.to() + " in " + stage.atMost())
            .collect(Collectors.joining(", ")));
    assertTrue(cooling.stages().stream().allMatch(Kind.Stage::falling));
    Kind.Holding cold = (Kind.Holding) limit(plan, "JTB", "own.cure-cold").kind();
    assertEquals("41 °F, 16 h, 0 s", cold.limit() + ", " + cold.every() + ", " + cold.allow());
    assertTrue(cold.ceiling());
    Kind.Length days = (Kind.Length) limit(plan, "JTB", "own.cure-days").kind();
    assertTrue(days.atLeast());
    assertEquals(
        "into cure to out of cure, 7 d",
        days.from().word() + " to " + days.to().word() + ", " + days.limit());
    Kind.Share humidity = (Kind.Share) limit(plan, "CPL", "us.a21.table-1.humidity").kind();
    assertEquals(
        List.of("option 1", "option 2", "option 3", "option 4"),
        humidity.options().stream().map(Kind.Option::name).toList());
    assertEquals(Quantity.required("90 %"), humidity.options().get(2).level().orElseThrow());
    assertTrue(humidity.options().get(0).on());
    Kind.Span comeUp = (Kind.Span) limit(plan, "JTB", "own.come-up").kind();
    assertEquals(false, comeUp.stages().get(0).falling());
  }

  @ParameterizedTest
  @ValueSource(strings = {Draft.US, Draft.RETAIL})
  void a_rule_set_reads_by_itself(String file) {
    byte[] text =
        Draft.example().files().get(file).getBytes(java.nio.charset.StandardCharsets.UTF_8);
    Binder.Bound<RuleSet> read = RuleSet.read(SourceFile.of(file, text));
    RuleSet set = read.value().orElseThrow();
    assertEquals(List.of(), read.faults());
    for (Limit limit : set.limits().values()) {
      assertTrue(limit.id().startsWith(set.name() + "."), limit.id());
    }
  }

  @Test
  void the_share_of_rind_is_the_rule_sets_or_the_plans_own() {
    RuleSet.RindShare ofSet =
        Draft.example().plan().product("JTB").orElseThrow().rindShare().orElseThrow();
    assertEquals("10 %", ofSet.value().toString());
    assertEquals(Standing.SECOND_HAND, ofSet.source().standing());
    RuleSet.RindShare own =
        Draft.example()
            .with(
                "\"between\": \"2 h\",",
                "\"between\": \"2 h\", \"rindShare\": {\"value\": \"8 %\", \"support\": \"40 rinds"
                    + " weighed\"},")
            .plan()
            .product("JTB")
            .orElseThrow()
            .rindShare()
            .orElseThrow();
    assertEquals("8 %", own.value().toString());
    assertEquals("40 rinds weighed", own.source().document());
  }

  @ParameterizedTest
  @ValueSource(strings = {"-7 ft", "1200 m", "0 ft"})
  void an_establishment_may_lie_below_the_sea(String altitude) {
    Plan plan = Draft.example().with("310 ft", altitude).plan();
    assertEquals(altitude, plan.establishment().altitude().orElseThrow().toString());
  }

  @Test
  void what_the_establishment_leaves_out_is_told_by_the_form() {
    Plan plan = Draft.of("least.json").plan();
    Establishment establishment = plan.establishment();
    assertEquals("A4", establishment.paper());
    assertEquals('.', establishment.decimalMark());
    assertEquals("en", plan.words().language());
    assertEquals(Optional.empty(), establishment.altitude());
    assertEquals(false, establishment.soleOperator());
    assertEquals("preferably another", establishment.review());
  }
}

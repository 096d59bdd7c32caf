package org.flitchbook.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.flitchbook.input.SourceFile;
import org.flitchbook.json.Binder;
import org.flitchbook.json.Node;
import org.flitchbook.measure.Quantity;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The rule sets outside of the United States against what their sources print. */
final class WorldRulesTest {

  private static final List<String> SETS = List.of("eu", "gb", "ca", "au-nz", "codex");
  private static final String HEATED = "heat treated, not fully cooked, not shelf stable";

  private static String file(String set) {
    return "templates/limits/" + set + ".json";
  }

  private static RuleSet ruleSet(String set) {
    byte[] bytes = Draft.text(Path.of(file(set))).getBytes(StandardCharsets.UTF_8);
    Binder.Bound<RuleSet> read = RuleSet.read(SourceFile.of(file(set), bytes));
    assertEquals(List.of(), read.faults());
    return read.value().orElseThrow();
  }

  private static String setOf(String id) {
    return id.substring(0, id.indexOf('.'));
  }

  private static Limit limit(String id) {
    return Optional.ofNullable(ruleSet(setOf(id)).limits().get(id)).orElseThrow();
  }

  @ParameterizedTest
  @ValueSource(strings = {"eu", "gb", "ca", "au-nz", "codex"})
  void a_rule_set_reads_without_a_fault(String set) {
    RuleSet read = ruleSet(set);
    assertEquals(set, read.name());
    assertFalse(read.limits().isEmpty());
    assertFalse(read.notRead().isEmpty());
    assertTrue(read.limits().keySet().stream().allMatch(id -> id.startsWith(set + ".")));
  }

  @ParameterizedTest(name = "{0}: {1}")
  @CsvFileSource(
      resources = "/org/flitchbook/plan/world-rows.csv",
      delimiter = '|',
      numLinesToSkip = 1,
      maxCharsPerColumn = 8192)
  void a_row_is_as_its_source_prints_it(
      String row, String id, String numbers, String standing, String rank, String source) {
    assertEquals(numbers, printed(raw(id)), row + ", " + source);
    assertEquals(standing, limit(id).source().standing().word(), row + ", " + source);
    assertEquals(rank, limit(id).rank().word(), row);
  }

  @Test
  void a_rule_set_has_no_limit_beside_these_rows() {
    Path rows = Path.of("src/test/resources/org/flitchbook/plan/world-rows.csv");
    Set<String> listed =
        Draft.text(rows)
            .lines()
            .skip(3)
            .map(line -> line.split("\\|", -1)[1].strip())
            .collect(Collectors.toCollection(TreeSet::new));
    Set<String> all = new TreeSet<>();
    SETS.forEach(set -> all.addAll(ruleSet(set).limits().keySet()));
    assertEquals(listed, all);
  }

  /** The members of a limit as the file has them, so that the unit is the printed one. */
  private static Map<String, Node> raw(String id) {
    Node.Obj set = Schemas.parse(Draft.text(Path.of(file(setOf(id)))));
    return ((Node.Items) set.members().get("limits"))
        .items().stream()
            .map(limit -> ((Node.Obj) limit).members())
            .filter(members -> text(members, "id").equals(id))
            .findFirst()
            .orElseThrow();
  }

  private static String text(Map<String, Node> members, String key) {
    return ((Node.Text) members.get(key)).value();
  }

  private static String printed(Map<String, Node> limit) {
    if (limit.containsKey("rows")) {
      return each(limit, "rows", row -> text(row, "atLeast") + " " + text(row, "for"));
    }
    if (limit.containsKey("stages")) {
      return each(
          limit,
          "stages",
          stage -> text(stage, "from") + " to " + text(stage, "to") + " " + text(stage, "atMost"));
    }
    String judged = text(limit, limit.containsKey("quantity") ? "quantity" : "what");
    if (text(limit, "kind").equals("entry")) {
      return judged + " entered";
    }
    return limit.containsKey("atMost")
        ? judged + " at most " + text(limit, "atMost")
        : judged + " at least " + text(limit, "atLeast");
  }

  private static String each(
      Map<String, Node> limit, String key, Function<Map<String, Node>, String> print) {
    return ((Node.Items) limit.get(key))
        .items().stream()
            .map(item -> print.apply(((Node.Obj) item).members()))
            .collect(Collectors.joining(", "));
  }

  /** What the classes ask for. */
  private static final Set<String> CONTROLS =
      Set.of(
          "nitrite ceiling",
          "nitrate",
          "cold holding",
          "come-up",
          "cooling",
          "lethality",
          "humidity");

  private static boolean isGuidance(Limit limit) {
    return limit.because().toString().startsWith("Guidance");
  }

  private static List<Limit> critical(RuleSet set, String covers) {
    return set.limits().values().stream()
        .filter(limit -> limit.rank() == Rank.CRITICAL && limit.covers().equals(covers))
        .toList();
  }

  @ParameterizedTest
  @ValueSource(strings = {"eu", "gb", "ca", "au-nz", "codex", "us", "us-retail"})
  void guidance_is_critical_only_where_its_set_has_no_law_for_the_control(String name) {
    RuleSet set = ruleSet(name);
    for (Limit limit : set.limits().values()) {
      if (isGuidance(limit) && limit.rank() == Rank.CRITICAL) {
        List<Limit> law =
            critical(set, limit.covers()).stream().filter(other -> !isGuidance(other)).toList();
        assertEquals(List.of(), law, limit.id());
      }
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"eu", "gb", "ca", "au-nz", "codex", "us", "us-retail"})
  void a_control_is_left_to_an_operating_row_only_where_that_is_a_part_of_its_source(String name) {
    RuleSet set = ruleSet(name);
    Set<String> ids = set.limits().keySet();
    for (Limit limit : set.limits().values()) {
      boolean isPart = ids.stream().anyMatch(whole -> limit.id().startsWith(whole + "."));
      boolean left = critical(set, limit.covers()).isEmpty();
      if (limit.rank() == Rank.OPERATING && CONTROLS.contains(limit.covers()) && !isPart && left) {
        assertTrue(
            limit.because().toString().contains("stands for no control by itself"), limit.id());
      }
    }
  }

  /** Nothing is judged as NaNO2 in one place and as NO2 in another under the same word. */
  @ParameterizedTest(name = "{0}: {1}")
  @CsvSource({
    "eu, ' as NO2', ion",
    "codex, ' as NO2', ion",
    "gb, ' as sodium nitrite', nitrite",
    "ca, ' as sodium nitrite', nitrite"
  })
  void a_basis_is_what_the_sentence_says(String set, String words, String last) {
    List<String> wrong =
        ruleSet(set).limits().values().stream()
            .filter(limit -> limit.because().toString().contains(words))
            .filter(limit -> limit.kind() instanceof Kind.Bound)
            .filter(limit -> !((Kind.Bound) limit.kind()).figure().word().endsWith(last))
            .map(Limit::id)
            .toList();
    assertEquals(List.of(), wrong);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          # limit                                               | doubted by
          eu.1333-2008.08-3-4-1.residual-nitrite-ion-wiltshire  | eu.1333-2008.08-3-2.residual-nitrite-ion
          eu.1333-2008.08-3-4-2.residual-nitrite-ion-dry-cured  | eu.1333-2008.08-3-2.residual-nitrite-ion
          eu.1333-2008.08-3-4-2.residual-nitrite-ion-dry-cured-ham | eu.1333-2008.08-3-2.residual-nitrite-ion
          ca.cfia-4.13-1.nitrite                                | ca.hc-preservatives.class-1.nitrite-side-bacon
          au-nz.as4696-2002.cured.cooling                       | au-nz.as4696-2007.cured.cooling
          """)
  void a_stricter_remembered_limit_leaves_a_doubt(String id, String doubting) {
    assertEquals(Optional.of(doubting), limit(id).doubt());
    assertEquals(Standing.MEMORY, limit(doubting).source().standing());
  }

  @Test
  void no_other_limit_is_doubted() {
    assertEquals(
        5,
        SETS.stream()
            .flatMap(set -> ruleSet(set).limits().values().stream())
            .filter(limit -> limit.doubt().isPresent())
            .count());
  }

  /** The least plan in another country, with one limit of its rule set. */
  private static Draft plan(String regime, String set, String entry) {
    return Draft.of("least.json")
        .with("retail under a variance", regime)
        .with("[\"us\", \"us-retail\"]", "[\"" + set + "\"]")
        .with("\"limits\": []", "\"limits\": [" + entry + "]")
        .whole(file(set), Draft.text(Path.of(file(set))));
  }

  @ParameterizedTest(name = "{0}: {2}")
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          # regime                                        | set   | limit                                     | still asked for
          approved establishment, Great Britain           | gb    | gb.1333-2008.08-3.nitrite                 | nitrate, cold holding, come-up, cooling
          local authority exemption, Great Britain        | gb    | gb.2996-2013.sch-4-2.cold-cure            | nitrite ceiling, nitrate, come-up, cooling
          approved establishment, European Union          | eu    | eu.1333-2008.08-3-2.nitrite-ion           | nitrate, cold holding, come-up, cooling
          licensed establishment, Canada                  | ca    | ca.hc-preservatives.class-1.nitrate-slow-cure | nitrite ceiling, cold holding, come-up, cooling
          licensed establishment, Australia or New Zealand | au-nz | au-nz.3-2-2.7-3.cooling                  | nitrite ceiling, nitrate, cold holding, come-up
          """)
  void a_plan_in_another_country_reads_and_is_told_what_it_lacks(
      String regime, String set, String id, String lacks) {
    Product product = plan(regime, set, "{\"limit\": \"" + id + "\"}").plan().products().get(0);
    assertEquals(HEATED, product.productClass());
    assertEquals(
        lacks,
        product.missing().stream().map(Product.Missing::covers).collect(Collectors.joining(", ")));
    assertTrue(product.missing().get(0).because().contains("not a country's law"));
    assertEquals(Standing.DERIVED, product.missing().get(0).source().standing());
  }

  /** The 200 ppm are used for a belly although 120 ppm are remembered for side bacon. */
  @ParameterizedTest
  @CsvSource({"belly, true", "loin, false"})
  void side_bacon_is_a_belly(String cut, boolean doubted) {
    Draft draft =
        plan("licensed establishment, Canada", "ca", "{\"limit\": \"ca.cfia-4.13-1.nitrite\"}")
            .with("\"cut\": \"belly\"", "\"cut\": \"" + cut + "\"");
    Limit limit = draft.plan().products().get(0).limits().get(0);
    assertEquals(doubted, limit.doubt().isPresent());
  }

  @ParameterizedTest(name = "{2}")
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          approved establishment, European Union | eu | eu.1333-2008.08-3-4-2.residual-nitrite-ion-dry-cured     | a limit from memory, without support
          approved establishment, European Union | eu | eu.1333-2008.08-3-4-1.residual-nitrite-ion-wiltshire     | cure method immersion or pumped
          approved establishment, European Union | eu | eu.1333-2008.08-3-4-2.residual-nitrite-ion-dry-cured-ham | cut ham
          approved establishment, European Union | eu | eu.1333-2008.08-3-1.nitrite-ion                          | class not heat treated
          approved establishment, Great Britain  | gb | gb.1333-2008.08-3-1.nitrate                              | class not heat treated
          approved establishment, Great Britain  | gb | gb.1333-2008.08-3-2.nitrite-sterilised                   | class thermally processed
          """)
  void a_limit_that_is_not_for_the_product_is_refused(
      String regime, String set, String id, String said) {
    List<String> faults = plan(regime, set, "{\"limit\": \"" + id + "\"}").faults();
    assertEquals(1, faults.size(), faults.toString());
    assertTrue(faults.get(0).contains(said), faults.get(0));
  }

  /** The page that prints 26.6 and 7.2 °C cut them short; a reading of 26.65 °C is at 80 °F. */
  @Test
  void a_temperature_that_was_cut_short_keeps_its_origin() {
    List<Kind.Stage> stages = ((Kind.Span) limit("ca.cfia-cooling.slow-b.cooling").kind()).stages();
    assertFalse(Quantity.required("26.66 °C").isAbove(stages.get(0).to()));
    assertFalse(Quantity.required("7.22 °C").isAbove(stages.get(1).to()));
    assertTrue(Quantity.required("26.67 °C").isAbove(stages.get(0).to()));
  }
}

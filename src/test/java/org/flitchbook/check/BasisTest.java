package org.flitchbook.check;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.flitchbook.check.Said.formulas;
import static org.flitchbook.check.Said.reasons;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.stream.Stream;
import org.flitchbook.input.SourceFile;
import org.flitchbook.lot.Lots;
import org.flitchbook.plan.Plan;
import org.flitchbook.plan.Plans;
import org.flitchbook.practice.ToolPractice;
import org.flitchbook.reading.Day;
import org.flitchbook.reading.Hand;
import org.flitchbook.reading.Readings;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Each figure of a curing sum and of the laboratory is judged on its own basis. */
final class BasisTest {

  private static final LocalDate DAY = LocalDate.parse("2026-02-24");
  private static final String PLAN =
      """
      {
        "flitchbook": 1,
        "establishment": {
          "name": "Wrenfold Smokeyard", "address": "3 Drove Lane, Harrow Fen",
          "regime": "approved establishment, European Union", "zone": "UTC", "temperature": "°C"
        },
        "plan": {"version": "1", "signed": "2026-01-05", "signedBy": "MA", "reassessBy": "2027-01-05"},
        "ruleSets": ["eu"],
        "people": [{"initials": "MA", "name": "Maud Achterberg", "roles": ["maker"]}],
        "instruments": [{"id": "S", "kind": "scale", "readability": "0.01 g", "checkEvery": "400 d", "tolerance": "1 g"}],
        "places": [{"id": "F1", "name": "curing fridge", "kind": "cooler"}],
        "ingredients": [
          {"lot": "C1", "name": "Cure No. 1", "sodiumNitrite": "6.25 %", "sodiumNitrate": "0 %", "salt": "93.75 %"},
          {"lot": "CK", "name": "potassium cure", "potassiumNitrite": "10 %"},
          {"lot": "CX", "name": "cure of unknown strength"}
        ],
        "products": [{
          "code": "P", "name": "belly bacon", "class": "heat treated, not fully cooked, not shelf stable",
          "cut": "belly", "cureMethod": "METHOD", "steps": ["cure"], "limits": [LIMITS], "ownLimits": [OWN]
        }]
      }
      """;

  private static SourceFile template(String name) {
    try {
      return SourceFile.of(name, Files.readAllBytes(Path.of(name)));
    } catch (IOException unread) {
      throw new UncheckedIOException(unread);
    }
  }

  private static Plan plan(String method, String limits, String own) {
    String text = PLAN.replace("METHOD", method).replace("LIMITS", limits).replace("OWN", own);
    List<SourceFile> templates =
        Stream.of("templates/classes.json", "templates/practice.json", "templates/limits/eu.json")
            .map(BasisTest::template)
            .toList();
    var read = Plans.read(SourceFile.of("plan.json", text.getBytes(UTF_8)), templates, List.of());
    return read.plan().orElseThrow(() -> new AssertionError(read.faults()));
  }

  /** The finding of a plan's one limit on a belly of 10 kg without rind. */
  private static Finding finding(Plan plan, String cure, String lab) {
    String head = "lot,time,what,item,value,unit,by,instrument,note\n";
    String rows =
        "A,2026-02-24 08:00,product,P,,,MA,,\nA,2026-02-24 08:01,rind,,off,,MA,,\n"
            + "A,2026-02-24 08:02,green weight,,10,kg,MA,S,\n"
            + cure
            + "A,2026-02-24 08:09,into cure,F1,,,MA,,\n";
    List<SourceFile> files =
        List.of(
            SourceFile.of(DAY + "/cure.csv", (head + rows).getBytes(UTF_8)),
            SourceFile.of(
                DAY + "/lab.csv",
                (head + "A,2026-02-24 09:59,moisture,,70,%,MA,,\n" + lab).getBytes(UTF_8)));
    Day day = Readings.read(DAY, files, new Hand(ZoneOffset.UTC, '.', ToolPractice.get()));
    Instant late = Instant.parse("2026-03-01T00:00:00Z");
    var book = Lots.assemble(plan, List.of(day), late);
    assertEquals(List.of(), book.faults());
    return Checks.judge(plan, book.lots().get(0), List.of(), late).findings().get(0);
  }

  private static String own(String quantity, String number) {
    String kind = number.startsWith(">=") ? "floor\", \"atLeast" : "ceiling\", \"atMost";
    String step = quantity.startsWith("residual") ? "release" : "cure";
    return """
    {"id": "own.x", "covers": "finish", "step": "%s", "rank": "critical", "quantity": "%s",
     "kind": "%s": "%s", "because": "why", "support": "paper"}
    """
        .formatted(step, quantity, kind, number.substring(3));
  }

  private static String weighed(String what, String item, String grams) {
    return "A,2026-02-24 08:05," + what + "," + item + "," + grams + ",g,MA,S,\n";
  }

  /** 19.2 g of 6.25 % on 10 kg are 120 ppm as NaNO2, and 80.02 as NO2: over the 80 (derived). */
  @ParameterizedTest(name = "{1} g of {0}: {2}, {3}")
  @CsvSource({
    "C1, 19.19, 79.973 ppm, met",
    "C1, 19.20, 80.015 ppm, not met",
    "C1, 32.00, 133.358 ppm, not met",
    "CK, 14.79, 79.952 ppm, met",
    "CK, 14.80, 80.006 ppm, not met",
  })
  void the_ion_is_judged_as_the_ion(String item, String grams, String shown, String verdict) {
    Plan plan = plan("dry", "{\"limit\": \"eu.1333-2008.08-3-2.nitrite-ion\"}", "");
    Finding finding = finding(plan, weighed("curing salt", item, grams), "");
    assertEquals(verdict, finding.verdict().words());
    assertEquals(shown, finding.measured().orElseThrow().value().shown());
    assertTrue(formulas(finding).contains("× 1,000,000 × 46.00554 / 68.99531"), formulas(finding));
  }

  @ParameterizedTest
  @ValueSource(strings = {"ingoing nitrite ion", "ingoing salt"})
  void a_strength_that_is_not_stated_is_not_assumed(String quantity) {
    Plan plan = plan("dry", "", own(quantity, quantity.endsWith("salt") ? ">= 1 %" : "<= 80 ppm"));
    Finding finding = finding(plan, weighed("curing salt", "CX", "19.2"), "");
    assertEquals("not shown", finding.verdict().words());
    assertTrue(reasons(finding).endsWith("for " + quantity), reasons(finding));
  }

  /** 32 g of 93.75 % hold 30 g of salt (derived). */
  @ParameterizedTest(name = "32 g of cure, {0} g of salt: {1}, {2}")
  @CsvSource({"270.01, 3 %, met", "270, 3 %, met", "269.99, 3 %, not met", "0, 0.3 %, not met"})
  void plain_salt_and_the_salt_of_the_cure_count(String salt, String shown, String verdict) {
    Plan plan = plan("dry", "", own("ingoing salt", ">= 3 %"));
    String rows = weighed("curing salt", "C1", "32") + weighed("salt", "", salt);
    Finding finding = finding(plan, rows, "");
    assertEquals(verdict, finding.verdict().words());
    assertEquals(shown, finding.measured().orElseThrow().value().shown());
    assertEquals(
        "(32 g × 93.75 % + " + salt + " g × 100 %) / 10 kg × 100 = " + shown, formulas(finding));
  }

  /** What the scales can prove is told in the unit of the sum. */
  @ParameterizedTest
  @CsvSource({"ingoing salt, >= 3 %, %", "ingoing nitrite ion, <= 80 ppm, ppm"})
  void what_the_scales_prove_has_the_unit_of_the_sum(String quantity, String bound, String unit) {
    Plan plan = plan("dry", "", own(quantity, bound));
    Finding finding = finding(plan, weighed("curing salt", "C1", "19"), "");
    assertEquals(
        unit,
        finding.measured().orElseThrow().uncertainty().orElseThrow().unit().symbol(),
        reasons(finding));
  }

  @ParameterizedTest(name = "{0}: {2}")
  @CsvSource({
    "immersion, '', 41.675 ppm",
    "pumped, '', no \"pump\" entry",
    "pumped, 'A,2026-02-24 08:07,pump,,10,%,MA,,\n', 8.335 ppm",
  })
  void a_pickle_is_summed_in_its_own_way(String method, String pump, String shown) {
    Plan plan = plan(method, "", own("ingoing nitrite ion", "<= 80 ppm"));
    String rows = weighed("curing salt", "C1", "20") + weighed("pickle", "", "10000") + pump;
    Finding finding = finding(plan, rows, "");
    assertEquals(shown, finding.measured().map(m -> m.value().shown()).orElse(reasons(finding)));
  }

  @ParameterizedTest(name = "{0} by {1} of {2}: {3}")
  @CsvSource({
    "residual nitrite ion, residual nitrite ion, 105, met",
    "residual nitrite ion, residual nitrite ion, 105.1, not met",
    "residual nitrite ion, residual nitrite, 10, not judged",
    "residual nitrite, residual nitrite ion, 10, not judged",
    "residual nitrate, residual nitrate, 105, met",
    "residual nitrate, residual nitrate, 106, not met",
    "residual nitrate, residual nitrite, 10, not judged",
  })
  void a_laboratorys_figure_serves_only_its_own_basis(
      String quantity, String found, String value, String verdict) {
    Plan plan = plan("dry", "", own(quantity, "<= 105 mg/kg"));
    String lab = "A,2026-02-24 10:00," + found + ",," + value + ",mg/kg,MA,,\n";
    Finding finding = finding(plan, weighed("curing salt", "C1", "19"), lab);
    assertEquals(
        verdict,
        finding.measured().isEmpty() ? "not judged" : finding.verdict().words(),
        reasons(finding));
  }
}

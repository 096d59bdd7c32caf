package org.flitchbook.check;

import static org.flitchbook.check.Said.reasons;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import org.flitchbook.measure.Quantity;
import org.flitchbook.message.Language;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What went into the meat, against ceilings and floors. */
final class IngoingTest {

  private static final String CEILING = "us.424.22-b-3.nitrite";

  /** 9 CFR 424.22(b)(3): 200 ppm. */
  private static Bench cured(String... lines) {
    return Bench.book()
        .rule(CEILING)
        .write(lines)
        .write("cure,09:40,into cure,F1", "cure,09:50,out of cure");
  }

  private static Bench rubbed(String rind, String green, String salt) {
    return cured(
        "cure,09:10,rind,," + rind,
        "cure,09:12,green weight,," + green + ",g",
        "cure,09:20,curing salt,C1," + salt + ",g");
  }

  @ParameterizedTest
  @CsvSource({
    // rind, green weight in g, grams of 6.25 % cure, verdict; 9 CFR 424.22(b)(3), 200 ppm
    "off, 4812, 15.39, met 199.89 ppm",
    "off, 4812, 15.40, not met 200.02 ppm",
    "off, 4812, 15.41, not met 200.15 ppm",
    "off, 10000, 32.0, met 200.00 ppm",
    "off, 10000, 32.01, not met 200.06 ppm",
    "on, 10000, 32.0, not met 222.22 ppm",
    "on, 10000, 28.8, met 200.00 ppm",
    "on, 10000, 28.81, not met 200.07 ppm",
    "off, 4812, 11.5, met 149.37 ppm",
  })
  void dry_cured_bacon_takes_no_more_than_200_ppm_of_its_skin_free_weight(
      String rind, String green, String salt, String said) {
    Finding finding = rubbed(rind, green, salt).finding(CEILING);
    assertEquals(said, Bench.said(finding));
    assertEquals(3, finding.evidence().stream().distinct().count());
  }

  private static String verdict(Bench bench) {
    return verdict(bench, CEILING);
  }

  private static String verdict(Bench bench, String limit) {
    return Bench.said(bench.finding(limit));
  }

  @Test
  void a_weighed_rind_is_taken_off() {
    String[] lines = {
      "cure,09:10,rind,,on", "cure,09:12,green weight,,5400,g", "cure,09:13,rind weight,,540,g"
    };
    assertEquals(
        "met 199.97 ppm", verdict(cured(with(lines, "cure,09:20,curing salt,C1,15.55,g"))));
    assertEquals(
        "not met 200.10 ppm", verdict(cured(with(lines, "cure,09:20,curing salt,C1,15.56,g"))));
  }

  private static String[] with(String[] lines, String... more) {
    String[] all = Arrays.copyOf(lines, lines.length + more.length);
    System.arraycopy(more, 0, all, lines.length, more.length);
    return all;
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "no \"rind\" entry | cure,09:12,green weight,,4812,g",
        "was stated after the green weight | cure,09:12,green weight,,4812,g ;"
            + " cure,09:14,rind,,off",
        "no green weight | cure,09:10,rind,,off",
        "the rind weighs as much | cure,09:10,rind,,on ; cure,09:12,green weight,,500,g ;"
            + " cure,09:14,rind weight,,500,g",
      })
  void without_a_base_nothing_is_shown(String reason, String lines) {
    Finding finding =
        cured(with(lines.split(" ; ", -1), "cure,09:20,curing salt,C1,11.5,g")).finding(CEILING);
    assertEquals(Verdict.NOT_SHOWN, finding.verdict());
    assertTrue(reasons(finding).contains(reason), reasons(finding));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "no curing salt was weighed | cure,09:15,salt,,97,g",
        "does not state the strength of cure of unknown strength | cure,09:20,curing"
            + " salt,CX,11.5,g",
        "does not state the strength of an ingredient | cure,09:20,curing salt,C9,11.5,g",
      })
  void without_the_cure_or_its_strength_nothing_is_shown(String reason, String line) {
    Finding finding =
        cured("cure,09:10,rind,,off", "cure,09:12,green weight,,4812,g", line).finding(CEILING);
    assertEquals(Verdict.NOT_SHOWN, finding.verdict());
    assertTrue(reasons(finding).contains(reason), reasons(finding));
  }

  @Test
  void every_weighing_counts() {
    String[] first = {
      "cure,09:10,rind,,off", "cure,09:12,green weight,,4812,g", "cure,09:20,curing salt,C1,8.00,g"
    };
    assertEquals("met 199.89 ppm", verdict(cured(with(first, "cure,09:25,curing salt,C1,7.39,g"))));
    assertEquals(
        "not met 200.02 ppm", verdict(cured(with(first, "cure,09:25,curing salt,C1,7.40,g"))));
    assertEquals("not shown", verdict(cured(with(first, "cure,09:25,curing salt,CX,0.1,g"))));
  }

  /** A second green weight does not count; it stops the lot. */
  @Test
  void a_second_green_weight_stops_the_lot() {
    Judgement judged =
        cured(
                "cure,09:10,rind,,off",
                "cure,09:12,green weight,,4812,g",
                "cure,09:13,green weight,,9000,g",
                "cure,09:20,curing salt,C1,15.0,g")
            .judge();
    assertEquals(Verdict.NOT_SHOWN, judged.verdict());
  }

  /** Each limit prints its own number for KNO2 beside that for NaNO2 (read). */
  @ParameterizedTest(name = "{1} {0}: {2} g of 10 % on 10 kg, {3}")
  @CsvSource({
    // T14: 246 as printed, where the molar masses would allow 246.69
    "us.424.22-b-3.nitrite, dry, 24.60, met 200.00 ppm",
    "us.424.22-b-3.nitrite, dry, 24.61, not met 200.08 ppm",
    "us.424.22-b-2.nitrite, immersion, 148.0, met 120.00 ppm",
    "us.424.22-b-2.nitrite, immersion, 148.1, not met 120.08 ppm",
    "us.424.22-b-1.nitrite, pumped, 148.0, met 120.00 ppm",
    "us.424.22-b-1.nitrite-floor, pumped, 148.0, met 120.00 ppm",
    "us.424.22-b-1.nitrite-floor, pumped, 147.9, not met 119.92 ppm",
    "us.424.22-b-1-ii-a.nitrite, pumped, 123.0, met 100.00 ppm",
    "us.424.22-b-1-ii-a.nitrite, pumped, 123.1, not met 100.08 ppm",
    "us.424.22-b-1-ii-a.nitrite-floor, pumped, 123.0, met 100.00 ppm",
    "us.424.22-b-1-ii-a.nitrite-floor, pumped, 122.9, not met 99.92 ppm",
    "us.424.22-b-1-ii-b.nitrite, pumped, 99.0, met 80.00 ppm",
    "us.424.22-b-1-ii-b.nitrite, pumped, 99.1, not met 80.08 ppm",
    "us.424.22-b-1-ii-b.nitrite-floor, pumped, 49.0, met 40.00 ppm",
    "us.424.22-b-1-ii-b.nitrite-floor, pumped, 48.9, not met 39.92 ppm",
    // without a number of its own, by the molar masses: 85.10384 / 68.99531
    "us.hb.12.nitrite-floor, dry, 14.81, met 120.07 ppm",
    "us.hb.12.nitrite-floor, dry, 14.80, not met 119.99 ppm",
  })
  void potassium_nitrite_counts_as_its_limit_prints_it(
      String limit, String method, String grams, String said) {
    Bench bench =
        Bench.book()
            .believed()
            .product("cureMethod", "\"" + method + "\"")
            .rule(limit)
            .write(
                "cure,09:10,rind,,off",
                "cure,09:12,green weight,,10000,g",
                "cure,09:20,curing salt,CK," + grams + ",g",
                "cure,09:40,into cure,F1");
    if (!method.equals("dry")) {
      String taken = method.equals("pumped") ? "pump" : "pick-up";
      bench.write("cure,09:15,pickle,,10000,g", "cure,09:16," + taken + ",,10,%");
    }
    assertEquals(said, verdict(bench, limit));
  }

  /**
   * 5 % of NaNO2 and 5 % of KNO2, which 9 CFR 424.22(b)(3) counts as 4.065 % (200 / 246; derived).
   */
  @ParameterizedTest
  @CsvSource({"22.06, met 199.97 ppm", "22.07, not met 200.07 ppm"})
  void both_salts_of_a_cure_count(String grams, String said) {
    Bench bench =
        cured(
            "cure,09:10,rind,,off",
            "cure,09:12,green weight,,10000,g",
            "cure,09:20,curing salt,CM," + grams + ",g");
    assertEquals(said, verdict(bench));
  }

  /**
   * The accelerator in the cure counts with that weighed beside it; a cure without any adds none.
   */
  @ParameterizedTest(name = "{0} and {1} g: {2}")
  @CsvSource({
    "CE, 4.50, met 550.00 ppm, 2",
    "CE, 4.51, not met 551.00 ppm, 2",
    "C1, 5.50, met 550.00 ppm, 1",
    "C1, 5.51, not met 551.00 ppm, 1",
  })
  void the_accelerator_of_the_cure_counts_too(
      String cure, String grams, String said, int weighings) {
    Finding finding =
        cured(
                "cure,09:10,rind,,off",
                "cure,09:12,green weight,,10000,g",
                "cure,09:20,curing salt," + cure + ",20,g",
                "cure,09:21,accelerator,E," + grams + ",g")
            .own(
                "acc",
                "cure",
                "\"kind\": \"ceiling\", \"quantity\": \"ingoing accelerator\", \"atMost\":"
                    + " \"550 ppm\"")
            .finding("acc");
    assertEquals(said, Bench.said(finding));
    assertEquals(2 + weighings, finding.evidence().stream().distinct().count());
  }

  @Test
  void an_accelerator_without_a_lot_has_no_strength() {
    Finding finding =
        cured(
                "cure,09:10,rind,,off",
                "cure,09:12,green weight,,10000,g",
                "cure,09:20,curing salt,C1,20,g",
                "cure,09:21,accelerator,,5,g")
            .own(
                "acc",
                "cure",
                "\"kind\": \"floor\", \"quantity\": \"ingoing accelerator\", \"atLeast\":"
                    + " \"250 ppm\"")
            .finding("acc");
    assertEquals("not shown", finding.verdict().words());
    assertEquals(
        "the plan does not state the strength of an ingredient (lot not written) for ingoing"
            + " accelerator",
        reasons(finding));
  }

  @Test
  void each_piece_is_judged_and_the_worst_counts() {
    Bench bench =
        cured(
            "cure,09:10,rind,,off",
            "cure,09:12,green weight,,4812,g,MA,S-10,,,a",
            "cure,09:12,green weight,,4812,g,MA,S-10,,,b",
            "cure,09:20,curing salt,C1,15.39,g,MA,S-001,,,a",
            "cure,09:20,curing salt,C1,15.40,g,MA,S-001,,,b");
    Finding finding = bench.finding(CEILING);
    assertEquals("not met 200.02 ppm", Bench.said(finding));
    assertTrue(reasons(finding).contains("in piece b"), reasons(finding));
  }

  @Test
  void a_piece_without_a_green_weight_leaves_the_lot_unshown() {
    Bench bench =
        cured(
            "cure,09:10,rind,,off",
            "cure,09:12,green weight,,4812,g,MA,S-10,,,a",
            "cure,09:20,curing salt,C1,11.5,g,MA,S-001,,,a",
            "cure,09:20,curing salt,C1,11.5,g,MA,S-001,,,b");
    assertEquals("not shown", verdict(bench));
  }

  /** Cure that was written for no piece, beside pieces, must not be counted to none of them. */
  @Test
  void cure_for_no_piece_counts_to_each() {
    Bench bench =
        cured(
            "cure,09:10,rind,,off",
            "cure,09:12,green weight,,4812,g,MA,S-10,,,a",
            "cure,09:20,curing salt,C1,15.40,g");
    assertEquals("not met", bench.finding(CEILING).verdict().words());
  }

  @ParameterizedTest
  @CsvSource({
    // FSIS Directive 7620.3 p. 19 by quotation (second-hand); 9 CFR 424.22(b)(1): 120 ppm, exactly
    "off, 12.0, met 120.00, met 120.00",
    "off, 12.01, not met 120.10, met 120.10",
    "off, 11.99, met 119.90, not met 119.90",
    // p. 28 by quotation (second-hand): with the rind on, 108 ppm of the whole weight
    "on, 10.8, met 120.00, met 120.00",
    "on, 10.81, not met 120.11, met 120.11",
    "on, 10.79, met 119.89, not met 119.89",
  })
  void pumped_bacon_takes_its_set_dose(String rind, String grams, String ceiling, String floor) {
    Bench bench =
        Bench.book()
            .product("cureMethod", "\"pumped\"")
            .rule("us.424.22-b-1.nitrite")
            .rule("us.424.22-b-1.nitrite-floor")
            .write(
                "cure,09:10,rind,," + rind,
                "cure,09:12,green weight,,20000,g",
                "cure,09:15,pickle,,10000,g",
                "cure,09:40,pump,,10,%",
                "cure,09:20,curing salt,CP," + grams + ",g",
                "cure,09:40,into cure,F1");
    assertEquals(ceiling + " ppm", verdict(bench, "us.424.22-b-1.nitrite"));
    assertEquals(5, bench.finding("us.424.22-b-1.nitrite").evidence().stream().distinct().count());
    assertEquals(floor + " ppm", verdict(bench, "us.424.22-b-1.nitrite-floor"));
  }

  @ParameterizedTest
  @CsvSource({
    // 9 CFR 424.22(b)(2): 120 ppm; Directive 7620.3 pp. 21-22 by quotation: pick-up, equilibrium
    "pick-up, 12.0, met 120.00 ppm",
    "pick-up, 12.01, not met 120.10 ppm",
    "none, 3.6, met 120.00 ppm",
    "none, 3.61, not met 120.33 ppm",
  })
  void immersion_is_reckoned_by_pick_up_or_by_equilibrium(String by, String grams, String said) {
    Bench bench =
        Bench.book()
            .product("cureMethod", "\"immersion\"")
            .rule("us.424.22-b-2.nitrite")
            .write(
                "cure,09:10,rind,,off",
                "cure,09:12,green weight,,20000,g",
                "cure,09:15,pickle,,10000,g",
                "cure,09:20,curing salt,CP," + grams + ",g",
                "cure,09:40,into cure,F1");
    if (by.equals("pick-up")) {
      bench.write("cure,09:16,pick-up,,10,%");
    }
    assertEquals(said, verdict(bench, "us.424.22-b-2.nitrite"));
  }

  @ParameterizedTest
  @CsvSource({"pumped, pickle", "pumped, pump", "immersion, pickle"})
  void a_pickle_or_its_share_that_was_not_weighed_shows_nothing(String method, String without) {
    String limit = method.equals("pumped") ? "us.424.22-b-1.nitrite" : "us.424.22-b-2.nitrite";
    Bench bench = Bench.book().product("cureMethod", "\"" + method + "\"").rule(limit);
    bench.write(
        "cure,09:10,rind,,off",
        "cure,09:12,green weight,,20000,g",
        "cure,09:20,curing salt,CP,1,g");
    if (!without.equals("pickle")) {
      bench.write("cure,09:15,pickle,,10000,g");
    }
    if (!without.equals("pump")) {
      bench.write("cure,09:40,pump,,10,%");
    }
    assertEquals("not shown", verdict(bench.write("cure,09:40,into cure,F1"), limit));
  }

  /** 9 CFR 424.21(c) lists nitrate only for cured meat other than bacon: none at all. */
  @ParameterizedTest
  @CsvSource({"C1, met 0.00 ppm", "C2, not met", "CX, not shown"})
  void no_nitrate_goes_into_bacon(String cure, String said) {
    String limit = "us.424.21-c.nitrate-bacon";
    Bench bench =
        Bench.book()
            .believed()
            .rule(limit)
            .write(
                "cure,09:10,rind,,off",
                "cure,09:12,green weight,,4812,g",
                "cure,09:20,curing salt," + cure + ",0.01,g",
                "cure,09:40,into cure,F1");
    assertTrue(verdict(bench, limit).startsWith(said), verdict(bench, limit));
  }

  /** 9 CFR 424.22(b)(1): 550 ppm of accelerator, exactly. */
  @ParameterizedTest
  @CsvSource({"54.99, met, not met", "55.00, met, met", "55.01, not met, met"})
  void the_accelerator_is_a_set_dose(String grams, String ceiling, String floor) {
    Bench bench =
        Bench.book()
            .product("cureMethod", "\"pumped\"")
            .rule("us.424.22-b-1.accelerator")
            .rule("us.424.22-b-1.accelerator-floor")
            .write(
                "cure,09:10,rind,,off",
                "cure,09:12,green weight,,20000,g",
                "cure,09:15,pickle,,10000,g",
                "cure,09:40,pump,,10,%",
                "cure,09:20,curing salt,C1,1,g",
                "cure,09:21,accelerator,E," + grams + ",g",
                "cure,09:40,into cure,F1");
    assertEquals(ceiling, bench.finding("us.424.22-b-1.accelerator").verdict().words());
    assertEquals(floor, bench.finding("us.424.22-b-1.accelerator-floor").verdict().words());
  }

  /**
   * 9 CFR 424.21(c): 1 oz to 100 lb, 1/4 oz chopped; 7/8 oz of accelerator; 3 1/2 oz of nitrate.
   */
  @ParameterizedTest
  @CsvSource({
    "us.424.21-c.nitrite-dry, dry, curing salt,CP, 6.25, 6.26",
    "us.424.21-c.nitrite-comminuted, comminuted, curing salt,CP, 1.56, 1.57",
    "us.424.21-c.accelerator-dry, dry, accelerator,E, 5.46, 5.47",
    "us.424.21-c.accelerator-comminuted, comminuted, accelerator,E, 5.46, 5.47",
  })
  void other_cured_meat_has_the_general_limits(
      String limit, String method, String what, String item, String met, String above) {
    for (String grams : new String[] {met, above}) {
      Bench bench =
          Bench.book()
              .believed()
              .product("cut", "\"ham\"")
              .product("cureMethod", "\"" + method + "\"")
              .rule(limit)
              .write(
                  "cure,09:10,rind,,off",
                  "cure,09:12,green weight,,10000,g",
                  "cure,09:20,curing salt,C1,0,g",
                  "cure,09:21," + what + "," + item + "," + grams + ",g",
                  "cure,09:40,into cure,F1");
      assertEquals(grams.equals(met) ? "met" : "not met", bench.finding(limit).verdict().words());
    }
  }

  @Test
  void the_sums_are_pending_until_the_piece_goes_into_cure() {
    Bench bench =
        Bench.book().rule(CEILING).write("cure,09:10,rind,,off", "cure,09:12,green weight,,4812,g");
    assertEquals("pending", verdict(bench));
  }

  @Test
  void a_sum_shows_what_the_scales_can_prove_and_does_not_charge_it() {
    Measured measured = rubbed("off", "4812", "15.39").finding(CEILING).measured().orElseThrow();
    assertTrue(measured.uncertainty().isPresent());
    assertTrue(!measured.charged());
    assertEquals("ingoing nitrite", measured.quantity().in(Language.ENGLISH));
    assertEquals(1, measured.margin().value().signum());
  }

  /**
   * 4812 g with S-001 (a step of 0.01 g): U of 200 ppm = 2 x √(n x 4.1667E-5) / 15.39 x 200. With
   * S-10 (1 g) for the meat nothing changes that shows; for the cure it is a hundred times more.
   * S-LB has a step of 5 g, and in pounds one of 0.01 lb: 2 x √0.41667 / 3 x 176.74 ppm.
   */
  @ParameterizedTest(name = "{0}: {1}")
  @CsvSource(
      delimiter = '|',
      value = {
        "cure,09:20,curing salt,C1,15.39,g | 0.2 ppm",
        "cure,09:20,curing salt,C1,8,g ; cure,09:21,curing salt,C1,7.39,g | 0.2 ppm",
        "cure,09:20,curing salt,C1,15,g,MA,S-10 | 16.8 ppm",
        "cure,09:20,curing salt,C1,8,g,MA,S-10 ; cure,09:21,curing salt,C1,7,g,MA,S-10 | 23.7 ppm",
        "cure,09:20,curing salt,C1,15,g,MA,S-10 ; cure,09:21,curing salt,C1,0,g,MA,S-10 | 16.8 ppm",
        "cure,09:20,curing salt,C1,15,g,MA,S-R | 10.6 ppm",
        "cure,09:20,curing salt,C1,15,g,MA,S-LB | 83.8 ppm",
        "cure,09:20,curing salt,C1,0.03,lb,MA,S-LB | 76.1 ppm",
        "cure,09:20,curing salt,C1,15,g,MA,HT-0 | not known",
        "cure,09:20,curing salt,C1,0,g | not known",
      })
  void what_the_scales_can_prove_counts_every_weighing(String lines, String half) {
    Finding finding =
        cured("cure,09:10,rind,,off", "cure,09:12,green weight,,4812,g")
            .write(lines.split(" ; ", -1))
            .finding(CEILING);
    assertEquals(
        half,
        finding.measured().flatMap(Measured::uncertainty).map(Quantity::shown).orElse("not known"));
  }

  /**
   * A small piece on a coarse scale: 200 g, less a rind of 50 g weighed by itself. By pencil, with
   * u of 0.006455 g of 0.60 g: U = 2 x 187.5 x √(0.010758² + (0.6455 / 200)²) = 4.2 ppm; a tenth
   * more ppm of 180 g; and 2 x 250 x √(0.010758² + 2 x (0.6455 / 150)²) = 6.2 ppm.
   */
  @ParameterizedTest
  @CsvSource({"off, '', 4.2 ppm", "on, '', 4.7 ppm", "on, 50, 6.2 ppm"})
  void a_rind_that_was_weighed_adds_its_doubt(String rind, String off, String half) {
    Bench bench =
        cured(
            "cure,09:10,rind,," + rind,
            "cure,09:12,green weight,,200,g,MA,S-10",
            "cure,09:20,curing salt,C1,0.60,g");
    if (!off.isEmpty()) {
      bench.write("cure,09:13,rind weight,," + off + ",g,MA,S-10");
    }
    Measured measured = bench.finding(CEILING).measured().orElseThrow();
    assertEquals(half, measured.uncertainty().orElseThrow().shown());
  }

  /**
   * By pencil, 0.60 g of cure on S-001 as above: in 200 g of minced meat 4.2 ppm again; in 100 g of
   * meat that came to rest with 100 g of pickle, U = 2 x 187.5 x √(0.010758² + 2 x (0.6455 / 200)²)
   * = 4.4 ppm. What a pump put in, no scale shows.
   */
  @ParameterizedTest
  @CsvSource({
    "comminuted, 200, '', 4.2 ppm",
    "immersion, 100, '', 4.4 ppm",
    "immersion, 100, 'cure,09:16,pick-up,,10,%', not known",
    "pumped, 100, 'cure,09:16,pump,,10,%', not known",
    "pumped and dry, 100, 'cure,09:16,pump,,10,%', not known",
  })
  void each_way_of_curing_shows_what_the_scales_can_prove_of_it(
      String method, String green, String taken, String half) {
    Bench bench =
        Bench.book()
            .product("cureMethod", "\"" + method + "\"")
            .own(
                "own",
                "cure",
                "\"kind\": \"ceiling\", \"quantity\": \"ingoing nitrite\", \"atMost\": \"200 ppm\"")
            .write(
                "cure,09:10,rind,,off",
                "cure,09:12,green weight,," + green + ",g,MA,S-10",
                "cure,09:15,pickle,,100,g,MA,S-10",
                "cure,09:20,curing salt,C1,0.60,g,MA,S-001,,,,meat",
                "cure,09:40,into cure,F1",
                "cure,09:50,out of cure");
    if (!taken.isEmpty()) {
      bench.write(taken);
    }
    Measured measured = bench.finding("own").measured().orElseThrow();
    assertEquals(half, measured.uncertainty().map(Quantity::shown).orElse("not known"));
  }

  /** By pencil: 1.28 lb x 6.25 % x 10 % / 100 lb = 80 ppm pumped, and the rub beside it. */
  @ParameterizedTest(name = "pumped and rubbed with {0} g: {1}")
  @CsvSource({
    "6.40, met 120.00 ppm, met 120.00 ppm",
    "6.41, met 120.06 ppm, not met 120.06 ppm",
    "19.20, met 200.00 ppm, not met 200.00 ppm",
    "19.21, not met 200.06 ppm, not met 200.06 ppm",
  })
  void two_methods_on_one_piece_add_up_and_the_stricter_limit_holds(
      String rubbed, String dry, String pumped) {
    Bench bench = twice(rubbed, "pickle", "meat");
    assertEquals(dry, verdict(bench));
    assertEquals(pumped, verdict(bench, "us.424.22-b-1.nitrite"));
  }

  @Test
  void with_two_methods_each_cure_must_say_where_it_went() {
    Finding finding = twice("6.40", "pickle", "").finding(CEILING);
    assertEquals("not shown", finding.verdict().words());
    assertTrue(reasons(finding).startsWith("the column \"way\" does not say"), reasons(finding));
  }

  private static Bench twice(String rubbed, String first, String second) {
    return cured(
            "cure,09:10,rind,,off",
            "cure,09:12,green weight,,10000,g",
            "cure,09:13,pickle,,100,lb",
            "cure,09:14,pump,,10,%",
            "cure,09:20,curing salt,C1,1.28,lb,MA,S-001,,,," + first,
            "cure,09:21,curing salt,C1," + rubbed + ",g,MA,S-001,,,," + second)
        .product("cureMethod", "\"pumped and dry\"")
        .rule("us.424.22-b-1.nitrite");
  }

  /** 9 CFR 424.22(b)(1): 550 ppm of the anhydrous salt; 600 ppm of the monohydrate are as much. */
  @Test
  void the_monohydrate_of_an_accelerator_counts_as_what_is_anhydrous_in_it() {
    Bench bench =
        cured(
                "cure,09:10,rind,,off",
                "cure,09:12,green weight,,10000,g",
                "cure,09:20,curing salt,C1,10,g",
                "cure,09:21,accelerator,EM,6.00,g")
            .own(
                "acc",
                "cure",
                "\"kind\": \"floor\", \"quantity\": \"ingoing accelerator\", \"atLeast\": \"550"
                    + " ppm\"");
    assertEquals("met 550.00 ppm", verdict(bench, "acc"));
  }

  @ParameterizedTest(name = "{0}: {1}")
  @CsvSource({"'38,mm', met", "'3.8,cm', met", "'38.1,mm', not shown", "'', not shown"})
  void a_limit_for_thin_pieces_needs_the_thickness(String thickness, String verdict) {
    Bench bench =
        cured("cure,09:12,green weight,,4812,g")
            .own(
                "days",
                "cure",
                "\"kind\": \"duration\", \"from\": \"into cure\", \"to\": \"out of cure\","
                    + " \"atLeast\": \"5 min\", \"when\": {\"thicknessAtMost\": \"38 mm\"}");
    if (!thickness.isEmpty()) {
      bench.write("cure,09:14,thickness,," + thickness);
    }
    assertEquals(verdict, bench.finding("days").verdict().words());
  }
}

package org.flitchbook.check;

import static org.flitchbook.check.Said.formulas;
import static org.flitchbook.check.Said.reasons;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A lot in several pieces, each with its own weighings, times and thickness. */
final class PiecesTest {

  private static final String CEILING = "us.424.22-b-3.nitrite";
  private static final String DAYS =
      "\"kind\": \"duration\", \"from\": \"into cure\", \"to\": \"out of cure\", \"atLeast\": \"3"
          + " h\"";

  private static String verdict(Bench bench, String limit) {
    return bench.finding(limit).verdict().words();
  }

  @ParameterizedTest(name = "{0}: {1}")
  @CsvSource(
      delimiter = '|',
      value = {
        // a goes in at 08:00 and b at 09:00
        "met     | cure,12:00:00,out of cure",
        "not met | cure,11:59:59,out of cure",
        "met     | cure,11:00:00,out of cure,,,,MA,,,,a ; cure,12:00:00,out of cure,,,,MA,,,,b",
        "not met | cure,12:00:00,out of cure,,,,MA,,,,a ; cure,11:00:00,out of cure,,,,MA,,,,b",
        "not met | cure,10:59:59,out of cure,,,,MA,,,,a ; cure,12:00:00,out of cure,,,,MA,,,,b",
        "not shown | cure,12:00:00,out of cure,,,,MA,,,,a",
        "met     | cure,11:30:00,out of cure,,,,MA,,,,a ; cure,12:00:00,out of cure",
      })
  void each_piece_is_timed_from_its_own_beginning_to_its_own_end(String verdict, String outs) {
    Bench bench =
        Bench.book()
            .own("days", "cure", DAYS)
            .write(
                "cure,08:00:00,into cure,F1,,,MA,,,,a",
                "cure,09:00:00,into cure,F1,,,MA,,,,b",
                "soak,13:00:00,into soak,SK")
            .write(outs.split(" ; ", -1));
    assertEquals(verdict, verdict(bench, "days"));
  }

  /**
   * The whole lot went in; of its pieces the first out counts for a floor, the last for a ceiling.
   */
  @ParameterizedTest
  @CsvSource({
    "atLeast, 11:00:00, 12:00:00, met",
    "atLeast, 10:59:59, 12:00:00, not met",
    "atLeast, 12:00:00, 10:59:59, not met",
    "atMost, 11:00:00, 11:00:00, met",
    "atMost, 11:00:00, 11:00:01, not met",
    "atMost, 11:00:01, 11:00:00, not met",
  })
  void the_worst_piece_counts_where_all_went_in_together(
      String bound, String a, String b, String verdict) {
    Bench bench =
        Bench.book()
            .own("days", "cure", DAYS.replace("atLeast", bound))
            .write(
                "cure,08:00:00,into cure,F1",
                "cure," + a + ",out of cure,,,,MA,,,,a",
                "cure," + b + ",out of cure,,,,MA,,,,b",
                "soak,13:00:00,into soak,SK");
    assertEquals(verdict, verdict(bench, "days"));
  }

  @Test
  void a_time_that_is_missed_says_on_which_side_and_by_the_clock() {
    Bench bench =
        Bench.book()
            .own("least", "cure", DAYS)
            .own("most", "cure", DAYS.replace("atLeast", "atMost").replace("3 h", "2 h"))
            .write("cure,08:00:00,into cure,F1", "cure,10:30:00,out of cure");
    assertEquals("2.5 h of at least 3 h", reasons(bench.finding("least")));
    assertEquals("2.5 h of at most 2 h", reasons(bench.finding("most")));
    assertEquals(
        "into cure to out of cure, from 2026-02-24 08:00 to 2026-02-24 10:30: 2.5 h",
        formulas(bench.finding("most")));
  }

  @ParameterizedTest(name = "a {0}, b {1}, all {2}: {3}")
  @CsvSource({
    "38, 38, '', met",
    "38, 38.1, '', not shown",
    "38, '', '', not shown",
    "'', '', 38, met",
    "38, '', 38, met",
    "38, '', 39, not shown",
  })
  void each_piece_is_measured_and_none_is_thicker(String a, String b, String all, String verdict) {
    Bench bench =
        Bench.book()
            .own("days", "cure", DAYS + ", \"when\": {\"thicknessAtMost\": \"38 mm\"}")
            .write(
                "cure,08:00:00,into cure,F1",
                "cure,12:00:00,out of cure",
                "cure,07:00,green weight,,2400,g,MA,S-10,,,a",
                "cure,07:01,green weight,,2410,g,MA,S-10,,,b");
    for (String[] piece : new String[][] {{a, "a"}, {b, "b"}, {all, ""}}) {
      if (!piece[0].isEmpty()) {
        bench.write("cure,07:10,thickness,," + piece[0] + ",mm,MA,,,," + piece[1]);
      }
    }
    assertEquals(verdict, verdict(bench, "days"));
  }

  /** One piece under its own name, and another one's thickness beside it. */
  @ParameterizedTest
  @CsvSource({"a, met", "b, not shown"})
  void a_piece_is_measured_by_its_own_entry(String measured, String verdict) {
    Bench bench =
        Bench.book()
            .own("days", "cure", DAYS + ", \"when\": {\"thicknessAtMost\": \"38 mm\"}")
            .write(
                "cure,08:00:00,into cure,F1",
                "cure,12:00:00,out of cure",
                "cure,07:00,green weight,,2400,g,MA,S-10,,,a",
                "cure,07:10,thickness,,38,mm,MA,,,," + measured);
    assertEquals(verdict, verdict(bench, "days"));
  }

  /** A rule for skinned pieces; what was stated last counts. */
  @ParameterizedTest
  @CsvSource({"off, met", "on, not shown", "none, not shown"})
  void a_limit_for_skinned_pieces_needs_the_rind_stated(String rind, String verdict) {
    Bench bench =
        Bench.book()
            .own("days", "cure", DAYS + ", \"when\": {\"rind\": [\"off\"]}")
            .write("cure,08:00:00,into cure,F1", "cure,12:00:00,out of cure");
    if (!rind.equals("none")) {
      bench.write("cure,07:00,rind,," + rind);
    }
    Finding finding = bench.finding("days");
    assertEquals(verdict, finding.verdict().words());
    if (!rind.equals("off")) {
      assertEquals("it holds only with rind off, which the lot does not show", reasons(finding));
    }
  }

  @Test
  void a_piece_that_was_cured_and_never_weighed_is_named() {
    Bench bench =
        Bench.book()
            .rule(CEILING)
            .write(
                "cure,07:00,rind,,off",
                "cure,07:01,green weight,,2400,g,MA,S-10,,,a",
                "cure,07:02,curing salt,C1,5,g,MA,S-001,,,a",
                "cure,07:03,curing salt,C1,5,g,MA,S-001,,,b",
                "cure,08:00:00,into cure,F1");
    assertEquals("no green weight of piece b", reasons(bench.finding(CEILING)));
  }

  /** 4700 g of two pieces of 2400 g; the sum of the green weights is the base. */
  @ParameterizedTest
  @CsvSource({"4800, met 100.00 %", "4801, not met 100.02 %"})
  void the_yield_of_a_lot_in_pieces_is_of_all_of_them(String grams, String said) {
    Bench bench =
        Bench.book()
            .believed()
            .rule("us.319.107.yield")
            .write(
                "cure,07:00,rind,,off",
                "cure,07:01,green weight,,2400,g,MA,S-10,,,a",
                "cure,07:02,green weight,,2400,g,MA,S-10,,,b",
                "cure,08:00:00,into cure,F1",
                "chill,12:00,into chill,F2",
                "chill,17:00,weight,," + grams + ",g",
                "chill,18:00,out of chill");
    assertEquals(said, Bench.said(bench.finding("us.319.107.yield")));
  }

  @Test
  void one_piece_without_a_base_leaves_the_yield_unshown() {
    Bench bench =
        Bench.book()
            .believed()
            .rule("us.319.107.yield")
            .write(
                "cure,07:00,rind,,off,,MA,,,,a",
                "cure,07:01,green weight,,2400,g,MA,S-10,,,a",
                "cure,07:02,green weight,,2400,g,MA,S-10,,,b",
                "chill,12:00,into chill,F2",
                "chill,17:00,weight,,4700,g",
                "chill,18:00,out of chill");
    Finding finding = bench.finding("us.319.107.yield");
    assertEquals("not shown", finding.verdict().words());
    assertTrue(reasons(finding).contains("no skin-free green weight"), reasons(finding));
  }
}

package org.flitchbook.check;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Yields and laboratory figures. */
final class FiguresTest {

  private static final String YIELD = "us.319.107.yield";

  private static String verdict(Bench bench, String limit) {
    return bench.finding(limit).verdict().words();
  }

  private static Bench weighed(String... lines) {
    return Bench.book()
        .believed()
        .rule(YIELD)
        .write("cure,09:10,rind,,off", "cure,09:12,green weight,,4812,g", "cure,09:40,into cure,F1")
        .write(lines);
  }

  /** 9 CFR 319.107: bacon weighs no more than its green weight. */
  @ParameterizedTest
  @CsvSource({"4811, met", "4812, met", "4813, not met"})
  void bacon_weighs_no_more_than_it_did_green(String grams, String verdict) {
    Bench bench =
        weighed(
            "chill,12:00,into chill,F2",
            "chill,17:00,weight,," + grams + ",g",
            "chill,18:00,out of chill");
    assertEquals(verdict, verdict(bench, YIELD));
  }

  @Test
  void a_yield_before_the_last_step_is_pending_and_after_it_not_shown() {
    Bench bench = weighed("soak,10:00,into soak,SK", "soak,11:00,weight,,4900,g");
    assertEquals("pending", verdict(bench, YIELD));
    bench.write("chill,12:00,into chill,F2", "chill,18:00,out of chill");
    assertEquals("not shown", verdict(bench, YIELD));
  }

  @ParameterizedTest
  @CsvSource({
    // 9 CFR 424.21(c): 200 ppm in the finished product, not for bacon
    "us.424.21-c.residual-nitrite, residual nitrite, 200, ppm, met",
    "us.424.21-c.residual-nitrite, residual nitrite, 200.1, ppm, not met",
    "us.424.21-c.residual-nitrite, residual nitrite, 199.9, ppm, met",
    // 9 CFR 319.106(c): at least 4 % salt
    "us.319.106-c.salt, salt, 4.0, %, met",
    "us.319.106-c.salt, salt, 3.9, %, not met",
    "us.319.106-c.salt, salt, 4.1, %, met",
  })
  void laboratory_figures_are_compared(
      String limit, String what, String value, String unit, String verdict) {
    Bench bench = Bench.book().product("cut", "\"ham\"").rule(limit);
    assertEquals("pending", verdict(bench, limit));
    bench.write("dispatch,10:00,dispatched,Corner shop");
    assertEquals("not shown", verdict(bench, limit));
    bench.write("lab,09:00," + what + ",," + value + "," + unit);
    assertEquals(verdict, verdict(bench, limit));
  }

  /** Salt ÷ (salt + moisture): FSIS, Principles of Preservation, 2005, p. 160. */
  @ParameterizedTest
  @CsvSource({"10, 90, met", "9.9, 90, not met", "10.1, 90, met"})
  void brine_strength_comes_from_both_figures(String salt, String moisture, String verdict) {
    Bench bench =
        Bench.book()
            .own(
                "brine",
                "release",
                "\"kind\": \"floor\", \"quantity\": \"brine strength\", \"atLeast\": \"10 %\"")
            .write("dispatch,10:00,dispatched,Corner shop", "lab,09:00,salt,," + salt + ",%");
    assertEquals("not shown", verdict(bench, "brine"));
    assertEquals(verdict, verdict(bench.write("lab,09:01,moisture,," + moisture + ",%"), "brine"));
  }
}

package org.flitchbook.check;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.flitchbook.plan.Kind;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Each bound on what went in, just below, at and just above. Dry and comminuted on 10 kg; pickled
 * with a tenth of 10 kg of pickle. The grams are worked by pencil from the numbers that the sources
 * print.
 */
final class EdgesTest {

  private static final String ROWS =
      """
      # limit                               | method     | cut   | item | below    | at       | above    | source
      us.424.22-b-3.nitrite                 | dry        | belly | C1   | 31.99    | 32       | 32.01    | 9 CFR 424.22(b)(3), 200 ppm (read)
      us.424.22-b-2.nitrite                 | immersion  | belly | CP   | 11.99    | 12       | 12.01    | 9 CFR 424.22(b)(2), 120 ppm (read)
      us.424.22-b-1.nitrite                 | pumped     | belly | CP   | 11.99    | 12       | 12.01    | 9 CFR 424.22(b)(1), 120 ppm (read)
      us.424.22-b-1.nitrite-floor           | pumped     | belly | CP   | 11.99    | 12       | 12.01    | 9 CFR 424.22(b)(1), 120 ppm (read)
      us.424.22-b-1.accelerator             | pumped     | belly | E    | 54.99    | 55       | 55.01    | 9 CFR 424.22(b)(1), 550 ppm (read)
      us.424.22-b-1.accelerator-floor       | pumped     | belly | E    | 54.99    | 55       | 55.01    | 9 CFR 424.22(b)(1), 550 ppm (read)
      us.424.22-b-1-ii-a.nitrite            | pumped     | belly | CP   | 9.99     | 10       | 10.01    | 9 CFR 424.22(b)(1)(ii)(A), 100 ppm (read)
      us.424.22-b-1-ii-a.nitrite-floor      | pumped     | belly | CP   | 9.99     | 10       | 10.01    | 9 CFR 424.22(b)(1)(ii)(A), 100 ppm (read)
      us.424.22-b-1-ii-b.nitrite            | pumped     | belly | CP   | 7.99     | 8        | 8.01     | 9 CFR 424.22(b)(1)(ii)(B), 80 ppm (read)
      us.424.22-b-1-ii-b.nitrite-floor      | pumped     | belly | CP   | 3.99     | 4        | 4.01     | 9 CFR 424.22(b)(1)(ii)(B), 40 ppm (read)
      us.hb.28.nitrite-pumped               | pumped     | belly | CP   | 14.39    | 14.4     | 14.41    | FSIS Directive 7620.3 pp. 28-29, 20 % above 120 ppm (memory)
      us.hb.28.nitrite-pumped-floor         | pumped     | belly | CP   | 9.59     | 9.6      | 9.61     | FSIS Directive 7620.3 pp. 28-29, 20 % below 120 ppm (memory)
      us.hb.12.nitrite-floor                | dry        | belly | C1   | 19.19    | 19.2     | 19.21    | FSIS Directive 7620.3 p. 12, 120 ppm (second-hand)
      us.424.21-c.nitrate-bacon             | dry        | belly | C2   | 0        | 0        | 0.01     | 9 CFR 424.21(c), none in bacon (read)
      us.424.21-c.nitrite-dry               | dry        | ham   | CP   | 6.24     | 6.25     | 6.26     | 9 CFR 424.21(c), 1 oz to 100 lb (derived)
      us.424.21-c.nitrite-comminuted        | comminuted | ham   | CP   | 1.5624   | 1.5625   | 1.5626   | 9 CFR 424.21(c), 1/4 oz to 100 lb (derived)
      us.424.21-c.nitrite-pickle            | immersion  | ham   | CP   | 19.99    | 20       | 20.01    | 9 CFR 424.21(c), 2 lb to 100 gal (derived)
      us.424.21-c.nitrate-dry               | dry        | ham   | C2   | 546.87   | 546.875  | 546.88   | 9 CFR 424.21(c), 3 1/2 oz to 100 lb, 4 % in the cure (derived)
      us.424.21-c.nitrate-comminuted        | comminuted | ham   | C2   | 429.68   | 429.6875 | 429.69   | 9 CFR 424.21(c), 2 3/4 oz to 100 lb, 4 % in the cure (derived)
      us.424.21-c.nitrate-pickle            | immersion  | ham   | C2   | 1749.99  | 1750     | 1750.01  | 9 CFR 424.21(c), 7 lb to 100 gal, 4 % in the cure (derived)
      us.424.21-c.accelerator-dry           | dry        | ham   | E    | 5.4687   | 5.46875  | 5.4688   | 9 CFR 424.21(c), 7/8 oz to 100 lb (derived)
      us.424.21-c.accelerator-comminuted    | comminuted | ham   | E    | 5.4687   | 5.46875  | 5.4688   | 9 CFR 424.21(c), 7/8 oz to 100 lb (derived)
      us.424.21-c.accelerator-pickle        | immersion  | ham   | E    | 54.687   | 54.6875  | 54.688   | 9 CFR 424.21(c), 87.5 oz to 100 gal (derived)
      """;

  private static Finding finding(
      String limit, String method, String cut, String item, String grams) {
    String what = item.equals("E") ? "accelerator" : "curing salt";
    Bench bench =
        Bench.book()
            .believed()
            .product("cureMethod", "\"" + method + "\"")
            .product("cut", "\"" + cut + "\"")
            .rule("{\"limit\": \"" + limit + "\", \"support\": \"file 1\"}")
            .write(
                "cure,09:10,rind,,off",
                "cure,09:12,green weight,,10000,g",
                "cure,09:19,curing salt,C1,0,g",
                "cure,09:20," + what + "," + item + "," + grams + ",g",
                "cure,09:40,into cure,F1");
    if (method.equals("immersion") || method.equals("pumped")) {
      String taken = method.equals("pumped") ? "pump" : "pick-up";
      bench.write("cure,09:15,pickle,,10000,g", "cure,09:16," + taken + ",,10,%");
    }
    return bench.finding(limit);
  }

  @ParameterizedTest(name = "{0}: {5}")
  @CsvSource(delimiter = '|', textBlock = ROWS)
  void a_bound_is_met_at_its_number_and_missed_beyond_it(
      String limit,
      String method,
      String cut,
      String item,
      String below,
      String at,
      String above,
      String source) {
    boolean floor = limit.endsWith("-floor");
    boolean none = below.equals(at);
    String under = floor && !none ? "not met" : "met";
    assertEquals(under, finding(limit, method, cut, item, below).verdict().words(), source);
    assertEquals("met", finding(limit, method, cut, item, at).verdict().words(), source);
    String over = floor ? "met" : "not met";
    assertEquals(over, finding(limit, method, cut, item, above).verdict().words(), source);
  }

  @Test
  void no_bound_on_what_went_in_is_left_out() {
    Set<String> named =
        Arrays.stream(ROWS.split("\n", -1))
            .filter(row -> row.startsWith("us"))
            .map(row -> row.substring(0, row.indexOf(' ')))
            .collect(Collectors.toCollection(TreeSet::new));
    Set<String> limits = new TreeSet<>();
    for (var set : Bench.book().rule("us.424.22-b-3.nitrite").plan().ruleSets()) {
      set.limits()
          .forEach(
              (id, limit) -> {
                if (limit.kind() instanceof Kind.Bound bound && bound.figure().isIngoing()) {
                  limits.add(id);
                }
              });
    }
    assertEquals(limits, named);
  }
}

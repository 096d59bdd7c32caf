package org.flitchbook.check;

import static org.flitchbook.check.Said.remarks;
import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What is told beside a verdict, and changes none. */
final class RemarksTest {

  private static final String NITRITE = "us.424.22-b-3.nitrite";
  private static final String COOLING = "us.b99.cooling-1";
  private static final String LETHALITY = "us.a21.table-2.lethality-6.5";

  @ParameterizedTest(name = "{0} g: {1}")
  @CsvSource({
    // 4812 g on a scale of 0.01 g and so the cure: U = 2 x 0.645 x 0.01 / 15.39 of 200 = 0.2 ppm
    "15.37, met, ''",
    "15.39, met, inside",
    "15.40, not met, inside",
    "15.42, not met, ''",
  })
  void a_sum_that_the_scales_can_not_prove_is_said_to_be_in_the_guard_band(
      String grams, String verdict, String remark) {
    Finding finding =
        Bench.book()
            .rule(NITRITE)
            .write(
                "cure,09:10,rind,,off",
                "cure,09:12,green weight,,4812,g",
                "cure,09:20,curing salt,C1," + grams + ",g",
                "cure,09:40,into cure,F1",
                "cure,09:50,out of cure")
            .finding(NITRITE);
    assertEquals(verdict, finding.verdict().words());
    String told =
        "inside the guard band of ± 0.2 ppm: these scales can't prove on which side of the limit"
            + " it is";
    assertEquals(remark.isEmpty() ? "" : told, remarks(finding));
  }

  /** Whose estimate a skin-free weight is, and how far that source can be trusted. */
  @ParameterizedTest(name = "rind {0}{1}, {2}: {3}")
  @CsvSource({
    "on, '', us.424.22-b-3.nitrite, told",
    "on, '', us.319.107.yield, told",
    "on, '', us.417.5-c.review, not",
    "on, 540, us.424.22-b-3.nitrite, not",
    "off, '', us.424.22-b-3.nitrite, not",
    "'', '', us.424.22-b-3.nitrite, not",
  })
  void a_share_that_was_taken_off_for_the_rind_is_told(
      String rind, String weighed, String limit, String told) {
    Bench bench = Bench.book().rule(limit);
    if (!rind.isEmpty()) {
      bench.write("cure,09:10,rind,," + rind);
    }
    bench.write("cure,09:12,green weight,,5400,g", "cure,09:20,curing salt,C1,10,g");
    if (!weighed.isEmpty()) {
      bench.write("cure,09:13,rind weight,," + weighed + ",g");
    }
    String remark = remarks(bench.write("cure,09:40,into cure,F1").finding(limit));
    assertEquals(
        told.equals("told")
            ? "the rind was not weighed, so 10 % of the weight counts as rind by FSIS Directive"
                + " 7620.3 p. 28, the sentence with the figure not read, second-hand: read in a"
                + " quotation or copy"
            : "",
        remark);
  }

  private static Bench chilled(String until80, String until40) {
    return Bench.book()
        .rule(COOLING)
        .write(
            "smoke,08:00:00,into smoke,SM",
            "smoke,09:00:00,out of smoke",
            "chill,09:05:00,into chill,F2",
            "chill,22:00:00,out of chill")
        .core(
            "P1",
            "LG-0",
            "08:00:00..09:00:00/60 40>140; 09:10:00 130; 09:11:00.."
                + until80
                + "/60 129.9>80; "
                + until40
                + " 40")
        .write("chill,09:05:00,internal temperature,thickest,134.0,°F");
  }

  @ParameterizedTest(name = "80 °F at {0}: {1}")
  @CsvSource({
    "10:31:00, ''",
    "10:32:00, a near miss: 8 min to spare",
    "10:40:00, a near miss: 0 min to spare",
  })
  void less_than_a_tenth_of_the_time_to_spare_is_a_near_miss(String at, String remark) {
    Finding finding =
        chilled(
                at,
                at.substring(0, 2)
                    + ":"
                    + (Integer.parseInt(at.substring(3, 5)) + 1)
                    + ":00..13:00:00/60 79>41; 13:01:00")
            .finding(COOLING);
    assertEquals("met", finding.verdict().words());
    assertEquals(remark, remarks(finding));
  }

  @Test
  void a_limit_that_would_have_passed_is_named_with_why_it_does_not_count() {
    Finding finding = chilled("11:10:00", "11:11:00..14:00:00/60 79>41; 14:01:00").finding(COOLING);
    assertEquals("not met", finding.verdict().words());
    String option3 =
        "it meets cooling option 3, cured with an accelerator, to 45 °F (FSIS-GD-2021-13 option 3),"
            + " a limit from memory which the lot can't use, since it does not show ingoing nitrite"
            + " of at least 100 ppm and accelerator of at least 250 ppm";
    assertEquals(true, remarks(finding).contains(option3), remarks(finding));
  }

  @ParameterizedTest(name = "{0} at 140 °F: {1}")
  @CsvSource({
    // D at 140 °F is 19.51 / 10 = 1.951 min: 1, 6 and 12 min give 0.51, 3.07 and 6.15 log, and the
    // rise of a minute before it a little more
    "10:01:00, 0.5 log",
    "10:06:00, 3.1 log",
    "10:12:00, 6.2 log",
    "10:20:00, at least 6.5 log",
  })
  void the_heat_added_up_stands_beside_the_table(String until, String logs) {
    Finding finding =
        Bench.book()
            .rule(LETHALITY)
            .product("class", "\"fully cooked, not shelf stable\"")
            .write("smoke,08:00:00,into smoke,SM", "smoke,10:30:00,out of smoke")
            .core("P1", "LG-0", "09:59:00 100; 10:00:00.." + until + "/10 140; 10:25:00 120")
            .finding(LETHALITY);
    assertEquals(
        "the heat added up while it rose gives "
            + logs
            + ", as support beside the table and never in its place",
        remarks(finding));
  }
}

package org.flitchbook.check;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A lot that left: reviewed is not enough where it was held, open or unfinished. */
final class DepartureTest {

  private static final String REVIEW = "review.before-dispatch";

  /** Of a plan that covers what its class asks for, each by a limit that the lot meets. */
  private static Bench lot(double salt) {
    Bench bench = Suspects.cured("curing salt,C1," + salt + ",g").product("steps", "[\"cure\"]");
    for (String covers : new String[] {"nitrate", "cold holding", "come-up", "cooling"}) {
      bench.covers(
          "own." + covers.replace(' ', '-'),
          covers,
          "cure",
          "\"kind\": \"entry\", \"what\": \"green weight\", \"with\": [\"by\"]");
    }
    return bench.write(
        "cure,2026-02-17 08:30,out of cure",
        "dispatch,2026-02-18 09:00,reviewed,,,,MA",
        "dispatch,2026-02-18 12:00,dispatched,Fen Larder,2000,g,MA,S-10");
  }

  @ParameterizedTest(name = "{0} g: {1}")
  @CsvSource(
      delimiter = '|',
      value = {
        "11.5 | ''                                                                  | met",
        "15.5 | ''                                                                  | not met",
        "15.5 | actions,2026-02-18 10:00,closed,,,,MA                               | met",
        "15.5 | actions,2026-02-18 13:00,closed,,,,MA                               | not met",
        "11.5 | actions,2026-02-18 10:00,held,tag T-1,,,MA                          | not met",
        "11.5 | actions,2026-02-18 13:00,held,tag T-1,,,MA                          | met",
        "11.5 | actions,2026-02-18 08:00,held,tag T-1,,,MA; actions,2026-02-18 10:00,closed,,,,MA |"
            + " met",
        "11.5 | actions,2026-02-18 10:00,held,tag T-1,,,MA; actions,2026-02-18 08:00,closed,,,,MA |"
            + " not met",
        "11.5 | cure,2026-02-10 08:20,pump,,10,%                                    | not met",
      })
  void a_lot_that_was_not_free_to_leave_misses_the_review(
      double salt, String rows, String verdict) {
    Bench bench = lot(salt);
    for (String row : rows.split("; ", -1)) {
      if (!row.isEmpty()) {
        bench.write(row);
      }
    }
    assertEquals(verdict, bench.finding(REVIEW).verdict().words());
  }

  /** Finished since, but not when it left. */
  @ParameterizedTest
  @CsvSource({"12:00, met", "11:59, met", "12:01, not met"})
  void a_lot_may_not_leave_before_its_last_step_ended(String out, String verdict) {
    Bench bench =
        lot(11.5)
            .product("steps", "[\"cure\", \"chill\"]")
            .write(
                "chill,2026-02-18 08:00,into chill,F2",
                "chill,2026-02-18 " + out + ",out of chill",
                "dispatch,2026-02-18 12:00,reviewed,,,,MA");
    assertEquals(verdict, bench.finding(REVIEW).verdict().words());
  }

  /** Reviewed at 09:00, and dispatched at 12:00. */
  @ParameterizedTest
  @CsvSource({"08:59, met", "09:00, met", "09:01, not met"})
  void a_review_before_the_last_step_ended_reviewed_nothing(String out, String verdict) {
    Bench bench =
        lot(11.5)
            .product("steps", "[\"cure\", \"chill\"]")
            .write(
                "chill,2026-02-18 08:00,into chill,F2",
                "chill,2026-02-18 " + out + ",out of chill");
    assertEquals(verdict, bench.finding(REVIEW).verdict().words());
  }

  @ParameterizedTest(name = "packed at {0}, {1}")
  @CsvSource(
      delimiter = '|',
      value = {
        "2026-02-17 08:29 | ''                                       | true",
        "2026-02-17 08:30 | ''                                       | false",
        "2026-02-17 10:00 | actions,2026-02-17 09:00,held,tag T-1,,,MA | true",
        "2026-02-17 10:00 | actions,2026-02-17 11:00,held,tag T-1,,,MA | false",
      })
  void a_lot_may_not_be_packed_while_it_is_held_or_in_work(String time, String row, boolean told) {
    Bench bench = lot(11.5).write("dispatch," + time + ",packed,box 1,2000,g,MA,S-10");
    Judgement judged = (row.isEmpty() ? bench : bench.write(row)).judge();
    assertEquals(
        told, judged.left().stream().anyMatch(left -> left.toString().contains("box 1")), row);
  }

  @ParameterizedTest
  @CsvSource("15.5")
  void it_is_said_what_left_to_whom_and_why_it_should_not_have(double salt) {
    String said = Said.reasons(lot(salt).finding(REVIEW));
    assertTrue(said.startsWith("LEFT: 2000 g to Fen Larder ("), said);
    assertTrue(said.endsWith("while ingoing nitrite, dry-cured bacon is not met"), said);
  }

  @ParameterizedTest
  @CsvSource("11.5")
  void an_unfinished_lot_may_not_leave(double salt) {
    String said = Said.reasons(lot(salt).product("steps", "[\"cure\", \"smoke\"]").finding(REVIEW));
    assertTrue(said.contains("planned steps is pending"), said);
  }
}

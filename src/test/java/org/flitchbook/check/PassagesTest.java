package org.flitchbook.check;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** From one step to the next, of the lot and of each of its pieces. */
final class PassagesTest {

  private static Bench smoked(String rows) {
    return Bench.book()
        .product("steps", "[\"smoke\", \"chill\"]")
        .product("between", "\"60 min\"")
        .write("smoke,08:00:00,into smoke,SM")
        .write(rows.split(" ; ", -1));
  }

  @ParameterizedTest(name = "{1}")
  @CsvSource(
      delimiter = '|',
      value = {
        "met 60.00 min       | smoke,11:00:00,out of smoke ; chill,12:00:00,into chill,F2",
        "not shown 60.02 min | smoke,11:00:00,out of smoke ; chill,12:00:01,into chill,F2",
        // A piece with an entry of its own beside that of the lot.
        "not shown 120.00 min | smoke,11:00:00,out of smoke ; chill,11:10:00,into chill,F2 ;"
            + " chill,13:00:00,into chill,F2,,,MA,,,,b",
        "not shown 90.00 min | smoke,11:00:00,out of smoke ; smoke,10:00:00,out of smoke,,,,MA,,,,b"
            + " ; chill,11:30:00,into chill,F2",
        // Each piece by itself.
        "met 20.00 min       | smoke,10:00:00,out of smoke,,,,MA,,,,a ; smoke,12:00:00,out of"
            + " smoke,,,,MA,,,,b ; chill,10:20:00,into chill,F2,,,MA,,,,a ; chill,12:10:00,into"
            + " chill,F2,,,MA,,,,b",
        "not shown 70.00 min | smoke,10:00:00,out of smoke,,,,MA,,,,a ; smoke,12:00:00,out of"
            + " smoke,,,,MA,,,,b ; chill,11:10:00,into chill,F2,,,MA,,,,a ; chill,12:10:00,into"
            + " chill,F2,,,MA,,,,b",
        // b never went in, and is waited for until the end of the day.
        "not shown 720.00 min | smoke,10:00:00,out of smoke,,,,MA,,,,a ; smoke,12:00:00,out of"
            + " smoke,,,,MA,,,,b ; chill,10:20:00,into chill,F2,,,MA,,,,a",
      })
  void each_piece_has_its_own_time_between_steps(String said, String rows) {
    Bench bench = smoked(rows).write("chill,18:00:00,out of chill");
    assertEquals(said, Bench.said(Bench.found(bench.judge("2026-02-25 00:00"), "plan.between")));
  }

  @ParameterizedTest(name = "{1}")
  @CsvSource(
      delimiter = '|',
      value = {
        "met       | smoke,11:00,out of smoke ; chill,11:00,into chill,F2",
        "met       | smoke,11:00,out of smoke ; chill,10:59,into chill,F2",
        "not shown | smoke,11:00,out of smoke ; chill,10:58,into chill,F2",
        "met       | smoke,10:00,out of smoke,,,,MA,,,,a ; smoke,11:00,out of smoke,,,,MA,,,,b ;"
            + " chill,10:10,into chill,F2,,,MA,,,,a ; chill,11:10,into chill,F2,,,MA,,,,b",
        "not shown | smoke,10:00,out of smoke,,,,MA,,,,a ; smoke,11:00,out of smoke,,,,MA,,,,b ;"
            + " chill,10:10,into chill,F2,,,MA,,,,a ; chill,10:50,into chill,F2,,,MA,,,,b",
      })
  void no_step_begins_before_the_one_before_it_ended(String verdict, String rows) {
    Bench bench = smoked(rows).write("chill,18:00,out of chill");
    assertEquals(verdict, bench.finding("plan.steps").verdict().words());
  }

  @ParameterizedTest(name = "{1}")
  @CsvSource(
      delimiter = '|',
      value = {
        // Carried to another cooler after a day, and judged there.
        "pending   | cure,2026-02-17 08:00,out of cure ; cure,2026-02-17 08:10,into cure,F2",
        "not met 23.98 h | cure,2026-02-17 08:00,out of cure",
        "met 79.98 h | cure,2026-02-17 08:00,out of cure ; cure,2026-02-17 08:10,into cure,F2 ;"
            + " cure,2026-02-19 16:00,out of cure",
        // The one piece went on, the other did not.
        "not met 23.98 h | cure,2026-02-17 08:00,out of cure,,,,MA,,,,a ; cure,2026-02-17 08:00,out"
            + " of cure,,,,MA,,,,b ; cure,2026-02-17 08:10,into cure,F2,,,MA,,,,a",
      })
  void a_piece_that_went_on_in_the_same_step_has_not_ended_it(String said, String rows) {
    Bench bench =
        Bench.book()
            .own(
                "days",
                "cure",
                "\"kind\": \"duration\", \"from\": \"into cure\", \"to\": \"out of cure\","
                    + " \"atLeast\": \"72 h\"")
            .write("cure,2026-02-16 08:00,into cure,F1")
            .write(rows.split(" ; ", -1));
    Finding found = Bench.found(bench.judge("2026-02-20 00:00"), "days");
    assertEquals(said, said.contains(" ") ? Bench.said(found) : found.verdict().words());
  }
}

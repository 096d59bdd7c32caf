package org.flitchbook.check;

import static org.flitchbook.check.Said.formulas;
import static org.flitchbook.check.Said.reasons;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Durations, cadences, entries, the order of steps and the time between them. */
final class EventsTest {

  private static final String START = "us.b99.cooling-2.start";
  private static final String REVIEW = "us.417.5-c.review";
  private static final String DAYS =
      "\"kind\": \"duration\", \"from\": \"into cure\", \"to\": \"out of cure\", \"atLeast\": \"7"
          + " d\"";
  private static final String TURNED =
      "\"kind\": \"cadence\", \"what\": \"turned\", \"every\": \"36 h\"";

  private static String verdict(Bench bench, String limit) {
    return bench.finding(limit).verdict().words();
  }

  /** FSIS Appendix B, 1999, option 2: chilling begins within 90 minutes. */
  @ParameterizedTest
  @CsvSource({
    "10:00:00, 11:29:59, met",
    "10:00:00, 11:30:00, met",
    "10:00:00, 11:30:01, not met",
    "10:00, 11:29, met",
    "10:00, 11:30, not shown",
    "10:00, 11:31, not met",
  })
  void chilling_begins_in_time(String out, String into, String verdict) {
    Bench bench =
        Bench.book()
            .rule("us.b99.cooling-2")
            .rule(START)
            .write(
                "smoke,08:00,into smoke,SM",
                "smoke," + out + ",out of smoke",
                "chill," + into + ",into chill,F2");
    assertEquals(verdict, verdict(bench, START));
  }

  @ParameterizedTest
  @CsvSource({"11:30, pending", "11:32, not met"})
  void a_start_that_is_to_come_is_pending_until_it_is_late(String at, String verdict) {
    Bench bench =
        Bench.book()
            .rule("us.b99.cooling-2")
            .rule(START)
            .write("smoke,08:00,into smoke,SM", "smoke,10:00,out of smoke");
    assertEquals(verdict, Bench.found(bench.judge(at), START).verdict().words());
  }

  @ParameterizedTest
  @CsvSource({
    "2026-02-10 09:00:00, 2026-02-17 09:00:00, met",
    "2026-02-10 09:00:00, 2026-02-17 08:59:59, not met",
    "2026-02-10 09:00, 2026-02-17 09:01, met",
    "2026-02-10 09:00, 2026-02-17 09:00, not shown",
  })
  void a_least_time_counts_to_the_second(String into, String out, String verdict) {
    Bench bench =
        Bench.book()
            .own("days", "cure", DAYS)
            .write("cure," + into + ",into cure,F1", "cure," + out + ",out of cure");
    assertEquals(verdict, verdict(bench, "days"));
  }

  @Test
  void days_in_cure_are_pending_while_it_lies_there_and_not_shown_where_no_one_took_it_out() {
    Bench bench =
        Bench.book().own("days", "cure", DAYS).write("cure,2026-02-10 09:00,into cure,F1");
    assertEquals("pending", verdict(bench, "days"));
    bench.write("soak,09:00,into soak,SK");
    assertEquals("not shown", verdict(bench, "days"));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "met     | 2026-02-12 20:59 | 2026-02-14 08:58",
        "not shown | 2026-02-12 20:59 | 2026-02-14 08:59",
        "not met | 2026-02-12 20:59 | 2026-02-14 09:00",
        "not met | 2026-02-12 21:01 | 2026-02-14 08:00",
        "not met | 2026-02-12 08:00 | 2026-02-13 19:59",
      })
  void it_is_turned_often_enough_the_steps_ends_included(
      String verdict, String first, String second) {
    Bench bench =
        Bench.book()
            .own("turned", "cure", TURNED)
            .write(
                "cure,2026-02-11 09:00,into cure,F1",
                "cure," + first + ",turned",
                "cure," + second + ",turned",
                "cure,2026-02-15 08:00,out of cure",
                "soak,2026-02-15 08:05,into soak,SK");
    assertEquals(verdict, verdict(bench, "turned"));
  }

  @Test
  void the_longest_pause_is_told_by_the_clock() {
    Bench bench =
        Bench.book()
            .own("turned", "cure", TURNED)
            .write(
                "cure,2026-02-11 09:00,into cure,F1",
                "cure,2026-02-12 09:00,turned",
                "cure,2026-02-13 10:00,turned",
                "cure,2026-02-14 09:00,out of cure",
                "soak,2026-02-14 09:05,into soak,SK");
    assertEquals(
        "2 entries; the longest pause is from 2026-02-12 09:00 to 2026-02-13 10:00: 25 h, at worst"
            + " 25.02 h",
        formulas(bench.finding("turned")));
  }

  @Test
  void the_longest_pause_between_steps_is_told_by_the_clock() {
    assertEquals(
        "after the step cure, from 2026-02-24 09:00 to 2026-02-24 09:10: 10 min",
        formulas(passed("none").product("between", "\"120 min\"").finding("plan.between")));
  }

  @ParameterizedTest
  @CsvSource({
    "2026-02-12 20:00, pending",
    "2026-02-12 21:00, not shown",
    "2026-02-12 21:01, not shown"
  })
  void no_turn_is_pending_until_its_time_has_run_out(String at, String verdict) {
    Bench bench =
        Bench.book().own("turned", "cure", TURNED).write("cure,2026-02-11 09:00,into cure,F1");
    String found = Bench.found(bench.judge(at), "turned").verdict().words();
    assertEquals(at.endsWith("21:00") ? "pending" : verdict, found);
  }

  @Test
  void no_turn_by_the_steps_end_is_not_shown() {
    Bench bench =
        Bench.book()
            .own("turned", "cure", TURNED)
            .write("cure,09:00,into cure,F1", "cure,10:00,out of cure", "soak,10:05,into soak,SK");
    assertEquals("not shown", verdict(bench, "turned"));
  }

  /** 9 CFR 417.5(c): the review comes before the goods leave. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "pending | dispatch,15:00,packed,,3900,g",
        "met | dispatch,16:00,reviewed ; dispatch,17:00,dispatched,Corner shop",
        "met | dispatch,16:00,reviewed",
        "not met | dispatch,17:00,dispatched,Corner shop",
        "not met | dispatch,17:00,dispatched,Corner shop ; dispatch,17:01,reviewed",
        "not met | dispatch,17:00,dispatched,Corner shop ; dispatch,17:00,reviewed",
        "not shown | dispatch,16:00,reviewed,,,, ; dispatch,17:00,dispatched,Corner shop",
      })
  void a_lot_is_reviewed_before_it_is_dispatched(String verdict, String lines) {
    Bench bench = Bench.book().rule(REVIEW).write(lines.split(" ; ", -1));
    assertEquals(verdict, verdict(bench, REVIEW));
  }

  /** 9 CFR 424.22(b)(3): a premeasured cure covers the surfaces, and someone says so. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "met | cure,09:30,surfaces covered,,all",
        "not met | cure,09:50,surfaces covered,,all",
        "not met |",
      })
  void an_entry_is_there_in_time(String verdict, String line) {
    String limit = "us.424.22-b-3.surfaces";
    Bench bench = Bench.book().rule(limit).write("cure,09:40,into cure,F1");
    assertEquals(verdict, verdict(line == null ? bench : bench.write(line), limit));
  }

  /** Two pieces, each covered, by an entry of its own or by one for both. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "met       | cure,09:30,surfaces covered,,all",
        "met       | cure,09:30,surfaces covered,,all,,MA,,,,a ; cure,09:31,surfaces"
            + " covered,,all,,MA,,,,b",
        "not met   | cure,09:30,surfaces covered,,all,,MA,,,,a",
        "not met   | cure,09:30,surfaces covered,,all,,MA,,,,a ; cure,09:50,surfaces"
            + " covered,,all,,MA,,,,b",
        "not shown | cure,09:30,surfaces covered,,all,,MA,,,,a ; cure,09:31,surfaces"
            + " covered,,all,,,,,,b",
      })
  void each_piece_is_covered(String verdict, String lines) {
    String limit = "us.424.22-b-3.surfaces";
    Bench bench =
        Bench.book()
            .rule(limit)
            .write(
                "cure,09:12,green weight,,4812,g,MA,S-10,,,a",
                "cure,09:13,green weight,,4900,g,MA,S-10,,,b",
                "cure,09:40,into cure,F1")
            .write(lines.split(" ; ", -1));
    assertEquals(verdict, verdict(bench, limit));
  }

  @ParameterizedTest
  @CsvSource({"true, 'no \"turned\" entry of piece b'", "false, 'no \"turned\" entry'"})
  void a_missing_entry_names_its_piece(boolean pieces, String reason) {
    Bench bench =
        Bench.book()
            .own("once", "cure", "\"kind\": \"entry\", \"what\": \"turned\", \"with\": [\"by\"]")
            .write("cure,09:40,into cure,F1", "cure,09:50,out of cure");
    if (pieces) {
      bench.write(
          "cure,09:12,green weight,,4812,g,MA,S-10,,,a",
          "cure,09:13,green weight,,4900,g,MA,S-10,,,b",
          "cure,09:45,turned,,,,MA,,,,a");
    }
    Finding finding = bench.finding("once");
    assertEquals("not shown", finding.verdict().words());
    assertEquals(reason, reasons(finding));
  }

  /** The columns that a limit may ask for. */
  @ParameterizedTest
  @CsvSource({"item, 3", "value, 4", "by, 6", "instrument, 7", "note, 8"})
  void an_entry_without_what_it_should_have_is_not_shown(String column, int cell) {
    String kind = "\"kind\": \"entry\", \"what\": \"turned\", \"with\": [\"" + column + "\"]";
    String full = "cure,09:40,turned,F1,twice,,MA,HT-0,by two";
    String[] lacking = full.split(",", -1);
    lacking[cell] = "";
    Bench bench = Bench.book().own("seen", "cure", kind).write("cure,09:30,into cure,F1");
    assertEquals(
        "the entry lacks " + column,
        reasons(bench.write(String.join(",", lacking)).finding("seen")));
    Bench other = Bench.book().own("seen", "cure", kind).write("cure,09:30,into cure,F1", full);
    assertEquals("met", verdict(other, "seen"));
  }

  private static Bench passed(String... without) {
    Bench bench = Bench.book().product("between", "\"2 h\"");
    String[] lines = {
      "cure,08:00:00,into cure,F1", "cure,09:00:00,out of cure",
      "soak,09:10:00,into soak,SK", "soak,10:00:00,out of soak",
      "dry,10:10:00,into drying,F2", "dry,11:00:00,out of drying",
      "smoke,11:10:00,into smoke,SM", "smoke,12:00:00,out of smoke",
      "chill,12:10:00,into chill,F2", "chill,16:00:00,out of chill"
    };
    for (String line : lines) {
      if (java.util.Arrays.stream(without).noneMatch(line::endsWith)) {
        bench.write(line);
      }
    }
    return bench;
  }

  @ParameterizedTest
  @CsvSource({
    "none, met",
    "'into soak,SK', not shown",
    "out of soak, not shown",
    "out of chill, pending",
  })
  void every_planned_step_is_on_record(String without, String verdict) {
    Finding finding = passed(without).finding("plan.steps");
    assertEquals(verdict, finding.verdict().words());
    boolean missing = verdict.equals("not shown");
    String what = without.split(",", 2)[0];
    assertEquals(
        missing ? "no \"" + what + "\" entry, though a later step has begun" : "",
        missing ? reasons(finding) : "");
  }

  @ParameterizedTest
  @CsvSource({"12:00:00, met", "12:00:01, not shown"})
  void no_more_time_lies_between_steps_than_the_product_allows(String into, String verdict) {
    Bench bench =
        passed("into drying,F2", "out of drying", "into smoke,SM", "out of smoke", "into chill,F2");
    bench.write(
        "dry," + into + ",into drying,F2",
        "dry,12:30:00,out of drying",
        "smoke,12:40:00,into smoke,SM",
        "smoke,13:00:00,out of smoke",
        "chill,13:10:00,into chill,F2");
    assertEquals(verdict, verdict(bench, "plan.between"));
  }

  @ParameterizedTest
  @CsvSource({"14:12:00, met", "14:12:01, not shown"})
  void time_out_of_a_step_counts_as_time_between_steps(String again, String verdict) {
    Bench bench = passed("out of chill");
    bench.write(
        "chill,12:12:00,out of chill",
        "chill," + again + ",into chill,F2",
        "chill,16:00:00,out of chill");
    Finding finding = bench.finding("plan.between");
    assertEquals(verdict, finding.verdict().words());
    assertEquals(
        verdict.equals("met") ? "" : "2 h out of the step chill",
        verdict.equals("met") ? "" : reasons(finding));
  }

  @Test
  void a_step_without_entries_leaves_time_that_nobody_watched() {
    Finding finding = passed("into drying,F2", "out of drying").finding("plan.between");
    assertEquals("met", finding.verdict().words());
    Finding late =
        passed("into soak,SK", "out of soak", "into drying,F2", "out of drying")
            .finding("plan.between");
    assertEquals("not shown", late.verdict().words());
    assertTrue(reasons(late).contains("after the step cure"), reasons(late));
  }
}

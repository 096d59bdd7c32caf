package org.flitchbook.doubt;

import static org.flitchbook.check.Said.formulas;
import static org.flitchbook.check.Said.reasons;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.flitchbook.check.Bench;
import org.flitchbook.check.CoreLog;
import org.flitchbook.check.Finding;
import org.flitchbook.check.Judgement;
import org.flitchbook.input.Fault;
import org.flitchbook.message.Message;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What people say of what is in doubt, and what it takes to rely on it. */
final class ExplainedTest {

  private static final String LOG = "2026-02-24/p1-log.csv";

  /** The probe lay on the shelf from 12:00 to 12:45, while the core fell from 115 to 79 °F. */
  private static Bench fallen() {
    return CoreLog.everyMinute().hold("12:00", "12:45", 38).bench();
  }

  private static String hand(String time, double level, String instrument) {
    return "chill," + time + ",internal temperature,thickest," + level + ",°F,MA," + instrument;
  }

  private static String explained(String item, String value) {
    return "actions,20:00:00,explained," + item + "," + value + ",,MA,,it fell out";
  }

  private static Finding cooling(Judgement judged) {
    return judged.findings().stream()
        .filter(finding -> finding.limit().id().equals("us.b99.cooling-1"))
        .findFirst()
        .orElseThrow();
  }

  private static List<String> open(Judgement judged) {
    return judged.openFaults().stream().map(ExplainedTest::told).toList();
  }

  private static String told(Fault fault) {
    return fault.rule() + " " + fault.place().toString().replace(LOG, "log");
  }

  @Test
  void what_nobody_explained_keeps_the_lot() {
    Judgement judged = fallen().judge();
    assertTrue(
        open(judged).containsAll(List.of("probe moved log:242:P1", "probe moved log:287:P1")));
    assertEquals("not shown", cooling(judged).verdict().words());
  }

  /** With hand readings at 12:10 (106.1 by the true curve) and 12:44 (79.3). */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        // of the fall, of the return, and the verdict on the cooling
        "excluded chill.csv:4 chill.csv:5 | confirmed chill.csv:5 | met",
        "excluded chill.csv:4             | confirmed chill.csv:5 | met",
        "excluded                         | confirmed chill.csv:5 | not shown",
        "confirmed chill.csv:4            | confirmed chill.csv:5 | not shown",
        "excluded chill.csv:4             | excluded chill.csv:5  | not shown",
        "excluded chill.csv:4             | confirmed             | not shown",
        "excluded chill.csv:4             | chill.csv:5           | not shown",
        "excluded chill.csv:4             | confirmed chill.csv:6 | not shown",
        "excluded chill.csv:2             | confirmed chill.csv:5 | not shown",
        "excluded chill.csv:9             | confirmed chill.csv:5 | not shown",
      })
  void a_finding_is_restored_by_independent_evidence_alone(
      String fall, String back, String verdict) {
    Judgement judged =
        fallen()
            .write(
                hand("12:10:00", 106.1, "HT-1"),
                hand("12:44:00", 79.3, "HT-1"),
                hand("17:59:00", 37, "HT-1"))
            .write(explained("probe moved p1-log.csv:242:P1", fall))
            .write(explained("probe moved p1-log.csv:287:P1", back))
            .judge();
    assertTrue(open(judged).stream().noneMatch(each -> each.startsWith("probe moved")));
    assertTrue(open(judged).isEmpty() || !verdict.equals("met"));
    assertEquals(verdict, cooling(judged).verdict().words(), reasons(cooling(judged)));
  }

  /** What each explanation lacks, in the order of the faults; {@link BearingTest} what counts. */
  private static List<String> lacks(Judgement judged) {
    return judged.faults().stream()
        .flatMap(fault -> fault.explained().stream())
        .map(said -> said.lacks().map(Message::toString).orElse(""))
        .map(lacks -> lacks.split("; what counts: ", 2)[0])
        .toList();
  }

  /** The logger's own reading is no evidence for the logger. */
  @Test
  void a_hand_reading_with_the_same_instrument_is_not_independent() {
    Judgement judged =
        fallen()
            .write(hand("12:10:00", 106.1, "LG-A"), hand("12:44:00", 79.3, "HT-1"))
            .write(explained("probe moved p1-log.csv:242:P1", "excluded chill.csv:4"))
            .write(explained("probe moved p1-log.csv:287:P1", "confirmed chill.csv:5"))
            .judge();
    assertEquals(
        List.of("2026-02-24/chill.csv:4 was read with the same instrument", ""), lacks(judged));
    assertEquals("not shown", cooling(judged).verdict().words());
  }

  /** P2 sat in a thinner place; where P1 lay on the shelf, it shows that, and no more. */
  @Test
  void another_probe_shows_that_readings_are_wrong_and_does_not_stand_for_them() {
    CoreLog thin = CoreLog.everyMinute().change("11:30", "18:01", x -> x - 1);
    Judgement judged =
        fallen()
            .core("P2", "LG-A", thin.text())
            .write(explained("probe moved p1-log.csv:242:P1", "excluded p2-log.csv:250:P2"))
            .write(explained("probe moved p1-log.csv:287:P1", "confirmed p2-log.csv:290:P2"))
            .judge();
    assertEquals(List.of(), open(judged));
    assertEquals("met", cooling(judged).verdict().words(), reasons(cooling(judged)));
    assertTrue(formulas(cooling(judged)).startsWith("P1 from 130 °F to 80 °F"));
  }

  @Test
  void what_is_excluded_stays_on_record_with_its_reason() {
    Judgement judged =
        fallen()
            .write(hand("12:10:00", 106.1, "HT-1"))
            .write(explained("probe moved p1-log.csv:242:P1", "excluded chill.csv:4"))
            .judge();
    var track =
        judged
            .lot()
            .tracks(org.flitchbook.sheet.What.INTERNAL_TEMPERATURE, org.flitchbook.sheet.Step.SMOKE)
            .get(0);
    assertEquals(45, track.excluded().size());
    assertEquals("probe moved", track.excluded().get(0).why());
    assertEquals(LOG + ":242:P1", track.excluded().get(0).place().toString());
  }

  /** What happened once is told once. */
  @Test
  void one_explanation_answers_all_that_is_asked_of_the_same_readings() {
    Bench bench = CoreLog.everyMinute().hold("12:00", "12:45", 36.5).inAir();
    assertTrue(open(bench.judge()).contains("core equals air log:242:P1"));
    Judgement judged =
        bench
            .write(hand("12:10:00", 106.1, "HT-1"), hand("12:44:00", 79.3, "HT-1"))
            .write(explained("probe moved p1-log.csv:242:P1", "excluded chill.csv:4"))
            .write(explained("probe moved p1-log.csv:287:P1", "confirmed chill.csv:5"))
            .judge();
    assertEquals(List.of(), open(judged));
    assertEquals("met", cooling(judged).verdict().words(), reasons(cooling(judged)));
  }

  /** It slipped at 12:00 and was read by hand; at 12:40 it fell out, and nobody saw that. */
  @Test
  void to_confirm_one_leap_does_not_confirm_the_next() {
    CoreLog log =
        CoreLog.everyMinute().change("12:00", "12:40", x -> x - 10).hold("12:40", "18:01", 36.5);
    Judgement judged =
        log.bench()
            .write(hand("12:05:00", log.level("12:05:00"), "HT-1"))
            .write(explained("probe moved p1-log.csv:242:P1", "confirmed chill.csv:4"))
            .judge();
    assertEquals(List.of("probe moved log:282:P1"), open(judged));
    assertEquals("not shown", cooling(judged).verdict().words());
  }

  /** Both probes lie on the shelf, and each says that the other is right. */
  @Test
  void what_is_in_doubt_itself_is_no_evidence() {
    CoreLog log = CoreLog.everyMinute().hold("12:00", "18:01", 36.5);
    Judgement judged =
        log.bench()
            .core("P2", "LG-A", log.text())
            .write(explained("probe moved p1-log.csv:242:P1", "confirmed p2-log.csv:243:P2"))
            .write(explained("probe moved p2-log.csv:242:P2", "confirmed p1-log.csv:243:P1"))
            .judge();
    assertEquals(
        List.of(
            "2026-02-24/p2-log.csv:243:P2 is in doubt itself",
            "2026-02-24/p1-log.csv:243:P1 is in doubt itself"),
        lacks(judged));
    assertEquals("not shown", cooling(judged).verdict().words());
  }

  /** A core like its air is no evidence that the probe was in it. */
  @Test
  void readings_are_not_confirmed_by_one_that_comes_hours_later() {
    CoreLog log = CoreLog.everyMinute().hold("12:00", "18:01", 36.5);
    Judgement judged =
        log.bench()
            .write(hand("17:50:00", 37, "HT-1"))
            .write(explained("probe moved p1-log.csv:242:P1", "confirmed chill.csv:4"))
            .judge();
    assertEquals(
        List.of("2026-02-24/chill.csv:4 is more than 60 min after they began"), lacks(judged));
    assertEquals("not shown", cooling(judged).verdict().words());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "probe moved p1-log.csv:999:P1 | excluded chill.csv:4 | fell out | MA | 20:00 | item",
        "the probe                     | excluded chill.csv:4 | fell out | MA | 20:00 | item",
        "probe moved p1-log.csv:242:P1 | excluded chill.csv:4 | ''       | MA | 20:00 | note",
        "probe moved p1-log.csv:242:P1 | lies on the shelf    | fell out | MA | 20:00 | value",
        "probe moved p1-log.csv:242:P1 | excluded chill.csv:4 | fell out | XX | 20:00 | by",
        "probe moved p1-log.csv:242:P1 | excluded chill.csv:4 | fell out | MA | 11:59 | time",
        "probe moved p1-log.csv:242    | excluded chill.csv:4 | fell out | MA | 12:01 | -",
      })
  void an_explanation_that_explains_nothing_is_asked_about(
      String item, String value, String why, String by, String time, String column) {
    Judgement judged =
        fallen()
            .write(hand("12:10:00", 106.1, "HT-1"))
            .write(
                "actions," + time + ":00,explained," + item + "," + value + ",," + by + ",," + why)
            .judge();
    List<String> asked =
        judged.openFaults().stream()
            .filter(fault -> fault.rule().equals("explanation"))
            .map(fault -> fault.place().column())
            .toList();
    assertEquals(column.equals("-") ? List.of() : List.of(column), asked);
    assertEquals(!column.equals("-"), open(judged).contains("probe moved log:242:P1"));
  }

  @Test
  void a_stop_is_never_explained_away() {
    Judgement judged =
        CoreLog.everyMinute()
            .silent("15:00", "18:01")
            .bench()
            .write(explained("log ends early p1-log.csv:421:P1", "confirmed"))
            .judge();
    assertEquals(
        List.of("log ends early log:421:P1", "explanation 2026-02-24/actions.csv:2:item"),
        open(judged));
  }

  /** HT-1 was last checked more than 30 days before. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        // by HT-0 ten minutes later, and an hour and more later; by HT-1; a check of it; nothing
        "cure.csv:5        | ''",
        "cure.csv:6        | 2026-02-24/cure.csv:6 does not agree with it",
        "cure.csv:7        | 2026-02-24/cure.csv:7 is not within 60 min of it",
        "cure.csv:4        | 2026-02-24/cure.csv:4 is no other entry of the lot",
        "cure.csv:3        | 2026-02-24/cure.csv:3 is no other cooler temperature of it",
        "instruments.csv:9 | ''",
        "instruments.csv:8 | 2026-02-24/instruments.csv:8 is not within 60 min of it",
        "''                | no other evidence is named",
      })
  void an_entry_is_borne_out_by_another_instrument_or_a_later_check(String evidence, String lacks) {
    Judgement judged =
        Bench.book()
            .own("cold", "cure", COLD)
            .write(
                "cure,2026-03-10 06:30:00,into cure,F1",
                "cure,2026-03-10 07:00:00,cooler temperature,F1,38.0,°F,MA,HT-1",
                "cure,2026-03-10 07:10:00,cooler temperature,F1,38.4,°F,MA,HT-0",
                "cure,2026-03-10 07:20:00,cooler temperature,F1,35.0,°F,MA,HT-0",
                "cure,2026-03-10 08:10:00,cooler temperature,F1,38.0,°F,MA,HT-0",
                "cure,2026-03-10 18:00:00,out of cure",
                "instruments,2026-03-10 20:00:00,ice point,,32.0,°F,MA,HT-1",
                "actions,2026-03-10 21:00:00,explained,instrument not in force cure.csv:4,"
                    + evidence
                    + ",,MA,,its check was due the day before")
            .judge();
    assertEquals(List.of(lacks), lacks(judged));
    assertEquals(
        lacks.isEmpty() ? "met" : "not shown",
        judged.findings().get(0).verdict().words(),
        reasons(judged.findings().get(0)));
  }

  /** The second row corrects the explanation of the fall, on the same day or on the next one. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "20:05:00            | probe moved p1-log.csv:242:P1 | withdrawn | it was P2    | ''",
        "2026-02-25 07:00:00 | probe moved p1-log.csv:242:P1 | withdrawn | it was P2    | ''",
        "20:05:00            |                               | Withdrawn | it was P2    | ''",
        "20:05:00            | probe moved p1-log.csv:242:P1 | withdrawn | | correction to be"
            + " explained",
        "20:05:00            | probe moved p1-log.csv:242:P1 | gone      | it was P2    |"
            + " explanation",
      })
  void an_explanation_is_withdrawn_by_a_correction(
      String time, @Nullable String item, String value, @Nullable String why, String asked) {
    Judgement judged =
        fallen()
            .write(hand("12:10:00", 106.1, "HT-1"))
            .write(explained("probe moved p1-log.csv:242:P1", "excluded chill.csv:4"))
            .write(
                "actions,%s,explained,%s,%s,,MA,,%s,actions.csv:2"
                    .formatted(time, item == null ? "" : item, value, why == null ? "" : why))
            .judge();
    assertTrue(open(judged).contains("probe moved log:242:P1"), open(judged).toString());
    List<String> others =
        judged.openFaults().stream()
            .map(Fault::rule)
            .filter(rule -> rule.matches("explanation|correction.*"))
            .toList();
    assertEquals(asked.isEmpty() ? List.of() : List.of(asked), others);
  }

  @Test
  void an_explanation_of_another_fault_takes_the_place_of_a_mistaken_one() {
    Judgement judged =
        fallen()
            .write(hand("12:10:00", 106.1, "HT-1"), hand("12:44:00", 79.3, "HT-1"))
            .write(explained("probe moved p1-log.csv:24:P1", "excluded chill.csv:4"))
            .write(explained("probe moved p1-log.csv:287:P1", "confirmed chill.csv:5"))
            .write(
                explained("probe moved p1-log.csv:242:P1", "excluded chill.csv:4")
                    + ",actions.csv:2")
            .judge();
    assertEquals(List.of(), open(judged));
  }

  /** 138.8 °F by hand was 148.8; once that is corrected nobody asks, and what was said lapses. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "p1-log.csv:179:P1 | corrected     | note explanation",
        "p1-log.csv:179:P1 | not corrected | ask hand and log disagree",
        "smoke.csv:4       | corrected     | note explanation",
        "p1-log.csv:999:P1 | corrected     | ask explanation",
        "the probe         | corrected     | ask explanation",
      })
  void what_was_said_of_a_row_that_is_corrected_lapses(
      String place, String corrected, String found) {
    Bench bench =
        CoreLog.everyMinute()
            .bench()
            .write("smoke,10:59:00,internal temperature,thickest,138.8,°F,MA,HT-1")
            .write(explained("hand and log disagree " + place, ""));
    if (corrected.equals("corrected")) {
      bench.write(
          "smoke,10:59:00,internal temperature,thickest,148.8,°F,MA,HT-1,misread,smoke.csv:4");
    }
    Judgement judged = bench.judge();
    assertEquals(
        List.of(found),
        judged.faults().stream()
            .map(fault -> fault.severity().word() + " " + fault.rule())
            .toList());
    assertEquals(found.equals("ask explanation"), !open(judged).isEmpty());
  }

  private static final String COLD =
      "\"kind\": \"holding\", \"what\": \"cooler temperature\", \"atMost\": \"41 °F\","
          + " \"every\": \"16 h\", \"allow\": \"2 h\"";
}

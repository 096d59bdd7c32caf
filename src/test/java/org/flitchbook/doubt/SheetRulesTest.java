package org.flitchbook.doubt;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.stream.Collectors;
import org.flitchbook.check.Bench;
import org.flitchbook.input.Severity;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Rows that no limit looks at as they stand: what is asked about, and its honest neighbour. */
final class SheetRulesTest {

  private static Bench lot() {
    return Bench.book()
        .doubting()
        .own(
            "cold",
            "cure",
            "\"kind\": \"holding\", \"what\": \"cooler temperature\", \"atMost\": \"41 °F\","
                + " \"every\": \"16 h\"")
        .own(
            "cooling",
            "smoke",
            "\"kind\": \"span\", \"what\": \"internal temperature\", \"from\": \"130 °F\","
                + " \"to\": \"40 °F\", \"atMost\": \"8 h\"")
        .own(
            "nitrite",
            "cure",
            "\"kind\": \"ceiling\", \"quantity\": \"ingoing nitrite\", \"atMost\": \"200 ppm\"");
  }

  private static String found(Bench bench) {
    return bench.doubts().stream()
        .filter(fault -> fault.is(Severity.ASK) || fault.is(Severity.STOP))
        .map(fault -> fault.severity().word() + " " + fault.rule())
        .distinct()
        .collect(Collectors.joining(", "));
  }

  @ParameterizedTest(name = "{0}")
  @CsvSource(
      delimiter = '|',
      value = {
        "cure,2026-02-16 12:00,cooler temperature,F1,38.0,°F    | ''",
        "cure,2026-02-16 12:00,cooler temperature,F1,58.0,°F    | ''",
        "cure,2026-02-16 12:00,cooler temperature,F2,38.0,°F    | ''",
        "cure,2026-02-16 12:00,cooler temperature,F2,41.0,°F    | ''",
        "cure,2026-02-16 12:00,cooler temperature,F2,41.1,°F    | ask row not used",
        "cure,2026-02-16 08:00,cooler temperature,F1,58.0,°F    | ask row not used",
        "cure,2026-02-10 12:00,cooler temperature,F1,58.0,°F    | ask row not used",
        "cure,2026-02-24 12:00,cooler temperature,F1,58.0,°F    | ask row not used",
        "chill,2026-02-16 12:00,cooler temperature,F1,58.0,°F   | ''",
        "chill,2026-02-16 12:00,cooler temperature,,58.0,°F     | ask row not used",
        "smoke,2026-02-16 12:00,internal temperature,P1,39.0,°F | ''",
        "smoke,2026-02-16 12:00,internal temperature,P1,70.0,°F | ask row not used",
        "soak,2026-02-16 12:00,water temperature,SK,41.0,°F     | ''",
        "soak,2026-02-16 12:00,water temperature,SK,41.1,°F     | ask row not used",
        "cure,2026-02-16 08:00,received temperature,,41.0,°F    | ''",
        "cure,2026-02-16 08:00,received temperature,,60.5,°F    | ask row not used",
        "smoke,2026-02-16 12:00,chamber temperature,SM,160,°F   | ''",
        "cure,2026-02-16 10:00,accelerator,E1,3,g               | ask row not used",
        "cure,2026-02-16 10:00,salt,,97,g,MA,S-10               | ''",
        "lab,2026-02-26 12:00,pH,,7.9,                          | ask row not used",
      })
  void a_reading_that_no_limit_looks_at_is_asked_about_where_it_would_miss_one(
      String row, String found) {
    assertEquals(
        found,
        found(
            lot()
                .write(
                    "cure,2026-02-16 09:40,into cure,F1",
                    "cure,2026-02-23 15:00,out of cure",
                    row)));
  }

  @ParameterizedTest(name = "{0}")
  @CsvSource(
      delimiter = '|',
      value = {
        "cooler temperature,F1,38.0,°F | ''",
        "cooler temperature,F1,25.0,°F | ''",
        "cooler temperature,F1,24.9,°F | ask place too cold",
        "cooler temperature,F1,8.0,°F  | ask place too cold",
        "cooler temperature,F1,-4.0,°C | ask place too cold",
        "cooler temperature,F1,-3.8,°C | ''",
      })
  void a_cooler_colder_than_meat_is_kept_is_asked_about(String reading, String found) {
    assertEquals(
        found,
        found(
            lot()
                .write(
                    "cure,2026-02-16 09:40,into cure,F1",
                    "cure,2026-02-16 12:00," + reading,
                    "cure,2026-02-23 15:00,out of cure")));
  }

  @ParameterizedTest(name = "{0}")
  @CsvSource(
      delimiter = '|',
      value = {
        "salt,,97.5,g              | ''",
        "salt,sea salt,97.5,g      | ''",
        "salt,C1,97.5,g            | stop curing salt under another word",
        "salt,cure no. 1,97.5,g    | stop curing salt under another word",
        "sugar,CP,48.0,g           | stop curing salt under another word",
        "other,c1,10.0,g           | stop curing salt under another word",
        "accelerator,CE,2.0,g      | stop curing salt under another word",
        "other,juniper,10.0,g      | ''",
      })
  void what_holds_nitrite_is_curing_salt_under_whatever_word(String row, String found) {
    assertEquals(found, found(lot().write("cure,2026-02-16 09:22," + row)));
  }

  @ParameterizedTest(name = "{0} then {1}")
  @CsvSource({
    "off, 4812, 300, ask rind weighed though off",
    "on,  4812, 300, ''",
  })
  void a_rind_is_weighed_only_of_a_piece_that_had_it(
      String rind, String green, String weight, String found) {
    assertEquals(
        found,
        found(
            lot()
                .write(
                    "cure,2026-02-16 09:10,rind,," + rind,
                    "cure,2026-02-16 09:12,green weight,," + green + ",g,MA,S-10",
                    "cure,2026-02-16 09:20,rind weight,," + weight + ",g,MA,S-10")));
  }

  @ParameterizedTest(name = "{0}: {1}")
  @CsvSource(
      delimiter = '|',
      value = {
        "dry             | 09:30,pump,,10,%                    | ask row of another method",
        "dry             | 09:30,pickle,,12500,g,MA,S-10       | ask row of another method",
        "pumped          | 09:30,pump,,10,%                    | ''",
        "pumped          | 09:30,pick-up,,10,%                 | ask row of another method",
        "immersion       | 09:30,pick-up,,10,%                 | ''",
        "pumped and dry  | 09:30,pump,,10,%                    | ''",
      })
  void a_row_of_a_method_that_the_product_has_not_is_asked_about(
      String method, String row, String found) {
    assertEquals(
        found,
        found(lot().product("cureMethod", "\"" + method + "\"").write("cure,2026-02-16 " + row)));
  }

  @ParameterizedTest(name = "out {0}, in {1}")
  @CsvSource({
    "12:00:00, 12:29:59, ''",
    "12:00:00, 12:30:00, ''",
    "12:00:00, 12:30:01, ask out and in again",
    "12:00:00, 23:00:00, ask out and in again",
  })
  void a_lot_that_was_out_of_a_step_for_long_is_asked_about(String out, String in, String found) {
    for (String step : new String[] {"cure", "drying", "chill"}) {
      String sheet = step.equals("drying") ? "dry" : step;
      assertEquals(
          found,
          found(
              Bench.book()
                  .doubting()
                  .write(
                      sheet + ",2026-02-16 09:40:00,into " + step + ",F1",
                      sheet + ",2026-02-16 " + out + ",out of " + step,
                      sheet + ",2026-02-16 " + in + ",into " + step + ",F1",
                      sheet + ",2026-02-17 15:00:00,out of " + step)),
          step);
    }
  }

  /** One piece is out while the other stays; the other's entries don't hide it. */
  @ParameterizedTest(name = "{0}")
  @CsvSource({"a, ask out and in again", "b, ''"})
  void a_piece_that_was_out_is_asked_about(String again, String found) {
    assertEquals(
        found,
        found(
            Bench.book()
                .doubting()
                .write(
                    "cure,2026-02-16 09:40:00,into cure,F1,,,MA,,,,a",
                    "cure,2026-02-16 12:00:00,out of cure,,,,MA,,,,a",
                    "cure,2026-02-16 18:00:00,into cure,F1,,,MA,,,," + again,
                    "cure,2026-02-17 15:00:00,out of cure")));
  }

  @ParameterizedTest(name = "{0}")
  @CsvSource(
      delimiter = '|',
      value = {
        "2026-02-16 09:41,into cure,F1,,,MA,,misread the clock,cure.csv:3 | ''",
        "2026-02-16 09:41,into cure,F1,,,MA,,,cure.csv:3 | ask correction to be explained",
        "2026-02-16 09:40,into cure,F2,,,MA,,it was F2,cure.csv:3 | ask correction to be explained",
        "2026-02-17 09:40,into cure,F1,,,MA,,a day later,cure.csv:3 | ask correction to be"
            + " explained",
      })
  void a_correction_says_why_and_moves_nothing(String row, String found) {
    assertEquals(
        found,
        found(
            Bench.book()
                .doubting()
                .write(
                    "cure,2026-02-16 09:40,into cure,F1",
                    "cure," + row,
                    "cure,2026-02-23 15:00,out of cure")));
  }

  @ParameterizedTest(name = "{0}")
  @CsvSource(
      delimiter = '|',
      value = {
        "C1,12.0,g | ''",
        "CR,120.0,g | ask strength without its label",
        "CP,0.7,g | ''",
        "CK,8.0,g | ''",
        "CX,12.0,g | ''",
      })
  void a_cure_of_unusual_strength_is_asked_about_where_no_label_bears_it_out(
      String salt, String found) {
    assertEquals(
        found,
        found(
            Bench.book()
                .doubting()
                .rule("us.424.22-b-3.nitrite")
                .write(
                    "cure,2026-02-16 09:00,green weight,,4800,g,MA,S-10",
                    "cure,2026-02-16 09:10,curing salt," + salt)));
  }
}

package org.flitchbook.doubt;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.LocalTime;
import java.util.List;
import java.util.stream.Collectors;
import org.flitchbook.check.Bench;
import org.flitchbook.check.CoreLog;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Each rule on the values of a log: what it finds, and what it leaves alone. */
final class ValuesTest {

  private static final String CHAMBER = "\"place\": \"SM\"";
  private static final String COOLER = "\"place\": \"F2\"";

  /** What is found, each once, without the notes on gaps that follow from it. */
  private static String found(Bench bench) {
    return bench.doubts().stream()
        .map(fault -> fault.severity().word() + " " + fault.rule())
        .filter(each -> !each.equals("note gap"))
        .distinct()
        .collect(Collectors.joining(", "));
  }

  @Test
  void a_good_lot_is_asked_nothing() {
    for (Bench bench :
        List.of(
            CoreLog.everyMinute().bench(),
            CoreLog.everyMinute().inAir(),
            CoreLog.every(10).noisy(0.4).inAir(),
            CoreLog.every(300).noisy(0.4).inAir())) {
      assertEquals("", found(bench));
    }
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "4   | ''",
        "6   | ask probe moved",
        "-9  | ask probe moved, ask re-warming, stop log ends early",
      })
  void a_core_that_leaps_moved(double by, String found) {
    CoreLog log = CoreLog.everyMinute().change("12:10", "18:01", level -> level - by);
    assertEquals(found, found(log.bench()));
  }

  /** In ice water a belly falls by 2.3 °F a minute; no meat keeps 3.1 for two minutes. */
  @ParameterizedTest
  @CsvSource({"2.3, ''", "2.9, ''", "3.1, ask probe moved"})
  void a_core_that_changes_faster_than_meat_moved(double rate, String found) {
    CoreLog log = CoreLog.everyMinute().ramp("11:45", 90 / rate, 38, "18:01");
    assertEquals(found, found(log.bench()));
  }

  /** A second apart, a noise of half a degree is 60 °F a minute. */
  @Test
  void noise_between_two_seconds_is_no_leap() {
    assertEquals("", found(CoreLog.every(1).noisy(0.5).bench()));
  }

  /** Three degrees are no step, but more than half the way from 41 to 36. */
  @Test
  void a_core_that_goes_more_than_half_the_way_to_its_air_moved() {
    CoreLog log = CoreLog.everyMinute().change("16:20", "18:01", level -> level - 3);
    assertEquals("", found(log.bench()));
    assertEquals("ask probe moved, ask core equals air", found(log.inAir()));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "12:00 | 12:06 | note probe pulled and put back",
        "10:20 | 10:30 | note probe pulled and put back",
        "10:52 | 10:58 | ask probe pulled at the finish",
        "12:00 | 12:35 | ask probe moved, ask stuck, ask re-warming",
      })
  void a_probe_that_is_soon_back_was_pulled(String from, String until, String found) {
    assertEquals(found, found(CoreLog.everyMinute().hold(from, until, 66).bench()));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "08:00 | 08:04 | 68 | note probe not in the meat",
        "08:00 | 08:12 | 68 | ask probe moved",
        "17:57 | 18:01 | 64 | note probe not in the meat",
        "17:45 | 18:01 | 64 | ask probe moved, ask re-warming, stop log ends early",
      })
  void a_probe_goes_in_a_little_late_and_out_a_little_early(
      String from, String until, double level, String found) {
    assertEquals(found, found(CoreLog.everyMinute().hold(from, until, level).bench()));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "09:00 | 09:03 | -127   | note error value",
        "09:00 | 09:03 | -58    | note error value",
        "09:00 | 09:03 | 999.9  | note error value",
        "09:00 | 09:03 | 32767  | note error value",
        "12:00 | 12:01 | 185    | note error value",
        "12:00 | 12:01 | 32     | note error value",
        "12:00 | 12:01 | 185.1  | note probe pulled and put back",
        "12:00 | 12:01 | 400    | ask impossible value",
        "12:00 | 12:01 | 24     | ask impossible value",
        "12:00 | 12:01 | 25     | note probe pulled and put back",
        "12:00 | 12:01 | 220    | note probe pulled and put back",
      })
  void what_a_logger_writes_for_want_of_a_reading_is_no_reading(
      String from, String until, double level, String found) {
    assertEquals(found, found(CoreLog.everyMinute().hold(from, until, level).bench()));
  }

  /** A smoker's air may well be at 185 °F. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "08:00:00..11:00:00/60 185.0                                           | ''",
        "08:00:00..09:00:00/60 180; 09:01:00 185.0; 09:02:00..11:00:00/60 181 | ''",
        "08:00:00..09:00:00/60 150; 09:01:00 185.0; 09:02:00..11:00:00/60 152 | note error value",
      })
  void the_power_on_value_counts_only_where_it_stands_alone(String air, String found) {
    Bench bench =
        CoreLog.everyMinute()
            .bench()
            .log("Chamber", "chamber temperature", "°F", "LG-A", CHAMBER, air);
    assertEquals(found, found(bench));
  }

  @Test
  void words_for_want_of_a_reading_are_no_reading_either() {
    Bench bench =
        CoreLog.lot().core("P1", "LG-A", CoreLog.everyMinute().text().replace("60 45", "60 ERR"));
    assertEquals("", found(bench));
  }

  /** The smoker's log runs beside the core's; in the fridge 36 °F. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "11:30 | 18:01 | ask probe moved, ask core equals air",
        "12:00 | 18:01 | ask probe moved, ask core equals air",
        "17:00 | 18:01 | ''",
      })
  void a_core_that_is_as_its_air_is_out_of_the_meat(String from, String until, String found) {
    assertEquals(found, found(CoreLog.everyMinute().hold(from, until, 36.5).inAir()));
  }

  /** The door lets the air rise from 36 °F to where the core is, and falls shut again. */
  @ParameterizedTest
  @CsvSource({
    "18:00, ''",
    "16:12, 'ask probe moved, ask core equals air, ask core on the wrong side of its air'"
  })
  void a_door_that_was_opened_brings_the_air_to_the_core(String fallen, String found) {
    String air = "11:30:00..16:09:00/60 36; 16:10:00..16:22:00/60 43; 16:23:00..18:00:00/60 36";
    Bench bench =
        CoreLog.everyMinute()
            .hold(fallen, "18:01", 37)
            .bench()
            .log("Cooler", "cooler temperature", "°F", "LG-A", "\"place\": \"F2\"", air);
    assertEquals(found, found(bench));
  }

  /** Nobody saw it leave the meat. */
  @Test
  void a_core_that_is_as_its_air_behind_a_gap_is_out_of_the_meat() {
    CoreLog log = CoreLog.everyMinute().hold("12:30", "18:01", 36.5).silent("11:45", "12:31");
    assertEquals("ask core equals air", found(log.inAir()).split(", ", -1)[0]);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "08:00:00..11:00:00/60 39>150  | ask core on the wrong side of its air",
        "08:00:00..11:00:00/60 40>145  | ''",
        "08:00:00..10:20:00/60 199; 10:21:00..11:00:00/60 100 | ''",
      })
  void a_core_hotter_than_its_smoker_is_none(String air, String found) {
    Bench bench =
        CoreLog.everyMinute()
            .bench()
            .log("Chamber", "chamber temperature", "°F", "LG-A", CHAMBER, air);
    assertEquals(found, found(bench));
  }

  /** A fridge that is loaded again passes a cold core; air that was cold at once does not. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "11:30:00..18:00:00/60 145>39                         | ask core on the wrong side of its air",
        "11:30:00..17:00:00/60 36; 17:01:00..18:00:00/60 44   | ''",
        "11:30:00..17:00:00/60 36; 17:01:00..17:09:00/60 60; 17:10:00..18:00:00/60 36 | ''",
      })
  void a_core_colder_than_its_cooler_is_none(String air, String found) {
    Bench bench =
        CoreLog.everyMinute()
            .bench()
            .log("Cooler", "cooler temperature", "°F", "LG-A", COOLER, air);
    assertEquals(found, found(bench));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "09:00 | 09:20 | ask probe moved",
        "09:00 | 09:21 | ask probe moved, ask stuck",
        "12:00 | 12:21 | ask probe moved, ask stuck",
        "17:00 | 18:01 | ''",
      })
  void a_log_that_does_not_change_is_stuck(String from, String until, String found) {
    CoreLog log = CoreLog.everyMinute();
    assertEquals(found, found(log.hold(from, until, log.level(from)).inAir()));
  }

  /** Whole degrees stay the same for longer. */
  @ParameterizedTest
  @CsvSource({"09:30, ask probe moved", "09:31, 'ask probe moved, ask stuck'"})
  void a_coarse_log_is_stuck_later(String until, String found) {
    assertEquals(found, found(CoreLog.everyMinute().hold("09:00", until, 80).whole().inAir()));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "09:00:00..09:08:00/60 199>151; 09:09:00..09:20:00/60 155>195 | note lid open",
        "09:00:00..09:20:00/60 180                                     | ''",
        "09:00:00..09:50:00/60 150                                     | ask fire out",
        "09:00:00..09:29:00/60 150                                     | note lid open",
      })
  void the_smokers_air_tells_of_its_lid_and_its_fire(String fallen, String found) {
    String end = fallen.substring(fallen.lastIndexOf("..") + 2, fallen.lastIndexOf("..") + 7);
    String air = "08:00:00..08:59:00/60 199; " + fallen + "; " + next(end) + ":00..11:00:00/60 198";
    Bench bench =
        CoreLog.everyMinute()
            .bench()
            .own("finish", "smoke", FINISH)
            .log("Chamber", "chamber temperature", "°F", "LG-A", CHAMBER, air);
    assertEquals(found, found(bench).replace("note lid open, ask fire out", "ask fire out"));
  }

  private static final String FINISH =
      "\"kind\": \"floor\", \"quantity\": \"peak internal temperature\", \"atLeast\": \"145 °F\"";

  private static String next(String minute) {
    return LocalTime.parse(minute).plusMinutes(1).toString();
  }

  @ParameterizedTest
  @CsvSource({"135.5, ''", "134.5, ask probes disagree"})
  void two_probes_far_apart_at_the_finish_disagree(double finish, String found) {
    CoreLog other =
        CoreLog.everyMinute().change("08:00", "18:01", x -> 37 + (x - 37) * (finish - 37) / 113);
    assertEquals(found, found(CoreLog.everyMinute().bench().core("P2", "LG-A", other.text())));
  }

  /** The log is at 117.3 °F at 10:04 and at 120.25 at 10:09, which is near in time. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "124.2 | thickest | ''",
        "124.4 | thickest | ask hand and log disagree",
        "113.2 | P1       | ask hand and log disagree",
      })
  void a_reading_by_hand_far_from_the_log_disagrees(double level, String item, String found) {
    Bench bench =
        CoreLog.everyMinute()
            .bench()
            .write("smoke,10:06,internal temperature," + item + "," + level + ",°F,MA,HT-1");
    assertEquals(found, found(bench));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "°F | 4>65   | 65>3.5  | ask unit mistaken, ask impossible value",
        "°F | 39>150 | 150>38  | ''",
        "°C | 4>65   | 65>3.5  | ''",
        "°C | 39>100 | 100>3.5 | ask unit mistaken",
      })
  void a_log_that_begins_as_meat_does_in_the_other_unit_has_it_mistaken(
      String unit, String smoke, String chill, String found) {
    Bench bench =
        CoreLog.lot()
            .log(
                "P1",
                "internal temperature",
                unit,
                "LG-A",
                "\"lot\": \"A1\"",
                "08:00:00..10:59:00/60 " + smoke + "; 11:00:00..17:00:00/60 " + chill);
    assertEquals(found, found(bench));
  }

  /** In the first half hour of the chill a core may rise, as long as it stays on its side. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "11:40 | 11:48 | 3.5 | ''",
        "12:02 | 12:20 | 15  | ask re-warming",
        "12:42 | 12:50 | 1.4 | ask re-warming",
        "12:42 | 12:50 | 0.4 | ''",
      })
  void a_core_that_rises_in_the_chill_warmed_again(
      String from, String until, double by, String found) {
    CoreLog log = CoreLog.everyMinute();
    log.ramp(from, 6, log.level(from) + by, until);
    assertEquals(found, found(log.bench()).replaceAll("ask probe moved(, )?", ""));
  }
}

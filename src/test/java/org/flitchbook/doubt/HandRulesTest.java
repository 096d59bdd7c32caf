package org.flitchbook.doubt;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.stream.Collectors;
import org.flitchbook.check.Bench;
import org.flitchbook.check.CoreLog;
import org.flitchbook.input.Fault;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Readings by hand, held to the physics that logs are held to. */
final class HandRulesTest {

  private static final String IMPOSSIBLE = "impossible hand reading";
  private static final String UNIT = "hand reading in the other unit";
  private static final String LEAPS = "hand reading leaps";

  private static final List<String> RULES = List.of(IMPOSSIBLE, UNIT, LEAPS);

  /** What these rules find, with the line of the sheet. */
  private static String found(Bench bench) {
    return bench.doubts().stream()
        .filter(fault -> RULES.contains(fault.rule()))
        .map(HandRulesTest::told)
        .collect(Collectors.joining("; "));
  }

  private static String told(Fault fault) {
    return fault.severity().word() + " " + fault.rule() + " " + fault.place().line();
  }

  /** Cores by hand, each {@code time degrees}, or {@code time degrees unit item piece}. */
  private static Bench byHand(Bench bench, String readings) {
    for (String reading : readings.split("; ", -1)) {
      String[] words = (reading + "    ").split(" ", -1);
      String sheet = words[0].compareTo("11:00") <= 0 ? "smoke" : "chill";
      String unit = words[2].isEmpty() ? "°F" : words[2];
      String item = words[3].isEmpty() ? "thickest" : words[3];
      bench.write(
          "%s,%s,internal temperature,%s,%s,%s,MA,HT-1,,,%s"
              .formatted(sheet, words[0], item, words[1], unit, words[4]));
    }
    return bench;
  }

  @ParameterizedTest(name = "{0}: {1}")
  @CsvSource(
      delimiter = '|',
      value = {
        "smoke,10:50,internal temperature,,220.0,°F | ''",
        "smoke,10:50,internal temperature,,220.1,°F | ask impossible hand reading 4",
        "chill,17:50,internal temperature,,25.0,°F | ''",
        "chill,17:50,internal temperature,,24.9,°F | ask impossible hand reading 4",
        "chill,17:50,internal temperature,,-3.8,°C | ''",
        "chill,17:50,internal temperature,,4.0,°F | ask impossible hand reading 4",
        "smoke,10:50,chamber temperature,SM,450.0,°F | ''",
        "smoke,10:50,chamber temperature,SM,450.1,°F | ask impossible hand reading 4",
        "smoke,10:50,wet-bulb temperature,SM,451,°F | ask impossible hand reading 4",
        "smoke,10:50,humidity,SM,100,%,MA,LG-H | ''",
        "smoke,10:50,humidity,SM,100.1,%,MA,LG-H | ask impossible hand reading 4",
        // frozen bacon leaves the house below 25 °F
        "dispatch,19:00,internal temperature,,0.0,°F | ''",
      })
  void what_nothing_in_the_house_can_have_is_asked_about(String row, String found) {
    assertEquals(found, found(CoreLog.lot().write(row)));
  }

  /** In the smoke from 08:00 to 11:00, in the chill from 11:30 on. */
  @ParameterizedTest(name = "{0}: {1}")
  @CsvSource(
      delimiter = '|',
      value = {
        // an honest day, by hand alone
        "08:05 41.2; 09:30 110.4; 10:55 150.2; 11:40 131.0; 12:40 79.2; 16:00 40.1 | ''",
        // at the load, in °C
        "08:15 30.0 °C; 10:55 65.0 °C | ''",
        "08:15 30.1 °C; 10:55 65.0 °C | ask hand reading in the other unit 4",
        "08:16 40.0 °C; 10:55 65.0 °C | ''",
        // 113 °F, and 35 °C written as °F
        "11:40 131.0; 12:10 45.0; 12:40 79.2 | ask hand reading in the other unit 5; ask hand"
            + " reading leaps 6",
        "11:40 131.0; 12:10 105.0; 12:40 79.2 | ''",
        // 40 °F written as °C
        "15:00 8.0 °C; 16:00 40.0 °C; 17:00 3.0 °C | ask hand reading in the other unit 5; ask"
            + " hand reading leaps 5",
        "15:00 8.0 °C; 16:00 5.0 °C; 17:00 3.0 °C | ''",
        // at the edge of 15 °F outside of what lies around it: 60 °F, read as °C 140
        "10:00 75.0; 10:20 60.0; 10:55 150.0 | ''",
        "10:00 75.1; 10:20 60.0; 10:55 150.0 | ask hand reading in the other unit 5",
        // the last one: 2 °F a minute is the edge
        "11:40 131.0; 12:10 71.0 | ''",
        "11:40 131.0; 12:10 48.9 | ask hand reading in the other unit 5",
        "11:40 131.0; 12:40 48.9 | ''",
      })
  void a_core_in_the_other_unit_is_asked_about(String readings, String found) {
    assertEquals(found, found(byHand(CoreLog.lot(), readings)));
  }

  @ParameterizedTest(name = "{0}: {1}")
  @CsvSource(
      delimiter = '|',
      value = {
        "10:00:00 100.0; 10:10:00 130.0 | ''",
        "10:00:00 100.0; 10:10:00 130.1 | ask hand reading leaps 5",
        "10:00:00 100.0; 10:02:00 115.0 | ''",
        "10:00:00 100.0; 10:02:00 115.1 | ask hand reading leaps 5",
        // to the minute it may have been 59 s later
        "10:00 100.0; 10:10 132.9 | ''",
        "10:00 100.0; 10:10 133.1 | ask hand reading leaps 5",
        // two digits changed places
        "10:40 142.0; 10:48 174.0; 10:56 149.0 | ask hand reading leaps 5",
        // once it chilled for half an hour it rises no more
        "12:00:00 60.0; 13:00:00 75.0 | ''",
        "12:00:00 60.0; 13:00:00 75.1 | ask hand reading leaps 5",
        "11:59:00 60.0; 13:00:00 90.0 | ''",
        // other pieces, and other places of one, are other cores
        "10:50 128.0 °F thickest a; 10:50 150.0 °F thickest b | ''",
        "10:50 128.0 °F thickest; 10:50 150.0 °F thin | ''",
        "10:50 128.0 °F thickest a; 10:50 150.0 °F thickest a | ask hand reading leaps 5",
        "10:50 128.0; 10:50 150.0 °F thickest b | ask hand reading leaps 5",
      })
  void a_core_by_hand_that_leaps_is_asked_about(String readings, String found) {
    assertEquals(found, found(byHand(CoreLog.lot(), readings)));
  }

  /** The log is silent from 11:45 (127.9 °F) to 12:40 (80.0). */
  @ParameterizedTest(name = "{0}: {1}")
  @CsvSource(
      delimiter = '|',
      value = {
        "12:10:00 106.0 | ''",
        "12:10:00 79.0 | ''",
        "11:50:00 79.0 | ask hand reading leaps 4",
        "12:38:00 110.0 | ask hand reading leaps 4",
        // beside the log the two are compared with each other
        "11:30:00 90.0 | ''",
      })
  void in_a_gap_a_core_by_hand_follows_from_the_log_around_it(String readings, String found) {
    Bench bench = CoreLog.everyMinute().silent("11:45", "12:40").bench();
    assertEquals(found, found(byHand(bench, readings)));
  }

  /** P2 sits in a thinner piece and is 25 °F colder by 12:10; the reading is of P1's. */
  @ParameterizedTest(name = "{0}: {1}")
  @CsvSource(
      delimiter = '|',
      value = {
        "11:47:00 126.0 °F thickest | ''",
        "11:47:00 126.0 °F P1 | ''",
        "11:47:00 126.0 °F P2 | ask hand reading leaps 4",
      })
  void beside_two_probes_it_follows_from_one_of_them(String readings, String found) {
    CoreLog thin =
        CoreLog.everyMinute().change("11:00", "18:01", x -> x - 25).silent("11:45", "12:40");
    Bench bench =
        CoreLog.everyMinute().silent("11:45", "12:40").bench().core("P2", "LG-A", thin.text());
    assertEquals(found, found(byHand(bench, readings)));
  }
}

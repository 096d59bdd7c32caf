package org.flitchbook.doubt;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.stream.Collectors;
import org.flitchbook.check.Bench;
import org.flitchbook.check.CoreLog;
import org.flitchbook.input.Severity;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Honest days that look odd, each beside a bad one that looks like it. */
final class HonestDaysTest {

  private static String asked(Bench bench) {
    return bench.doubts().stream()
        .filter(fault -> fault.severity() != Severity.NOTE)
        .map(fault -> fault.severity().word() + " " + fault.rule())
        .collect(Collectors.joining(", "));
  }

  private static final String COME_UP =
      "\"kind\": \"span\", \"what\": \"internal temperature\", \"from\": \"50 °F\", \"to\": \"130"
          + " °F\", \"atMost\": \"6 h\"";

  /** The logger was switched on late; the core rises from 50 °F on, and may not fall from 130. */
  @ParameterizedTest(name = "from {0} with {1} °F: {2}")
  @CsvSource({
    "08:25, 46, ''",
    "08:25, 50, ''",
    "08:16, 50.1, stop log begins late",
    "08:25, 56, stop log begins late",
    "08:15, 56, ''"
  })
  void a_log_that_begins_below_the_band_of_the_rise_is_none_of_late(
      String from, double level, String found) {
    CoreLog log =
        CoreLog.everyMinute().ramp("08:00", 1, level, "08:28").ramp("08:27", 153, 150, "11:00");
    Bench bench = log.silent("08:00", from).bench().own("come-up", "smoke", COME_UP);
    assertEquals(found, asked(bench));
  }

  /** An hour at 146 °F in whole degrees, from 09:50 on; what counts is the air of each minute. */
  @ParameterizedTest(name = "{0}: {1}")
  @CsvSource(
      delimiter = '|',
      value = {
        "09:50:00..11:00:00/60 160                                | ''",
        "09:50:00..10:14:00/60 199; 10:15:00..11:00:00/60 150     | ''",
        "09:50:00..10:18:00/60 199; 10:19:00..11:00:00/60 150     | ''",
        "09:50:00..10:19:00/60 199; 10:20:00..11:00:00/60 150     | ask stuck",
        "09:50:00..10:14:00/60 150; 10:15:00..11:00:00/60 199     | ask stuck",
        "09:50:00..10:10:00/60 199; 10:11:00..10:30:00/60 150; 10:31:00..11:00:00/60 199 | ask"
            + " stuck",
        "09:50:00..11:00:00/60 199                                | ask stuck",
      })
  void whole_degrees_that_stay_are_stuck_only_far_from_their_air(String air, String found) {
    CoreLog log =
        CoreLog.everyMinute()
            .ramp("08:00", 110, 146, "11:00")
            .change("11:00", "18:01", level -> level - 4)
            .whole();
    Bench bench =
        log.bench()
            .log(
                "Chamber",
                "chamber temperature",
                "°F",
                "LG-A",
                "\"place\": \"SM\"",
                "08:00:00..09:49:00/60 199; " + air);
    assertEquals(found, asked(bench).replace("ask probe moved, ", ""));
  }

  /**
   * Into a cold smoker at 08:00; the fire burns from 10:40 on, and the core has 150 °F at 14:00.
   */
  private static Bench coldSmoked(String core, String chamber) {
    return Bench.book()
        .doubting()
        .write(
            "smoke,08:00:00,into smoke,SM",
            "smoke,14:00:00,out of smoke",
            "chill,14:10:00,into chill,F2",
            "chill,19:00:00,out of chill")
        .core("P1", "LG-A", core + "; 14:01:00..15:30:00/60 149>80; 15:31:00..19:00:00/60 80>38")
        .log("Chamber", "chamber temperature", "°F", "LG-0", "\"place\": \"SM\"", chamber);
  }

  @ParameterizedTest(name = "{0}; {1}: {2}")
  @CsvSource(
      delimiter = '|',
      value = {
        "08:00:00..10:40:00/60 45 | 08:00:00..10:39:00/60 62; 10:40:00..14:00:00/60 199 | ''",
        "08:00:00..09:25:00/60 45 | 08:00:00..14:00:00/60 199                          | ''",
        // a fire from the beginning, a log that says nothing of the first hours, and a hole in it
        "08:00:00..10:40:00/60 45 | 08:00:00..14:00:00/60 199                          | ask clock"
            + " drift",
        "08:00:00..10:40:00/60 45 | 10:00:00..10:39:00/60 62; 10:40:00..14:00:00/60 199 | ask clock"
            + " drift",
        "08:00:00..10:40:00/60 45 | 08:00:00..08:30:00/60 62; 10:00:00..10:39:00/60 62;"
            + " 10:40:00..14:00:00/60 199 | ask clock drift",
        // cold for half an hour, and no longer
        "08:00:00..10:40:00/60 45 | 08:00:00..08:29:00/60 62; 08:30:00..14:00:00/60 199 | ask clock"
            + " drift",
        "08:00:00..10:40:00/60 45 | 08:00:00..10:39:00/60 66; 10:40:00..14:00:00/60 199 | ask clock"
            + " drift",
      })
  void cold_smoke_is_no_clock_that_drifts(String cold, String chamber, String found) {
    String from = cold.substring(10, 15);
    String core = cold + "; " + from.substring(0, 4) + "6:00..14:00:00/60 46>150";
    assertEquals(found, asked(coldSmoked(core, chamber)));
  }
}

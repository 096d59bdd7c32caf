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
}

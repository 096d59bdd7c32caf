package org.flitchbook.doubt;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.flitchbook.check.Bench;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Steam and a sealed oven are believed only as far as the humidity beside them. */
final class DryThoughMoistTest {

  private static final String MOIST =
      "\"kind\": \"share\", \"options\": [{\"name\": \"1\", \"while\": {\"what\": \"WHAT\", \"is\":"
          + " \"on\"}, \"share\": \"50 %\"}]";

  private static Bench lot(String what, String... rows) {
    return Bench.book()
        .own("moist", "smoke", MOIST.replace("WHAT", what))
        .write("smoke,08:00:00,into smoke,SM", "smoke,08:10:00," + what + ",,on")
        .write(rows)
        .write("smoke,11:00:00,out of smoke");
  }

  private static Bench logged(Bench bench, String readings) {
    return bench.log("Sensor", "humidity", "%", "LG-H", "\"place\": \"SM\"", readings);
  }

  private static boolean asked(Bench bench) {
    return bench.doubts().stream()
        .anyMatch(fault -> fault.rule().equals("dry though steamed or sealed"));
  }

  /** On from 8:10, written to the second; LG-H may be 2 % off. */
  @ParameterizedTest(name = "{0}: {1}")
  @CsvSource(
      delimiter = '|',
      value = {
        "08:00:00..11:00:00/60 92                                                     | false",
        "08:00:00..11:00:00/60 48                                                     | false",
        "08:00:00..11:00:00/60 47.9                                                   | true",
        "08:00:00..08:44:00/60 30; 08:45:00..11:00:00/60 92                           | false",
        "08:00:00..08:45:00/60 30; 08:46:00..11:00:00/60 92                           | true",
        "08:00:00..08:59:00/60 92; 09:00:00..09:14:00/60 30; 09:15:00..11:00:00/60 92 | false",
        "08:00:00..08:59:00/60 92; 09:00:00..09:15:00/60 30; 09:16:00..11:00:00/60 92 | true",
      })
  void a_log_of_dry_air_contradicts_it(String readings, boolean asked) {
    for (String what : new String[] {"steam", "oven sealed"}) {
      Bench bench = logged(lot(what), readings);
      assertEquals(asked, asked(bench), what);
      assertEquals(asked ? "not shown" : "met", bench.finding("moist").verdict().words(), what);
    }
  }

  @ParameterizedTest
  @CsvSource({"08:29:59, false", "08:30:00, true", "10:09:59, true", "10:10:00, false"})
  void a_reading_by_hand_is_enough_while_it_was_on(String at, boolean asked) {
    Bench bench =
        lot("steam", "smoke," + at + ",humidity,SM,31,%,MA,LG-H", "smoke,10:10:00,steam,,off");
    assertEquals(asked, asked(bench));
  }

  @Test
  void without_humidity_on_record_it_is_believed() {
    assertEquals(false, asked(lot("steam")));
    assertEquals("met", lot("steam").finding("moist").verdict().words());
  }
}

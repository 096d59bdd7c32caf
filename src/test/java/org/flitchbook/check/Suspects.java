package org.flitchbook.check;

import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/** Lots about which something is wrong, or could be. */
final class Suspects {

  static final String COOLING = "us.b99.cooling-1";
  static final String NITRITE = "us.424.22-b-3.nitrite";
  static final String FINISH =
      "\"kind\": \"floor\", \"quantity\": \"peak internal temperature\", \"atLeast\": \"145 °F\"";
  static final String HELD =
      "\"kind\": \"time-at-temperature\", \"what\": \"internal temperature\", \"rows\":"
          + " [{\"atLeast\": \"145 °F\", \"for\": \"15 min\"}]";
  static final String MOIST =
      "\"kind\": \"share\", \"options\": [{\"name\": \"1\", \"while\": {\"what\": \"steam\","
          + " \"is\": \"on\"}, \"share\": \"50 %\"}]";
  static final String TURN = "\"kind\": \"cadence\", \"what\": \"turned\", \"every\": \"28 h\"";
  static final String COLD =
      "\"kind\": \"holding\", \"what\": \"cooler temperature\", \"atMost\": \"41 °F\", \"every\":"
          + " \"16 h\"";

  static Bench finished() {
    return CoreLog.everyMinute().bench().own("finish", "smoke", FINISH);
  }

  static CoreLog cooledBy(double degrees, String from) {
    return CoreLog.slow().change(from, "18:01", x -> x - degrees);
  }

  /** A good log that begins with a row of another time. */
  static Bench after(String first) {
    String rows =
        CoreLog.everyMinute().levels().entrySet().stream()
            .map(
                each ->
                    String.format(
                        Locale.ROOT, "2026-02-24 %s:00,%.1f\n", each.getKey(), each.getValue()))
            .collect(Collectors.joining());
    return CoreLog.lot()
        .file(
            "core.csv",
            "Time,P1\n" + first + ",45.0\n" + rows,
            """
            {"files": "core.csv", "instrument": "LG-A",
             "time": {"column": "Time", "pattern": "yyyy-MM-dd HH:mm:ss", "zone": "America/New_York"},
             "columns": [{"column": "P1", "what": "internal temperature", "unit": "°F", "lot": "A1"}]}\
            """);
  }

  static Bench cured(String salt) {
    return Bench.book()
        .rule(NITRITE)
        .write(
            "cure,2026-02-10 07:50,rind,,off",
            "cure,2026-02-10 08:00,green weight,,4812,g,MA,S-10",
            "cure,2026-02-10 08:10," + salt,
            "cure,2026-02-10 08:30,into cure,F1");
  }

  static Bench turned(int lastDay, String entered) {
    Bench bench =
        Bench.book()
            .own("turn", "cure", TURN)
            .write(
                "cure,2026-02-10 09:00,into cure,F1",
                "cure,2026-02-" + (lastDay + 1) + " 08:30,out of cure");
    IntStream.rangeClosed(11, lastDay)
        .forEach(day -> bench.write("cure,2026-02-" + day + " 08:00,turned,,,,MA,,,,,," + entered));
    return bench;
  }

  /** Finished by a thermometer's word: 146 °F. */
  static Bench read(String check, String later) {
    return Bench.unchecked()
        .own("finish", "smoke", FINISH)
        .write(
            "cure,2026-02-01 05:00,product,P",
            "instruments," + check + ",ice point,,32.0,°F,MA,HT-1",
            "smoke,08:00:00,into smoke,SM",
            "smoke,10:50:00,internal temperature,thickest,146.4,°F,MA,HT-1",
            "smoke,10:58:00,internal temperature,thickest,147.4,°F,MA,HT-1",
            "smoke,11:00:00,out of smoke",
            "instruments,2026-02-25 09:00,ice point,," + later + ",°F,MA,HT-1");
  }

  /** The core by hand alone, each {@code time degrees}, with its unit where that is not °F. */
  static Bench byHand(String readings) {
    Bench bench =
        Bench.book()
            .own("finish", "smoke", FINISH)
            .write("smoke,08:00:00,into smoke,SM", "smoke,11:00:00,out of smoke");
    for (String reading : readings.split("; ", -1)) {
      String[] words = (reading + " °F").split(" ", -1);
      bench.write(
          "smoke,%s,internal temperature,thickest,%s,%s".formatted(words[0], words[1], words[2]));
    }
    return bench;
  }

  static Bench cold(String one, String other) {
    Bench bench =
        Bench.book()
            .own("cold", "cure", COLD)
            .write("cure,2026-02-10 09:00:00,into cure,F1", "cure,2026-02-10 20:00:00,out of cure");
    IntStream.range(9, 20)
        .forEach(
            hour ->
                bench.write(
                    "cure,2026-02-10 %02d:30:00,cooler temperature,F1,%s,°F"
                        .formatted(hour, hour % 2 == 0 ? one : other)));
    return bench;
  }

  private Suspects() {}
}

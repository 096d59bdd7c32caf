package org.flitchbook.check;

import java.time.ZoneOffset;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.SplittableRandom;

/** The log of the air in the curing fridge, over the days before the smoke, pulled on its day. */
final class FridgeLog {

  private static final int DAYS = 12;
  private static final int MINUTES = 10;
  private static final String PATTERN = "yyyy-MM-dd HH:mm:ss";

  private static final String LAYOUT =
      """
      {"files": "fridge.csv", "instrument": "LG-F",
       "time": {"column": "Time", "pattern": "yyyy-MM-dd HH:mm:ss", "zone": "-05:00"},
       "columns": [{"column": "Air", "what": "cooler temperature", "unit": "°F", "place": "F1"}]}\
      """;

  private FridgeLog() {}

  /** On a clock that is never changed; the door is opened now and then. */
  static void write(
      ZonedDateTime load, HonestSheets sheets, HonestTools tools, SplittableRandom random) {
    DateTimeFormatter form = DateTimeFormatter.ofPattern(PATTERN, Locale.ROOT);
    StringBuilder csv = new StringBuilder("Time,Air\n");
    double door = 0;
    for (int minute = -DAYS * 24 * 60; minute < -60; minute += MINUTES) {
      door = random.nextInt(50) == 0 ? 1.5 : door * 0.5;
      double air = 37 + 0.8 * TrueLot.sawtooth(minute, 45) + door;
      ZonedDateTime at = load.plusMinutes(minute).withZoneSameInstant(ZoneOffset.ofHours(-5));
      csv.append(form.format(at))
          .append(',')
          .append(String.format(Locale.ROOT, "%.1f", tools.read("LG-F", air)))
          .append('\n');
    }
    sheets.log(load.toLocalDate(), "fridge.csv", csv.toString(), LAYOUT);
  }
}

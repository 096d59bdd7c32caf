package org.flitchbook.check;

import java.time.ZonedDateTime;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.TreeMap;

/** The instruments of an honest book, each a little off, but less than its accuracy. */
final class HonestTools {

  private static final double POUND = 453.59237;
  private static final List<String> THERMOMETERS =
      List.of("HT-3", "LG-A", "LG-B", "LG-C", "LG-F", "LG-W");

  private final SplittableRandom random;
  private final boolean pounds;
  private final Map<String, Double> biases = new TreeMap<>();

  HonestTools(SplittableRandom random, boolean pounds) {
    this.random = random;
    this.pounds = pounds;
    THERMOMETERS.forEach(each -> biases.put(each, random.nextDouble(-0.2, 0.2)));
    biases.put("HT-3", random.nextDouble(-0.5, 0.5));
  }

  /** What a thermometer or logger reads, in °F, before it is rounded. */
  double read(String tool, double level) {
    return level + biases.get(tool) + random.nextDouble(-0.15, 0.15);
  }

  /** Value, unit, initials and instrument of a reading by hand. */
  String byHand(double level, String by) {
    return String.format(Locale.ROOT, "%.1f,°F,%s,HT-3", read("HT-3", level), by);
  }

  /** Value, unit, initials and scale of a piece. */
  String piece(double grams) {
    return pounds
        ? String.format(Locale.ROOT, "%.2f,lb,MA,S-LB", grams / POUND)
        : String.format(Locale.ROOT, "%.0f,g,MA,S-10", grams);
  }

  /** Value, unit, initials and scale of an ingredient. */
  String ingredient(double grams) {
    return pounds
        ? String.format(Locale.ROOT, "%.3f,oz,MA,S-OZ", 0.005 * Math.round(3200 * grams / POUND))
        : String.format(Locale.ROOT, "%.1f,g,MA,S-01", grams);
  }

  /** Value and unit of a thickness. */
  String thickness(double millimetres) {
    return pounds
        ? String.format(Locale.ROOT, "%.1f,in", millimetres / 25.4)
        : String.format(Locale.ROOT, "%.0f,mm", millimetres);
  }

  /** Every one checked, and found right. */
  void check(HonestSheets sheets, ZonedDateTime at) {
    int minute = 0;
    for (String each : THERMOMETERS) {
      String form = each.equals("LG-W") ? "%.0f" : "%.1f";
      String value = String.format(Locale.ROOT, form, read(each, 32));
      String cells = "ice point,," + value + ",°F,MA," + each;
      sheets.write(at.plusMinutes(minute), "instruments", "", "", cells);
      minute += 4;
    }
    List<String> weights =
        List.of(
            "check weight,1000 g,1000,g,MA,S-10",
            "check weight,100 g,100.0,g,MA,S-01",
            "check weight,2 lb,2.00,lb,MA,S-LB",
            "check weight,4 oz,4.000,oz,MA,S-OZ");
    for (String cells : weights) {
      sheets.write(at.plusMinutes(minute), "instruments", "", "", cells);
      minute += 2;
    }
  }
}

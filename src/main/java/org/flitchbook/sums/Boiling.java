package org.flitchbook.sums;

import java.util.Map;
import java.util.NavigableMap;
import java.util.Optional;
import java.util.TreeMap;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Ratio;
import org.flitchbook.measure.Unit;

/**
 * Where water boils, by straight lines between the rows of an altitude table (second-hand). The
 * table stays within 0.2 °F of the standard atmosphere with the IAPWS saturation line, which the
 * rule of 0.0018 °F to the foot does not (0.4 °F at 10,000 ft).
 */
final class Boiling {

  /** Feet and °F. */
  private static final NavigableMap<Ratio, Ratio> TABLE = table();

  private Boiling() {}

  private static NavigableMap<Ratio, Ratio> table() {
    String[] degrees = {
      "0 212.0",
      "500 211.1",
      "1000 210.2",
      "2000 208.4",
      "2500 207.5",
      "3000 206.6",
      "3500 205.7",
      "4000 204.8",
      "4500 203.9",
      "5000 203.0",
      "5500 202.0",
      "6000 201.1",
      "6500 200.2",
      "7000 199.3",
      "7500 198.3",
      "8000 197.4",
      "8500 196.4",
      "9000 195.5",
      "9500 194.6",
      "10000 193.6"
    };
    NavigableMap<Ratio, Ratio> table = new TreeMap<>();
    for (String row : degrees) {
      int space = row.indexOf(' ');
      table.put(Ratio.of(row.substring(0, space)), Ratio.of(row.substring(space + 1)));
    }
    return table;
  }

  /** In °F; beyond the table's ends its first and last lines are drawn on. */
  static Quantity at(Quantity altitude) {
    Ratio feet = altitude.in(Unit.FOOT).value();
    NavigableMap<Ratio, Ratio> ends = TABLE.subMap(Ratio.ZERO, false, TABLE.lastKey(), false);
    Map.Entry<Ratio, Ratio> upper =
        Optional.ofNullable(ends.higherEntry(feet)).orElse(TABLE.lastEntry());
    Map.Entry<Ratio, Ratio> lower = TABLE.lowerEntry(upper.getKey());
    Ratio slope =
        upper.getValue().minus(lower.getValue()).over(upper.getKey().minus(lower.getKey()));
    Ratio above = feet.minus(lower.getKey()).times(slope);
    return new Quantity(lower.getValue().plus(above), Unit.FAHRENHEIT);
  }
}

package org.flitchbook.measure;

import static org.flitchbook.measure.Dimension.LENGTH;
import static org.flitchbook.measure.Dimension.MASS;
import static org.flitchbook.measure.Dimension.NUMBER;
import static org.flitchbook.measure.Dimension.SHARE;
import static org.flitchbook.measure.Dimension.TEMPERATURE;
import static org.flitchbook.measure.Dimension.TIME;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.flitchbook.message.Argument;
import org.flitchbook.message.Language;

/**
 * The units that sheets, logs and plans may use, each with its exact factor to the first unit of
 * its dimension (g, °C, 1, s, mm). The pound of 453.59237 g and the foot of 304.8 mm are those of
 * the international yard and pound agreement of 1959.
 */
public enum Unit implements Argument {
  GRAM("g", MASS, "1"),
  KILOGRAM("kg", MASS, "1000"),
  OUNCE("oz", MASS, "28.349523125"),
  POUND("lb", MASS, "453.59237"),
  CELSIUS("°C", TEMPERATURE, "1"),
  FAHRENHEIT("°F", TEMPERATURE, Ratio.of(5, 9)),
  PPM("ppm", SHARE, "0.000001"),
  PERCENT("%", SHARE, "0.01"),
  SECOND("s", TIME, "1"),
  MINUTE("min", TIME, "60"),
  HOUR("h", TIME, "3600"),
  DAY("d", TIME, "86400"),
  MILLIMETRE("mm", LENGTH, "1"),
  CENTIMETRE("cm", LENGTH, "10"),
  INCH("in", LENGTH, "25.4"),
  METRE("m", LENGTH, "1000"),
  FOOT("ft", LENGTH, "304.8"),
  /** For pH and water activity. */
  BARE("", NUMBER, "1");

  private final String symbol;
  private final Dimension dimension;
  private final Ratio factor;

  Unit(String symbol, Dimension dimension, String factor) {
    this(symbol, dimension, Ratio.of(factor));
  }

  Unit(String symbol, Dimension dimension, Ratio factor) {
    this.symbol = symbol;
    this.dimension = dimension;
    this.factor = factor;
  }

  /**
   * Reads a unit.
   *
   * @param text the symbol; letters count, so that {@code M} is no unit; {@code F} and {@code C}
   *     stand for the degrees, {@code mg/kg} for ppm
   */
  public static Optional<Unit> parse(String text) {
    return switch (text.strip()) {
      case "F", "°F", "℉", "º F", "° F", "ºF" -> Optional.of(FAHRENHEIT);
      case "C", "°C", "℃", "º C", "° C", "ºC" -> Optional.of(CELSIUS);
      case "mg/kg" -> Optional.of(PPM);
      case "lbs" -> Optional.of(POUND);
      case "hours" -> Optional.of(HOUR);
      case "days" -> Optional.of(DAY);
      default ->
          Arrays.stream(values()).filter(unit -> unit.symbol.equals(text.strip())).findFirst();
    };
  }

  @Override
  public String in(Language language) {
    return symbol;
  }

  @Override
  public Object json() {
    return symbol;
  }

  public static List<Unit> of(Dimension dimension) {
    return Arrays.stream(values()).filter(unit -> unit.dimension == dimension).toList();
  }

  public String symbol() {
    return symbol;
  }

  public Dimension dimension() {
    return dimension;
  }

  /** How many of the dimension's first unit one of these is. */
  Ratio factor() {
    return factor;
  }

  /** The value of this unit that stands at the first unit's 0: 32 for °F, else 0. */
  Ratio zero() {
    return this == FAHRENHEIT ? Ratio.of(32) : Ratio.ZERO;
  }

  /** Whether one display shows both: grams and kilograms, or ounces and pounds. */
  public boolean isBeside(Unit other) {
    return dimension == other.dimension && isOfPounds() == other.isOfPounds();
  }

  private boolean isOfPounds() {
    return this == OUNCE || this == POUND;
  }

  @Override
  public String toString() {
    return symbol;
  }
}

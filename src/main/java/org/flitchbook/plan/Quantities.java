package org.flitchbook.plan;

import java.math.BigDecimal;
import java.util.Optional;
import org.flitchbook.json.Fields;
import org.flitchbook.measure.Dimension;
import org.flitchbook.measure.Level;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Ratio;
import org.flitchbook.measure.Unit;

/**
 * Takes quantities out of JSON; one of the wrong dimension is a fault that names the units. So is
 * one that could not be compared exactly with a reading.
 */
final class Quantities {

  private static final Ratio MOST_DEGREES = Ratio.of(100_000_000);
  private static final Quantity LONGEST = Quantity.of(100_000, Unit.DAY);

  private Quantities() {}

  static Optional<Quantity> required(Fields fields, String key, Dimension dimension) {
    return fields.parsed(key, expected(dimension), text -> parse(text, dimension));
  }

  static Optional<Quantity> optional(Fields fields, String key, Dimension dimension) {
    return fields.optionalParsed(key, expected(dimension), text -> parse(text, dimension));
  }

  /** How far something may be off: a mass or a difference of temperatures, at least 0. */
  static Optional<Quantity> width(Fields fields, String key, Dimension dimension) {
    return fields.parsed(
        key,
        dimension == Dimension.TEMPERATURE
            ? "a difference of 0 or more in " + Unit.choices(dimension)
            : expected(dimension),
        text -> parse(text, dimension).filter(width -> width.value().signum() >= 0));
  }

  /** A height above the sea, or below it. */
  static Optional<Quantity> altitude(Fields fields, String key) {
    return fields.optionalParsed(
        key,
        expected(Dimension.LENGTH),
        text -> Quantity.parse(text).filter(height -> height.dimension() == Dimension.LENGTH));
  }

  /** A temperature or a humidity that readings are compared with. */
  static Optional<Quantity> level(Fields fields, String key, Dimension dimension) {
    String units = dimension == Dimension.SHARE ? "a share in %" : expected(dimension);
    return fields.parsed(key, units, text -> parse(text, dimension).filter(Quantities::isHeld));
  }

  private static Optional<Quantity> parse(String text, Dimension dimension) {
    return Quantity.parse(text)
        .filter(quantity -> quantity.dimension() == dimension)
        .filter(quantity -> dimension == Dimension.TEMPERATURE || quantity.value().signum() >= 0)
        .filter(quantity -> dimension != Dimension.TEMPERATURE || isHeld(quantity))
        .filter(quantity -> dimension != Dimension.TIME || !quantity.isAbove(LONGEST));
  }

  /** Whether a {@link Level} holds it: nine decimals, eight digits before them. */
  private static boolean isHeld(Quantity quantity) {
    BigDecimal nine = quantity.value().rounded(Level.DECIMALS);
    return Level.holds(quantity.unit())
        && Ratio.of(nine).equals(quantity.value())
        && quantity.value().abs().isBelow(MOST_DEGREES);
  }

  private static String expected(Dimension dimension) {
    return dimension == Dimension.NUMBER
        ? "a number in quotes"
        : dimension.words() + " in " + Unit.choices(dimension);
  }
}

package org.flitchbook.plan;

import java.util.Optional;
import org.flitchbook.json.Fields;
import org.flitchbook.measure.Dimension;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Unit;

/** Takes quantities out of JSON; one of the wrong dimension is a fault that names the units. */
final class Quantities {

  private Quantities() {}

  static Optional<Quantity> required(Fields fields, String key, Dimension dimension) {
    return fields.parsed(key, expected(dimension), text -> parse(text, dimension));
  }

  static Optional<Quantity> optional(Fields fields, String key, Dimension dimension) {
    return fields.optionalParsed(key, expected(dimension), text -> parse(text, dimension));
  }

  private static Optional<Quantity> parse(String text, Dimension dimension) {
    return Quantity.parse(text)
        .filter(quantity -> quantity.dimension() == dimension)
        .filter(quantity -> dimension == Dimension.TEMPERATURE || quantity.value().signum() >= 0);
  }

  private static String expected(Dimension dimension) {
    return dimension == Dimension.NUMBER
        ? "a number in quotes"
        : dimension.words() + " in " + Unit.choices(dimension);
  }
}

package org.flitchbook.reading;

import java.math.BigDecimal;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import org.flitchbook.measure.Dimension;
import org.flitchbook.measure.Level;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Unit;
import org.flitchbook.sheet.Shape;
import org.flitchbook.sheet.What;
import org.flitchbook.sums.Teaspoon;

/** Reads the value and the unit of one row, and refuses what no sum could use. */
final class AmountReader {

  static final String LEVEL = "at most eight digits before and nine behind the decimal mark";

  private static final Set<String> SPOONS =
      Set.of(
          "tsp",
          "teaspoon",
          "teaspoons",
          "tbsp",
          "tablespoon",
          "tablespoons",
          "spoon",
          "spoons",
          "cup",
          "cups",
          "pinch",
          "pinches");

  private final char decimalMark;
  private final What what;
  private final String value;
  private final String unit;
  private final Complaints complaints;

  /** Where to say what is wrong with the row. */
  interface Complaints {
    void stop(String rule, String column, String found, String expected);
  }

  AmountReader(char decimalMark, What what, String value, String unit, Complaints complaints) {
    this.decimalMark = decimalMark;
    this.what = what;
    this.value = value;
    this.unit = unit;
    this.complaints = complaints;
  }

  /** The quantity; empty where the row has none, or where a complaint says what is wrong. */
  Optional<Quantity> read() {
    Shape shape = what.shape();
    if (shape != Shape.MAYBE_MASS) {
      return shape.dimension().flatMap(this::quantity);
    }
    boolean bareWords = unit.isEmpty() && Numbers.read(value, decimalMark).isEmpty();
    return bareWords ? Optional.empty() : quantity(Dimension.MASS);
  }

  private Optional<Quantity> quantity(Dimension dimension) {
    Optional<BigDecimal> number = number(dimension);
    Optional<Unit> known = unit(dimension);
    return number
        .flatMap(digits -> known.map(symbol -> Quantity.of(digits, symbol)))
        .filter(quantity -> isLevel(number.orElseThrow(), quantity.unit()));
  }

  private Optional<BigDecimal> number(Dimension dimension) {
    Optional<BigDecimal> number = Numbers.read(value, decimalMark);
    if (number.isEmpty()) {
      String comma = value.indexOf(',') >= 0 ? "; a decimal comma is stated in the plan" : "";
      String mark = decimalMark == '.' ? "point" : "comma";
      complaints.stop(
          "value",
          "value",
          value.isEmpty() ? "nothing" : value,
          dimension.words() + ", digits with a decimal " + mark + comma);
    }
    return number.filter(digits -> isAllowed(digits, dimension));
  }

  /** Only temperatures go below zero, and what was weighed weighs something. */
  private boolean isAllowed(BigDecimal digits, Dimension dimension) {
    boolean weighed = what == What.GREEN_WEIGHT || what == What.WEIGHT;
    boolean allowed = dimension == Dimension.TEMPERATURE || digits.signum() >= (weighed ? 1 : 0);
    if (!allowed) {
      complaints.stop("value", "value", value, weighed ? "more than 0" : "0 or more");
    }
    return allowed;
  }

  /** What is compared along a curve must be held exactly. */
  private boolean isLevel(BigDecimal digits, Unit known) {
    boolean onCurve = known.dimension() == Dimension.TEMPERATURE || what == What.HUMIDITY;
    boolean held = !onCurve || Level.of(digits, known).isPresent();
    if (!held) {
      complaints.stop("value", "value", value, LEVEL);
    }
    return held;
  }

  private Optional<Unit> unit(Dimension dimension) {
    if (SPOONS.contains(unit.toLowerCase(Locale.ROOT))) {
      spoons();
      return Optional.empty();
    }
    Optional<Unit> known =
        Unit.parse(unit)
            .filter(symbol -> symbol.dimension() == dimension)
            .filter(symbol -> what != What.HUMIDITY || symbol == Unit.PERCENT);
    if (known.isEmpty()) {
      complaints.stop("unit", "unit", unit.isEmpty() ? "nothing" : unit, units(dimension));
    }
    return known;
  }

  private String units(Dimension dimension) {
    if (what == What.HUMIDITY) {
      return Unit.PERCENT.symbol();
    }
    return dimension == Dimension.NUMBER ? "no unit" : Unit.choices(dimension);
  }

  /** From the lightest to the heaviest teaspoon that was met. */
  private static String spread() {
    Quantity least = Teaspoon.MET.get(0).mass();
    Quantity most = Teaspoon.MET.get(Teaspoon.MET.size() - 1).mass();
    return least.shownNumber() + " to " + most.shown();
  }

  private void spoons() {
    String why =
        what == What.CURING_SALT
            ? ": one teaspoon of the same curing salt weighs anything from " + spread()
            : "";
    complaints.stop(
        "spoons",
        "unit",
        value + " " + unit + " of " + what.word(),
        "a weight in " + Unit.choices(Dimension.MASS) + why);
  }
}

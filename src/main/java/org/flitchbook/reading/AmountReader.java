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

  static final String LEVEL = "reading.amount.digits";

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

  private final Hand hand;
  private final What what;
  private final String value;
  private final String unit;
  private final Complaints complaints;

  /** Where to say what is wrong with the row. */
  interface Complaints {
    void stop(String rule, String column, String found, String expected);
  }

  AmountReader(Hand hand, What what, String value, String unit, Complaints complaints) {
    this.hand = hand;
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
    boolean bareWords = unit.isEmpty() && Numbers.read(value, hand.decimalMark()).isEmpty();
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
    Optional<BigDecimal> number = Numbers.read(value, hand.decimalMark());
    if (number.isEmpty()) {
      String digits =
          hand.decimalMark() == '.'
              ? say("reading.amount.with-point", a(dimension))
              : say("reading.amount.with-comma", a(dimension));
      complaints.stop(
          "value",
          "value",
          orNothing(value),
          value.indexOf(',') >= 0 ? say("reading.amount.comma-stated", digits) : digits);
    }
    return number.filter(digits -> isAllowed(digits, dimension));
  }

  /** Only temperatures go below zero, and what was weighed weighs something. */
  private boolean isAllowed(BigDecimal digits, Dimension dimension) {
    boolean weighed = what == What.GREEN_WEIGHT || what == What.WEIGHT;
    boolean allowed = dimension == Dimension.TEMPERATURE || digits.signum() >= (weighed ? 1 : 0);
    if (!allowed) {
      complaints.stop("value", "value", value, limit(weighed));
    }
    return allowed;
  }

  /** What is compared along a curve must be held exactly. */
  private boolean isLevel(BigDecimal digits, Unit known) {
    boolean onCurve = known.dimension() == Dimension.TEMPERATURE || what == What.HUMIDITY;
    boolean held = !onCurve || Level.of(digits, known).isPresent();
    if (!held) {
      complaints.stop("value", "value", value, say(LEVEL));
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
      complaints.stop("unit", "unit", orNothing(unit), units(dimension));
    }
    return known;
  }

  private String units(Dimension dimension) {
    if (what == What.HUMIDITY) {
      return Unit.PERCENT.symbol();
    }
    return dimension == Dimension.NUMBER ? say("reading.amount.no-unit") : choices(dimension);
  }

  /** From the lightest to the heaviest teaspoon that was met. */
  private String spread() {
    Quantity least = Teaspoon.MET.get(0).mass();
    Quantity most = Teaspoon.MET.get(Teaspoon.MET.size() - 1).mass();
    return say("reading.amount.spread", least.shownNumber(), most.shown());
  }

  private void spoons() {
    String weight = say("reading.amount.weight", choices(Dimension.MASS));
    complaints.stop(
        "spoons",
        "unit",
        say("reading.amount.by-spoon", value, unit, hand.words().word("what", what.word())),
        what == What.CURING_SALT ? say("reading.amount.teaspoon", weight, spread()) : weight);
  }

  private String say(String key, Object... values) {
    return hand.words().say(key, values);
  }

  private String orNothing(String text) {
    return text.isEmpty() ? say("words.nothing") : text;
  }

  private String a(Dimension dimension) {
    return hand.words().word("dimension", dimension.name().toLowerCase(Locale.ROOT));
  }

  private String limit(boolean weighed) {
    return weighed ? say("reading.amount.more-than-none") : say("reading.amount.not-less");
  }

  private String choices(Dimension dimension) {
    return hand.words().either(Unit.of(dimension).stream().map(Unit::symbol).toList());
  }
}

package org.flitchbook.reading;

import static org.flitchbook.message.Message.say;

import java.math.BigDecimal;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import org.flitchbook.measure.Dimension;
import org.flitchbook.measure.Level;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Unit;
import org.flitchbook.message.Listing;
import org.flitchbook.message.Message;
import org.flitchbook.practice.Practice;
import org.flitchbook.sheet.Shape;
import org.flitchbook.sheet.What;

/** Reads the value and the unit of one row, and refuses what no sum could use. */
final class AmountReader {

  static final Message LEVEL =
      say("reading.amount.digits", "at most eight digits before and nine behind the decimal mark");

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
    void stop(String rule, String column, Message found, Message expected);
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
      Message digits =
          hand.decimalMark() == '.'
              ? say("reading.amount.with-point", "{0}, digits with a decimal point", dimension)
              : say("reading.amount.with-comma", "{0}, digits with a decimal comma", dimension);
      complaints.stop(
          "value",
          "value",
          orNothing(value),
          value.indexOf(',') >= 0
              ? say(
                  "reading.amount.comma-stated",
                  "{0}; a decimal comma is stated in the plan",
                  digits)
              : digits);
    }
    return number.filter(digits -> isAllowed(digits, dimension));
  }

  /** Only temperatures go below zero, and what was weighed weighs something. */
  private boolean isAllowed(BigDecimal digits, Dimension dimension) {
    boolean weighed = what == What.GREEN_WEIGHT || what == What.WEIGHT;
    boolean allowed = dimension == Dimension.TEMPERATURE || digits.signum() >= (weighed ? 1 : 0);
    if (!allowed) {
      complaints.stop("value", "value", Message.of(value), limit(weighed));
    }
    return allowed;
  }

  /** What is compared along a curve must be held exactly. */
  private boolean isLevel(BigDecimal digits, Unit known) {
    boolean onCurve = known.dimension() == Dimension.TEMPERATURE || what == What.HUMIDITY;
    boolean held = !onCurve || Level.of(digits, known).isPresent();
    if (!held) {
      complaints.stop("value", "value", Message.of(value), LEVEL);
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

  private Message units(Dimension dimension) {
    if (what == What.HUMIDITY) {
      return Message.of(Unit.PERCENT.symbol());
    }
    return dimension == Dimension.NUMBER
        ? say("reading.amount.no-unit", "no unit")
        : choices(dimension);
  }

  private Message spread() {
    Practice.Teaspoon spoon = hand.practice().teaspoon();
    return say("reading.amount.spread", "{0} to {1}", spoon.from().shownNumber(), spoon.to());
  }

  private void spoons() {
    Message weight = say("reading.amount.weight", "a weight in {0}", choices(Dimension.MASS));
    complaints.stop(
        "spoons",
        "unit",
        say("reading.amount.by-spoon", "{0} {1} of {2}", value, unit, what),
        what == What.CURING_SALT
            ? say(
                "reading.amount.teaspoon",
                "{0}: one teaspoon of the same curing salt weighs anything from {1}",
                weight,
                spread())
            : weight);
  }

  private static Message orNothing(String text) {
    return text.isEmpty() ? say("words.nothing", "nothing") : Message.of(text);
  }

  private static Message limit(boolean weighed) {
    return weighed
        ? say("reading.amount.more-than-none", "more than 0")
        : say("reading.amount.not-less", "0 or more");
  }

  private static Message choices(Dimension dimension) {
    return Message.of(Listing.or(Unit.of(dimension)));
  }
}

package org.flitchbook.reading;

import static org.flitchbook.message.Message.say;

import java.math.BigDecimal;
import java.util.Optional;
import java.util.regex.Pattern;
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
record AmountReader(EntryReader row, Hand hand, What what) {

  static final Message LEVEL =
      say("reading.amount.digits", "at most eight digits before and nine behind the decimal mark");

  private static final Pattern SPOONS =
      Pattern.compile("(?i)(tsp|teaspoons?|tbsp|tablespoons?|spoons?|cups?|pinch(es)?)");

  /** The quantity; empty where the row has none, or where a fault of it says what is wrong. */
  Optional<Quantity> read() {
    Shape shape = what.shape();
    if (shape != Shape.MAYBE_MASS) {
      return shape.dimension().flatMap(this::quantity);
    }
    boolean bareWords = row.cell("unit").isEmpty() && written().isEmpty();
    return bareWords ? Optional.empty() : quantity(Dimension.MASS);
  }

  private Optional<BigDecimal> written() {
    return Numbers.read(row.cell("value"), hand.decimalMark());
  }

  private Optional<Quantity> quantity(Dimension dimension) {
    Optional<BigDecimal> number = number(dimension);
    Optional<Unit> known = unit(dimension);
    return number
        .flatMap(digits -> known.map(symbol -> Quantity.of(digits, symbol)))
        .filter(quantity -> isLevel(number.orElseThrow(), quantity.unit()));
  }

  private Optional<BigDecimal> number(Dimension dimension) {
    Optional<BigDecimal> number = written();
    if (number.isEmpty()) {
      row.stop("value", "value", row.orNothing("value"), digits(dimension));
    }
    return number.filter(digits -> isAllowed(digits, dimension));
  }

  private Message digits(Dimension dimension) {
    Message digits =
        hand.decimalMark() == '.'
            ? say("reading.amount.with-point", "{0}, digits with a decimal point", dimension)
            : say("reading.amount.with-comma", "{0}, digits with a decimal comma", dimension);
    return row.cell("value").indexOf(',') >= 0
        ? say("reading.amount.comma-stated", "{0}; a decimal comma is stated in the plan", digits)
        : digits;
  }

  /** Only temperatures go below zero, and what was weighed weighs something. */
  private boolean isAllowed(BigDecimal digits, Dimension dimension) {
    boolean weighed = what == What.GREEN_WEIGHT || what == What.WEIGHT;
    return isHeld(
        dimension == Dimension.TEMPERATURE || digits.signum() >= (weighed ? 1 : 0),
        weighed
            ? say("reading.amount.more-than-none", "more than 0")
            : say("reading.amount.not-less", "0 or more"));
  }

  /** What is compared along a curve must be held exactly. */
  private boolean isLevel(BigDecimal digits, Unit known) {
    boolean onCurve = known.dimension() == Dimension.TEMPERATURE || what == What.HUMIDITY;
    return isHeld(!onCurve || Level.of(digits, known).isPresent(), LEVEL);
  }

  private boolean isHeld(boolean rule, Message expected) {
    if (!rule) {
      row.stop("value", "value", row.orNothing("value"), expected);
    }
    return rule;
  }

  private Optional<Unit> unit(Dimension dimension) {
    String unit = row.cell("unit");
    if (SPOONS.matcher(unit).matches()) {
      spoons();
      return Optional.empty();
    }
    Optional<Unit> known =
        Unit.parse(unit)
            .filter(symbol -> symbol.dimension() == dimension)
            .filter(symbol -> what != What.HUMIDITY || symbol == Unit.PERCENT);
    if (known.isEmpty()) {
      row.stop("unit", "unit", row.orNothing("unit"), units(dimension));
    }
    return known;
  }

  private Message units(Dimension dimension) {
    if (what == What.HUMIDITY) {
      return Message.of(Unit.PERCENT.symbol());
    }
    return dimension == Dimension.NUMBER
        ? say("reading.amount.no-unit", "no unit")
        : Message.of(Listing.or(Unit.of(dimension)));
  }

  private void spoons() {
    Message weight = say("reading.amount.weight", "a weight in {0}", units(Dimension.MASS));
    row.stop(
        "spoons",
        "unit",
        say("reading.amount.by-spoon", "{0} {1} of {2}", row.cell("value"), row.cell("unit"), what),
        what == What.CURING_SALT
            ? say(
                "reading.amount.teaspoon",
                "{0}: one teaspoon of the same curing salt weighs anything from {1}",
                weight,
                spread())
            : weight);
  }

  private Message spread() {
    Practice.Teaspoon spoon = hand.practice().teaspoon();
    return say("reading.amount.spread", "{0} to {1}", spoon.from().shownNumber(), spoon.to());
  }
}

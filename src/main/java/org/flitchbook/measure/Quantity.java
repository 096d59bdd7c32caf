package org.flitchbook.measure;

import java.math.BigDecimal;
import java.util.Objects;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.flitchbook.message.Argument;
import org.flitchbook.message.Language;

/**
 * An exact value with the unit that its source prints. Comparing two quantities of one dimension is
 * exact in whatever units they are written: 130 °F is 54.4 recurring °C, neither more nor less.
 */
public record Quantity(Ratio value, Unit unit) implements Comparable<Quantity>, Argument {

  private static final Pattern WRITTEN =
      Pattern.compile("([+-]?\\d{1,12}(?:\\.\\d{1,12})?)\\s*(\\S.*)?");

  private static final Quantity LONGEST = of(100_000, Unit.DAY);

  public static Quantity of(long value, Unit unit) {
    return new Quantity(Ratio.of(value), unit);
  }

  public static Quantity of(BigDecimal value, Unit unit) {
    return new Quantity(Ratio.of(value), unit);
  }

  /**
   * Reads a quantity as sheets and plans write it.
   *
   * @param text a decimal with a point, and a unit: {@code 1.5 h}, {@code 130 °F}
   * @return empty where it is anything else
   */
  public static Optional<Quantity> parse(String text) {
    Matcher written = WRITTEN.matcher(text.strip());
    return written.matches()
        ? Unit.parse(Objects.requireNonNullElse(written.group(2), ""))
            .map(unit -> of(new BigDecimal(written.group(1)), unit))
        : Optional.empty();
  }

  /**
   * Reads a quantity of a dimension that sums and comparisons can hold exactly: a temperature or
   * per cent as a {@link Level} does, a time of at most 100,000 days, and, temperatures aside,
   * nothing below 0.
   *
   * @return empty where it is anything else
   */
  public static Optional<Quantity> parse(String text, Dimension dimension) {
    return parse(text)
        .filter(quantity -> quantity.dimension() == dimension)
        .filter(quantity -> dimension == Dimension.TEMPERATURE || quantity.value().signum() >= 0)
        .filter(quantity -> !Level.holds(quantity.unit()) || Level.holds(quantity))
        .filter(quantity -> dimension != Dimension.TIME || !quantity.isAbove(LONGEST));
  }

  /**
   * A quantity that is known to be one.
   *
   * @throws IllegalArgumentException where the text is no quantity; for constants in code and tests
   */
  public static Quantity required(String text) {
    return parse(text)
        .orElseThrow(() -> new IllegalArgumentException("\"" + text + "\" is no quantity"));
  }

  public Dimension dimension() {
    return unit.dimension();
  }

  /** The same quantity in another unit of its dimension; a temperature as a level, not a step. */
  public Quantity in(Unit other) {
    requireSame(other);
    return new Quantity(inBase().over(other.factor()).plus(other.zero()), other);
  }

  /** As {@link #in}, for a difference between two temperatures: 9 °F are 5 °C. */
  public Quantity differenceIn(Unit other) {
    requireSame(other);
    return new Quantity(value.times(unit.factor()).over(other.factor()), other);
  }

  /** In the first unit of its dimension: g, °C, 1, s, mm. */
  public Ratio inBase() {
    return value.minus(unit.zero()).times(unit.factor());
  }

  /** This less the other, in this unit. */
  public Quantity minus(Quantity other) {
    return new Quantity(value.minus(other.in(unit).value()), unit);
  }

  /**
   * @throws IllegalArgumentException where the dimensions differ
   */
  @Override
  public int compareTo(Quantity other) {
    requireSame(other.unit);
    return inBase().compareTo(other.inBase());
  }

  public boolean isAbove(Quantity other) {
    return compareTo(other) > 0;
  }

  public boolean isBelow(Quantity other) {
    return compareTo(other) < 0;
  }

  /**
   * As printed, rounded to what can be read at a glance (ppm, % and bare numbers to three decimals,
   * days and hours to two, the rest to one); comparisons never use it.
   */
  public String shown() {
    return (shownNumber() + " " + unit).strip();
  }

  @Override
  public String in(Language language) {
    return shown();
  }

  @Override
  public Object json() {
    return toString();
  }

  /** As its source writes it, for a limit: without the rounding of {@link #shown}. */
  public Argument asWritten() {
    return new AsWritten(this);
  }

  private record AsWritten(Quantity quantity) implements Argument {

    @Override
    public String in(Language language) {
      return quantity.toString();
    }

    @Override
    public Object json() {
      return quantity.json();
    }
  }

  /** As {@link #shown}, without the unit. */
  public String shownNumber() {
    BigDecimal rounded = value.rounded(places(unit)).stripTrailingZeros();
    return rounded.scale() < 0 ? rounded.setScale(0).toPlainString() : rounded.toPlainString();
  }

  private static int places(Unit unit) {
    return switch (unit) {
      case PPM, BARE, PERCENT -> 3;
      case DAY, HOUR -> 2;
      default -> 1;
    };
  }

  private void requireSame(Unit other) {
    if (unit.dimension() != other.dimension()) {
      throw new IllegalArgumentException(this + " can't be compared in " + other);
    }
  }

  /** The value, a space and the unit: {@code 149.366168 ppm}. */
  @Override
  public String toString() {
    return (value + " " + unit).strip();
  }
}

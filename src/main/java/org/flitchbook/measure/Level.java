package org.flitchbook.measure;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.RoundingMode;
import java.util.List;
import java.util.OptionalLong;

/**
 * Levels of long logs as whole numbers of a step so small that both °F and °C are exact: one step
 * is a 9,000,000,000th of a °C (a 5,000,000,000th of a °F), and a billionth of a per cent. A value
 * with up to nine decimals is held without rounding, so that a comparison at a limit is exact
 * however the log and the limit are written. Arrays of these keep a day of 1-second readings small.
 * Each constant is a unit whose readings can be held so.
 */
public enum Level {
  CELSIUS(Unit.CELSIUS, 9_000_000_000L),
  FAHRENHEIT(Unit.FAHRENHEIT, 5_000_000_000L),
  PERCENT(Unit.PERCENT, 1_000_000_000L);

  /** No more decimals than this can be held exactly. */
  public static final int DECIMALS = 9;

  private static final long EIGHT_DECIMALS = 100_000_000;
  private static final Ratio MOST = Ratio.of(100_000_000);
  private static final BigDecimal FREEZING = BigDecimal.valueOf(32);
  private static final List<Level> ALL = List.of(values());

  private final Unit unit;
  private final long steps;

  Level(Unit unit, long steps) {
    this.unit = unit;
    this.steps = steps;
  }

  /** Whether readings in this unit can be held as levels: °C, °F and %. */
  public static boolean holds(Unit unit) {
    return ALL.stream().anyMatch(level -> level.unit == unit);
  }

  /** Whether a quantity in one of these units has a level: nine decimals, eight digits before. */
  static boolean holds(Quantity quantity) {
    return Ratio.of(quantity.value().rounded(DECIMALS)).equals(quantity.value())
        && quantity.value().abs().isBelow(MOST);
  }

  /**
   * The level of a reading.
   *
   * @return empty where the value has more than nine decimals or more than eight digits before them
   */
  public static OptionalLong of(BigDecimal value, Unit unit) {
    boolean fine = value.scale() > DECIMALS && value.stripTrailingZeros().scale() > DECIMALS;
    if (fine || value.precision() - value.scale() > 8) {
      return OptionalLong.empty();
    }
    BigDecimal fromZero = unit == Unit.FAHRENHEIT ? value.subtract(FREEZING) : value;
    return OptionalLong.of(fromZero.multiply(BigDecimal.valueOf(steps(unit))).longValueExact());
  }

  /**
   * The level of a reading that a program wrote, with however many decimals. Where it can't be held
   * exactly it is one of the two steps around it, and never one of eight decimals or fewer: so it
   * stays above every limit that it is above, and below every one that it is below.
   *
   * @return empty where the value has more than eight digits before its decimals
   */
  public static OptionalLong near(BigDecimal value, Unit unit) {
    OptionalLong exact = of(value, unit);
    if (exact.isPresent() || value.precision() - value.scale() > 8) {
      return exact;
    }
    BigDecimal fromZero = unit == Unit.FAHRENHEIT ? value.subtract(FREEZING) : value;
    long below =
        fromZero
            .multiply(BigDecimal.valueOf(steps(unit)))
            .setScale(0, RoundingMode.FLOOR)
            .longValueExact();
    boolean isShort =
        ALL.stream()
            .filter(level -> level.unit.dimension() == unit.dimension())
            .anyMatch(level -> below % (level.steps / EIGHT_DECIMALS) == 0);
    return OptionalLong.of(isShort ? below + 1 : below);
  }

  /**
   * The level of a limit.
   *
   * @throws ArithmeticException where the quantity can't be held exactly
   */
  public static long of(Quantity quantity) {
    Ratio steps =
        quantity.value().minus(quantity.unit().zero()).times(Ratio.of(steps(quantity.unit())));
    return exact(steps, quantity);
  }

  /**
   * The same for a difference, such as an accuracy of 0.5 °F.
   *
   * @throws ArithmeticException where it can't be held exactly
   */
  public static long ofDifference(Quantity quantity) {
    return exact(quantity.value().times(Ratio.of(steps(quantity.unit()))), quantity);
  }

  public static Quantity quantity(long level, Unit unit) {
    return new Quantity(Ratio.of(level, steps(unit)).plus(unit.zero()), unit);
  }

  public static Quantity difference(long levels, Unit unit) {
    return new Quantity(Ratio.of(levels, steps(unit)), unit);
  }

  /** For drawing only. */
  public static double drawn(long level, Unit unit) {
    return quantity(level, unit).value().rounded(DECIMALS).doubleValue();
  }

  private static long exact(Ratio steps, Quantity quantity) {
    if (!steps.denominator().equals(BigInteger.ONE)) {
      throw new ArithmeticException(quantity + " has more than nine decimals");
    }
    return steps.numerator().longValueExact();
  }

  private static long steps(Unit unit) {
    for (Level level : ALL) {
      if (level.unit == unit) {
        return level.steps;
      }
    }
    throw new IllegalArgumentException(unit + " is no unit of a level");
  }
}

package org.flitchbook.look;

import java.math.BigDecimal;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.flitchbook.measure.Unit;
import org.flitchbook.reading.Readings;

/** What stands in one column: its numbers, and what is none. */
final class LogColumn {

  /** Values that loggers write where they read nothing: an open circuit, the end of a range. */
  private static final Set<String> NEVER_READ =
      Set.of(
          "-127",
          "-50",
          "999",
          "999.9",
          "9999",
          "1372",
          "32767",
          "-32768",
          "3276.7",
          "-3276.7",
          "-3276.8",
          "65535",
          "6553.5",
          "2147483647",
          "-2147483648");

  /** No room, no meat and no water is so cold, on either scale. */
  private static final BigDecimal NEVER_SO_COLD = BigDecimal.valueOf(-90);

  /** Values that a sensor has when it is switched on, or a logger when it has none. */
  private static final Set<String> PERHAPS = Set.of("85", "185", "0", "32");

  /** Words above what is no temperature. */
  private static final Pattern NO_HEAT =
      Pattern.compile(
          "(?iU)%|\\b(rh|hum\\w*|\\w*feucht\\w*|lux|light|licht|batt\\w*|volt\\w*|v|rssi|signal|hpa|"
              + "pressure|door|co2|ppm)\\b");

  /** Words above a count of the rows, which may go on from the file before. */
  private static final Pattern OF_ROWS =
      Pattern.compile("(?iU)^(#|no\\b|n[rº]\\b|index\\b|row\\b|record\\b|sample\\b|count\\b)");

  private static final BigDecimal FAR = BigDecimal.valueOf(20);
  private static final int SHOWN = 6;

  final String word;

  /** What is no number, with how often it stands there; the first kinds of it. */
  final Map<String, Integer> others = new LinkedHashMap<>();

  /** The decimal marks in its numbers. */
  final Set<String> marks = new HashSet<>();

  /** Numbers that are likely no readings, as written, with how often they stand there. */
  final Map<String, Integer> sentinels = new LinkedHashMap<>();

  int filled;
  int numbers;
  int damaged;
  private final String said;
  private Optional<BigDecimal> lowest = Optional.empty();
  private Optional<BigDecimal> highest = Optional.empty();
  private boolean digits;
  private boolean counting = true;
  private final Set<Unit> units = EnumSet.noneOf(Unit.class);
  private Optional<BigDecimal> first = Optional.empty();
  private Optional<BigDecimal> step = Optional.empty();
  private Optional<BigDecimal> before = Optional.empty();

  /** The cell before, if its number is no reading in case that the next one leaps back. */
  private Optional<String> perhaps = Optional.empty();

  /**
   * A column that nothing was taken from yet.
   *
   * @param word the word of the heading, or the number of the column
   * @param said all that stands above it
   */
  LogColumn(String word, String said) {
    this.word = word;
    this.said = said;
    Readings.scaleIn(said).ifPresent(units::add);
  }

  void take(String cell) {
    if (cell.isEmpty()) {
      return;
    }
    filled++;
    digits |= Cells.hasDigit(cell);
    Optional<Readings.Value> value = Cells.value(cell);
    if (value.isPresent()) {
      Stream.of(".", ",").filter(cell::contains).forEach(marks::add);
      value.get().unit().ifPresent(units::add);
      take(value.get().number(), cell);
      return;
    }
    damaged += cell.contains("##") ? 1 : 0;
    if (others.size() < SHOWN || others.containsKey(cell)) {
      others.merge(cell, 1, Integer::sum);
    }
  }

  private void take(BigDecimal number, String cell) {
    boolean leap = before.filter(last -> last.subtract(number).abs().compareTo(FAR) <= 0).isEmpty();
    perhaps.ifPresent(last -> settle(last, before.orElseThrow(), leap));
    perhaps = Optional.of(cell).filter(value -> leap && PERHAPS.contains(bare(number)));
    if (perhaps.isEmpty()) {
      boolean never = NEVER_READ.contains(bare(number)) || number.compareTo(NEVER_SO_COLD) < 0;
      settle(cell, number, never);
    }
    counting &=
        cell.matches("\\d+") && before.map(last -> isNext(number.subtract(last))).orElse(true);
    first = first.or(() -> Optional.of(number));
    before = Optional.of(number);
    numbers++;
  }

  private static String bare(BigDecimal number) {
    return number.stripTrailingZeros().toPlainString();
  }

  private void settle(String cell, BigDecimal number, boolean sentinel) {
    if (sentinel) {
      sentinels.merge(cell, 1, Integer::sum);
    } else {
      lowest = Optional.of(lowest.map(number::min).orElse(number));
      highest = Optional.of(highest.map(number::max).orElse(number));
    }
  }

  /** The least number that may be a reading. */
  Optional<BigDecimal> lowest() {
    return Stream.concat(lowest.stream(), unsettled()).min(Comparator.naturalOrder());
  }

  /** The greatest number that may be a reading. */
  Optional<BigDecimal> highest() {
    return Stream.concat(highest.stream(), unsettled()).max(Comparator.naturalOrder());
  }

  private Stream<BigDecimal> unsettled() {
    return perhaps.flatMap(cell -> before).stream();
  }

  /** By the same step each time, and upwards. */
  private boolean isNext(BigDecimal by) {
    step = step.or(() -> Optional.of(by));
    return by.signum() > 0 && by.compareTo(step.get()) == 0;
  }

  /** Of a hundred filled cells so many are numbers; 0 where none is filled. */
  int share() {
    return filled == 0 ? 0 : (int) (numbers * 100L / filled);
  }

  /** Whether it may hold readings: digits that do not only number the rows. */
  boolean mayHoldReadings() {
    return digits && !isCount();
  }

  /** Whether it only numbers the rows, from 0 or 1 or under a word that says so. */
  boolean isCount() {
    boolean begins = first.filter(number -> number.compareTo(BigDecimal.ONE) <= 0).isPresent();
    boolean called = OF_ROWS.matcher(word).find();
    return counting && numbers > 2 && numbers == filled && (begins || called);
  }

  /** Whether what stands above it names something else than a temperature. */
  boolean isNoHeat() {
    return isCount() || NO_HEAT.matcher(said).find();
  }

  /** The unit that stands above it or beside each of its values. */
  Optional<String> unit() {
    return units.isEmpty()
        ? Optional.of("%").filter(said::contains)
        : Optional.of(units.iterator().next().symbol()).filter(unit -> units.size() == 1);
  }

  /** Every unit that stands above it or beside its values. */
  List<String> units() {
    return units.stream().map(Unit::symbol).toList();
  }
}

package org.flitchbook.look;

import java.math.BigDecimal;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/** What stands in one column: its numbers, and what is none. */
final class LogColumn {

  /** Values that loggers write where they read nothing: an open circuit, the end of a range. */
  private static final Set<String> NEVER_READ =
      Set.of("-127", "999.9", "9999", "1372", "32767", "-32768", "3276.7", "-3276.7", "-3276.8");

  /** Values that a sensor has when it is switched on, or a logger when it has none. */
  private static final Set<String> PERHAPS = Set.of("85", "185", "0", "32");

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
  Optional<BigDecimal> lowest = Optional.empty();
  Optional<BigDecimal> highest = Optional.empty();
  private boolean counting = true;
  private Optional<BigDecimal> before = Optional.empty();

  LogColumn(String word) {
    this.word = word;
  }

  void take(String cell) {
    if (cell.isEmpty()) {
      return;
    }
    filled++;
    Optional<BigDecimal> number = Cells.number(cell);
    if (number.isPresent()) {
      Stream.of(".", ",").filter(cell::contains).forEach(marks::add);
      take(number.get(), cell);
    } else {
      damaged += cell.contains("##") ? 1 : 0;
      if (others.size() < SHOWN || others.containsKey(cell)) {
        others.merge(cell, 1, Integer::sum);
      }
    }
  }

  private void take(BigDecimal number, String cell) {
    String bare = number.stripTrailingZeros().toPlainString();
    boolean leap =
        before.filter(last -> last.subtract(number).abs().compareTo(FAR) > 0).isPresent();
    if (NEVER_READ.contains(bare) || (PERHAPS.contains(bare) && leap)) {
      sentinels.merge(cell, 1, Integer::sum);
    } else {
      lowest = Optional.of(lowest.map(low -> low.min(number)).orElse(number));
      highest = Optional.of(highest.map(high -> high.max(number)).orElse(number));
    }
    BigDecimal next =
        before.map(last -> last.add(BigDecimal.ONE)).orElse(number.min(BigDecimal.ONE));
    counting &= cell.matches("\\d+") && next.compareTo(number) == 0;
    before = Optional.of(number);
    numbers++;
  }

  /** Of a hundred filled cells so many are numbers; 0 where none is filled. */
  int share() {
    return filled == 0 ? 0 : (int) (numbers * 100L / filled);
  }

  boolean isOfNumbers() {
    return numbers > 0 && numbers * 2L >= filled;
  }

  /** Whether it only numbers the rows, from 0 or 1. */
  boolean isCount() {
    return counting && numbers > 2;
  }
}

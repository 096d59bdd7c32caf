package org.flitchbook.look;

import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** What stands in one column: its numbers, and what is none. */
final class Column {

  /** Values that loggers write where they read nothing: an open circuit, the end of a range. */
  private static final Set<String> NEVER_READ =
      Set.of("-127", "999.9", "9999", "1372", "32767", "-32768", "3276.7", "-3276.7", "-3276.8");

  /** Values that a sensor has when it is switched on, or a logger when it has none. */
  private static final Set<String> PERHAPS = Set.of("85", "185", "0", "32");

  private static final BigDecimal FAR = BigDecimal.valueOf(20);
  private static final int SHOWN = 6;

  private final String word;
  private final Map<String, Integer> others = new LinkedHashMap<>();
  private final Map<String, Integer> sentinels = new LinkedHashMap<>();
  private int filled;
  private int numbers;
  private int times;
  private int points;
  private int commas;
  private int damaged;
  private boolean counting = true;
  private Optional<BigDecimal> lowest = Optional.empty();
  private Optional<BigDecimal> highest = Optional.empty();
  private Optional<BigDecimal> before = Optional.empty();

  Column(String word) {
    this.word = word;
  }

  void take(String cell) {
    if (cell.isEmpty()) {
      return;
    }
    filled++;
    times += Cells.isTime(cell) ? 1 : 0;
    Optional<BigDecimal> number = Cells.number(cell);
    if (number.isPresent()) {
      points += cell.indexOf('.') >= 0 ? 1 : 0;
      commas += cell.indexOf(',') >= 0 ? 1 : 0;
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

  String word() {
    return word;
  }

  int filled() {
    return filled;
  }

  int numbers() {
    return numbers;
  }

  /** Of a hundred filled cells so many are numbers; 0 where none is filled. */
  int share() {
    return filled == 0 ? 0 : (int) (numbers * 100L / filled);
  }

  boolean isOfTimes() {
    return filled > 0 && times * 10L >= filled * 9L;
  }

  boolean isOfNumbers() {
    return numbers > 0 && numbers * 2L >= filled;
  }

  /** Whether it only numbers the rows, from 0 or 1. */
  boolean isCount() {
    return counting && numbers > 2;
  }

  int points() {
    return points;
  }

  int commas() {
    return commas;
  }

  int damaged() {
    return damaged;
  }

  Optional<BigDecimal> lowest() {
    return lowest;
  }

  Optional<BigDecimal> highest() {
    return highest;
  }

  /** What is no number, with how often it stands there; the first kinds of it. */
  Map<String, Integer> others() {
    return others;
  }

  /** Numbers that are likely no readings, as written, with how often they stand there. */
  Map<String, Integer> sentinels() {
    return sentinels;
  }

  /** The scale that the heading names, the degree sign broken or not; empty where it names none. */
  Optional<String> unit() {
    return unitIn(word);
  }

  static Optional<String> unitIn(String text) {
    if (text.matches("(?i).*([°º˚?\uFFFD]|\\bdeg(rees?)?\\.?)\\s*C\\b.*|.*℃.*|.*celsius.*")) {
      return Optional.of("°C");
    }
    if (text.matches("(?i).*([°º˚?\uFFFD]|\\bdeg(rees?)?\\.?)\\s*F\\b.*|.*℉.*|.*fahrenheit.*")) {
      return Optional.of("°F");
    }
    return text.indexOf('%') >= 0 ? Optional.of("%") : Optional.empty();
  }
}

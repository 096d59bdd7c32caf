package org.flitchbook.look;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * The written times of a log: which order of year, month and day they leave open, which pattern.
 */
final class Stamps {

  private final TreeSet<String> clocks = new TreeSet<>();
  private final int[] highest = new int[3];
  private final int[] longest = new int[3];
  private final int[] shortest = {9, 9, 9};
  private Optional<Stamp> first = Optional.empty();
  private boolean alike = true;
  private boolean withoutSeconds = true;

  void take(Stamp stamp) {
    clocks.add(stamp.clock());
    withoutSeconds &= stamp.seconds() % 60 == 0;
    alike &= first.map(one -> one.between().equals(stamp.between())).orElse(true);
    alike &= first.map(one -> one.gap().equals(stamp.gap())).orElse(true);
    first = first.or(() -> Optional.of(stamp));
    for (int place = 0; place < stamp.date().size(); place++) {
      int length = stamp.date().get(place).length();
      highest[place] = Math.max(highest[place], stamp.number(place));
      longest[place] = Math.max(longest[place], length);
      shortest[place] = Math.min(shortest[place], length);
    }
  }

  boolean areDated() {
    return first.filter(Stamp::isDated).isPresent();
  }

  boolean areWithoutSeconds() {
    return withoutSeconds;
  }

  boolean haveHalves() {
    return clocks.stream().anyMatch(clock -> clock.contains("a"));
  }

  /** The orders in which year, month and day can stand; none where there is no date. */
  List<String> orders() {
    if (!areDated()) {
      return List.of();
    }
    List<String> orders = new ArrayList<>();
    for (String order : List.of("ymd", "dmy", "mdy")) {
      if (fits(order)) {
        orders.add(order);
      }
    }
    return orders;
  }

  private boolean fits(String order) {
    Stamp one = first.orElseThrow();
    int year = order.indexOf('y');
    int month = order.indexOf('m');
    int day = order.indexOf('d');
    boolean named = one.isName(0) || one.isName(1);
    boolean longYear = Stream.of(0, 1, 2).anyMatch(place -> longest[place] == 4);
    return highest[month] >= 1
        && highest[month] <= 12
        && highest[day] <= 31
        && longest[day] <= 2
        && (named ? one.isName(month) : longest[month] <= 2)
        && !one.isName(day)
        && !one.isName(year)
        && (longYear ? longest[year] == 4 : longest[year] == 2);
  }

  /** The patterns that the times can have, one for each order that is possible. */
  List<String> patterns() {
    if (!alike || clocks.stream().map(Stamps::bare).distinct().count() > 1) {
      return List.of();
    }
    String clock = clock();
    return areDated()
        ? orders().stream().map(order -> date(order) + clock).toList()
        : List.of(clock);
  }

  private static String bare(String clock) {
    return clock.replaceFirst("^(H+|h+)", "");
  }

  /** The shortest form of the hour reads the longer one too. */
  private String clock() {
    String gap = first.map(Stamp::gap).orElse("").replace("T", "'T'");
    String clock = clocks.first();
    boolean two = clocks.stream().allMatch(each -> each.matches("(HH|hh).*"));
    return gap + (two ? clock : clock.replaceFirst("^(HH|H)", "H").replaceFirst("^(hh|h)", "h"));
  }

  private String date(String order) {
    Stamp one = first.orElseThrow();
    List<String> letters =
        Stream.of(0, 1, 2).map(place -> letters(order.charAt(place), place)).toList();
    return letters.get(0)
        + one.between().get(0)
        + letters.get(1)
        + one.between().get(1)
        + letters.get(2);
  }

  private String letters(char part, int place) {
    if (first.orElseThrow().isName(place)) {
      return "MMM";
    }
    if (part == 'y') {
      return longest[place] == 4 ? "yyyy" : "yy";
    }
    String letter = part == 'm' ? "M" : "d";
    return shortest[place] == 2 ? letter + letter : letter;
  }

  /** For people: the orders that are possible, as patterns. */
  String choices() {
    return patterns().stream().collect(Collectors.joining(" or "));
  }
}

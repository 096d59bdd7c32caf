package org.flitchbook.look;

import java.util.List;
import java.util.Optional;
import java.util.function.IntBinaryOperator;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * A written time taken apart.
 *
 * @param date the three parts of the date as written, none where there is no date
 * @param between what stands between the parts of the date, twice; empty without a date
 * @param gap what stands between date and time
 * @param clock the pattern of the time of day; empty without one
 */
record WrittenTime(List<String> date, List<String> between, String gap, String clock) {

  private static final String TIME =
      "(\\d{1,2}):(\\d{2})(?::(\\d{2})([.,]\\d{1,9})?)?("
          + " ?[AaPp]\\.?[Mm]\\.?)?(Z|[+-]\\d{2}:\\d{2})?";
  private static final String DATE =
      "(\\d{1,4}|[A-Za-z]{3})([-/. ])(\\d{1,2}|[A-Za-z]{3})([-/. ]|, )(\\d{1,4})";
  private static final Pattern WRITTEN =
      Pattern.compile("(?:" + DATE + ")?([ T]?)(?:" + TIME + ")?");

  /**
   * Two patterns with the parts of the date in one order.
   *
   * @param exact with two digits where all of a sample have two
   * @param lenient with one digit or two
   */
  record Choice(String exact, String lenient) {}

  static Optional<WrittenTime> of(String text) {
    Matcher match = WRITTEN.matcher(text);
    boolean known = match.matches() && !text.isEmpty();
    return known ? Optional.of(of(match)) : Optional.empty();
  }

  private static WrittenTime of(Matcher match) {
    boolean dated = match.group(1) != null;
    return new WrittenTime(
        dated ? List.of(match.group(1), match.group(3), match.group(5)) : List.of(),
        dated ? List.of(match.group(2), match.group(4)) : List.of(),
        match.group(6),
        match.group(7) == null ? "" : clock(match));
  }

  private static String clock(Matcher match) {
    String half = match.group(11);
    String fraction = match.group(10) == null ? "" : match.group(10);
    return (half == null ? "H" : "h").repeat(match.group(7).length())
        + ":mm"
        + (match.group(9) == null ? "" : ":ss")
        + (fraction.isEmpty() ? "" : fraction.charAt(0) + "S".repeat(fraction.length() - 1))
        + (half == null ? "" : half.startsWith(" ") ? " a" : "a")
        + (match.group(12) == null ? "" : "XXX");
  }

  /** Whether it has a date and a time of day, or has them not. */
  boolean isOf(boolean dated, boolean timed) {
    return date.isEmpty() != dated && clock.isEmpty() != timed;
  }

  /** The patterns that dated times can have, one choice for each order that fits. */
  static List<Choice> patterns(List<WrittenTime> sample) {
    return Stream.of("yMd", "dMy", "Mdy")
        .filter(order -> !sample.isEmpty())
        .flatMap(order -> choice(sample, order).stream())
        .toList();
  }

  private static Optional<Choice> choice(List<WrittenTime> sample, String order) {
    WrittenTime one = sample.get(0);
    StringBuilder exact = new StringBuilder();
    StringBuilder lenient = new StringBuilder();
    for (int place = 0; place < order.length(); place++) {
      char part = order.charAt(place);
      String letters = letters(sample, part, place);
      if (letters.isEmpty()) {
        return Optional.empty();
      }
      String after = place < one.between.size() ? one.between.get(place) : one.gap;
      exact.append(letters).append(after.replace("T", "'T'"));
      lenient.append(part == 'y' ? letters : letters.replaceFirst("^(d|M)\\1$", "$1"));
      lenient.append(after.replace("T", "'T'"));
    }
    boolean two = sample.stream().allMatch(each -> each.clock.matches("(HH|hh).*"));
    String oneDigit = one.clock.replaceFirst("^(H|h)\\1", "$1");
    exact.append(two ? one.clock : oneDigit);
    return Optional.of(new Choice(exact.toString(), lenient.append(oneDigit).toString()));
  }

  /** Of one part of the date; empty where such a part can't stand at that place. */
  private static String letters(List<WrittenTime> sample, char part, int place) {
    if (!Character.isDigit(sample.get(0).date.get(place).charAt(0))) {
      return part == 'M' ? "MMM" : "";
    }
    int longest = length(sample, place, Math::max);
    if (part == 'y') {
      boolean four = IntStream.range(0, 3).anyMatch(any -> length(sample, any, Math::max) == 4);
      return longest != (four ? 4 : 2) ? "" : "y".repeat(longest);
    }
    boolean two = length(sample, place, Math::min) == 2;
    return longest > 2 ? "" : String.valueOf(part).repeat(two ? 2 : 1);
  }

  private static int length(List<WrittenTime> sample, int place, IntBinaryOperator which) {
    return sample.stream().mapToInt(each -> each.date.get(place).length()).reduce(which).orElse(0);
  }
}

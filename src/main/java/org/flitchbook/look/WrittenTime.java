package org.flitchbook.look;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** A written time taken apart into its pieces, in the order in which they stand. */
record WrittenTime(List<Piece> pieces) {

  /**
   * A piece of a time.
   *
   * @param kind what it is, see {@link Layout}
   * @param lead what stands between the piece before and this one
   */
  record Piece(char kind, String lead, String text) {}

  /**
   * An order in which pieces can stand; the name of a group says what it is: E a weekday, a, b and
   * c the parts of a date whose order is open, y, M and d those that can be no other, H, m, s and S
   * the clock, h the half of the day, z the zone.
   */
  private record Layout(Pattern pattern, String kinds) {

    static Layout of(String pattern) {
      Matcher group = Pattern.compile("\\(\\?<(\\w)>").matcher(pattern);
      StringBuilder kinds = new StringBuilder();
      while (group.find()) {
        kinds.append(group.group(1));
      }
      return new Layout(Pattern.compile(pattern), kinds.toString());
    }

    Optional<WrittenTime> read(String text) {
      Matcher match = pattern.matcher(text);
      if (!match.matches()) {
        return Optional.empty();
      }
      List<Piece> pieces = new ArrayList<>();
      int end = 0;
      for (int i = 0; i < kinds.length(); i++) {
        String name = kinds.substring(i, i + 1);
        if (match.start(name) >= 0) {
          pieces.add(
              new Piece(
                  kinds.charAt(i), text.substring(end, match.start(name)), match.group(name)));
          end = match.end(name);
        }
      }
      return Optional.of(new WrittenTime(List.copyOf(pieces)));
    }
  }

  private static final String WEEKDAY = "(?:(?<E>\\p{L}{2,9})\\.?,? )?";
  private static final String DATE =
      "(?<a>\\d{1,4}|\\p{L}{3,9})(?:[-/. ]|\\. )(?<b>\\d{1,2}|\\p{L}{3,9})(?:[-/. ]|, |\\. )"
          + "(?<c>\\d{1,4})";
  private static final String CLOCK =
      "(?<H>[01]?\\d|2[0-4])(?<colon>[:.])(?<m>[0-5]?\\d)(?:\\k<colon>(?<s>[0-5]?\\d)(?:[.,](?<S>\\d{1,9}))?)?(?:"
          + " ?(?<h>[AaPp]\\.?[Mm]\\.?))?";
  private static final String ZONE =
      "(?: ?(?<z>Z|(?:UTC|GMT)?[+-]\\d{1,2}(?::?\\d{2})?|[A-Z]{3,4}))?";
  private static final String DIGITS = "(?<y>20\\d{2})(?<M>0[1-9]|1[0-2])(?<d>[0-2]\\d|3[01])";
  private static final String GAP = "(?:[T_,]|,? | - | {2})";

  private static final List<Layout> LAYOUTS =
      Stream.of(
              WEEKDAY + DATE + GAP + CLOCK + ZONE,
              CLOCK + ZONE + GAP + WEEKDAY + DATE,
              "(?<E>\\p{L}{3}) (?<M>\\p{L}{3}) (?<d>\\d{1,2}) " + CLOCK + ZONE + " (?<y>\\d{4})",
              DIGITS + "[T_ -]?(?<H>[01]\\d|2[0-3])(?<m>[0-5]\\d)(?<s>[0-5]\\d)?" + ZONE,
              "(?<y>20\\d{2}) (?<M>\\d{1,2}) (?<d>\\d{1,2}) (?<H>\\d{1,2}) (?<m>\\d{1,2})"
                  + "(?: (?<s>\\d{1,2}))?",
              WEEKDAY + DATE,
              DIGITS,
              CLOCK + ZONE)
          .map(Layout::of)
          .toList();

  static Optional<WrittenTime> of(String text) {
    return LAYOUTS.stream()
        .flatMap(layout -> layout.read(text).stream())
        .filter(time -> time.isDated() || time.piece('m').orElseThrow().lead().equals(":"))
        .findFirst();
  }

  Optional<Piece> piece(char kind) {
    return pieces.stream().filter(piece -> piece.kind() == kind).findFirst();
  }

  private boolean isDated() {
    return piece('a').isPresent() || piece('y').isPresent();
  }

  /** Whether it has a date and a time of day, or has them not. */
  boolean isOf(boolean dated, boolean timed) {
    return isDated() == dated && piece('H').isPresent() == timed;
  }

  /** Whether every piece but second and fraction stands in the other too, in the same order. */
  private boolean isLike(WrittenTime other) {
    return skeleton().equals(other.skeleton());
  }

  private List<Character> skeleton() {
    return pieces.stream().map(Piece::kind).filter(kind -> kind != 's' && kind != 'S').toList();
  }

  /**
   * Two patterns with the parts of the date in one order.
   *
   * @param exact as all of a sample are written
   * @param lenient where one digit may stand for two, and fractions and seconds may be left out
   */
  record Choice(String exact, String lenient) {}

  /** The patterns that dated times can have, one choice for each order that fits. */
  static List<Choice> patterns(List<WrittenTime> sample) {
    Optional<WrittenTime> fullest =
        sample.stream().max(Comparator.comparing(time -> time.pieces.size()));
    return Stream.of("yMd", "dMy", "Mdy")
        .filter(order -> fullest.isPresent())
        .filter(order -> order.equals("yMd") || fullest.get().piece('a').isPresent())
        .map(
            order -> new TimePattern(sample.stream().filter(fullest.get()::isLike).toList(), order))
        .filter(TimePattern::fits)
        .map(pattern -> pattern.choice(fullest.get()))
        .toList();
  }
}

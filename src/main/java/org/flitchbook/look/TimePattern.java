package org.flitchbook.look;

import java.util.List;
import java.util.NavigableSet;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * The pattern of times that are written alike, with the parts of the date in one order.
 *
 * @param order the letters of the parts of a date whose order is open
 */
record TimePattern(List<WrittenTime> sample, String order) {

  private static final String OPEN = "abc";

  /** Whether each part of the date can be what the order says. */
  boolean fits() {
    return OPEN.chars().allMatch(part -> lengths((char) part).isEmpty() || !isWrong((char) part));
  }

  private boolean isWrong(char part) {
    char letter = order.charAt(OPEN.indexOf(part));
    if (isWord(part)) {
      return letter != 'M';
    }
    boolean four = OPEN.chars().anyMatch(any -> !isWord((char) any) && longest((char) any) == 4);
    return letter == 'y'
        ? longest(part) != (four ? 4 : 2) || shortest(part) != longest(part)
        : longest(part) > 2;
  }

  WrittenTime.Choice choice(WrittenTime fullest) {
    String exact = fullest.pieces().stream().map(this::exact).collect(Collectors.joining());
    String lenient = fullest.pieces().stream().map(this::lenient).collect(Collectors.joining());
    return new WrittenTime.Choice(exact, lenient);
  }

  private String exact(WrittenTime.Piece piece) {
    String lead = quoted(piece.lead());
    return switch (piece.kind()) {
      case 'S' -> fraction(lead, isEverywhere('S'));
      case 's' -> isEverywhere('s') ? lead + letters(piece, true) : "[" + lead + "ss]";
      default -> lead + letters(piece, true);
    };
  }

  private String lenient(WrittenTime.Piece piece) {
    String lead = quoted(piece.lead());
    return switch (piece.kind()) {
      case 'S' -> fraction(lead, false);
      case 's' -> isEverywhere('S') ? lead + letters(piece, false) : exact(piece);
      default -> lead + letters(piece, false);
    };
  }

  /** However many letters stand for it, as many digits are read as there are. */
  private String fraction(String mark, boolean always) {
    String letters = mark + "S".repeat(longest('S'));
    return always ? letters : "[" + letters + "]";
  }

  private String letters(WrittenTime.Piece piece, boolean exact) {
    char kind = piece.kind();
    int open = OPEN.indexOf(kind);
    return switch (kind) {
      case 'E' -> piece.text().length() == 3 ? "EEE" : "EEEE";
      case 'h' -> "a";
      case 'z' -> zone(piece.text());
      case 'H' -> digits(isTwo('H'), lengths('h').isEmpty() ? "H" : "h", exact);
      case 'm', 's' -> digits(isTwo(kind), String.valueOf(kind), exact);
      default -> date(kind, open < 0 ? kind : order.charAt(open), exact);
    };
  }

  private String date(char kind, char letter, boolean exact) {
    if (isWord(kind)) {
      return longest(kind) == 3 ? "MMM" : "MMMM";
    }
    return letter == 'y'
        ? "y".repeat(longest(kind))
        : digits(isTwoDigitDate(), String.valueOf(letter), exact);
  }

  /** Where one of day and month has one digit, the other has two by chance. */
  private boolean isTwoDigitDate() {
    return Stream.of('a', 'b', 'c', 'M', 'd')
        .filter(part -> !lengths(part).isEmpty() && !isWord(part))
        .allMatch(this::isTwo);
  }

  private boolean isTwo(char kind) {
    return shortest(kind) > 1;
  }

  /** Whether no sign stands between the parts, so that only their width tells them apart. */
  private boolean isPacked() {
    return sample.get(0).piece('M').filter(month -> month.lead().isEmpty()).isPresent();
  }

  private String digits(boolean two, String letter, boolean exact) {
    return letter.repeat((exact || isPacked()) && two ? 2 : 1);
  }

  private static String zone(String text) {
    if (text.equals("Z") || text.matches("[+-]\\d{2}:\\d{2}")) {
      return "XXX";
    }
    if (text.matches("[+-].*")) {
      return text.length() > 3 ? "XX" : "X";
    }
    if (text.matches("GMT.+")) {
      return text.length() > 6 ? "OOOO" : "O";
    }
    return text.matches("UTC.+") ? "'UTC'XXX" : "'" + text + "'";
  }

  private static String quoted(String lead) {
    return lead.replaceAll("(\\p{L}+)", "'$1'");
  }

  private boolean isEverywhere(char kind) {
    return sample.stream().allMatch(time -> time.piece(kind).isPresent());
  }

  private boolean isWord(char kind) {
    return sample
        .get(0)
        .piece(kind)
        .filter(p -> Character.isLetter(p.text().charAt(0)))
        .isPresent();
  }

  private NavigableSet<Integer> lengths(char kind) {
    return sample.stream()
        .flatMap(time -> time.piece(kind).stream())
        .map(piece -> piece.text().length())
        .collect(Collectors.toCollection(TreeSet::new));
  }

  private int shortest(char kind) {
    return lengths(kind).first();
  }

  private int longest(char kind) {
    return lengths(kind).last();
  }
}

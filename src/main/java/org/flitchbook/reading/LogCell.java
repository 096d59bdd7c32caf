package org.flitchbook.reading;

import java.math.BigDecimal;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.flitchbook.measure.Unit;

/**
 * A cell under a column of readings.
 *
 * @param number the reading; empty where it is none
 * @param unit the one that stands beside the number, where one does
 */
record LogCell(Kind kind, Optional<BigDecimal> number, Optional<Unit> unit) {

  /** What a cell says of the reading. */
  enum Kind {
    NUMBER,
    /** There was none; so says an empty cell, too. */
    NOTHING,
    /** There was one, or what was measured is off the range; it can't be read. */
    LOST,
    /** Nobody can tell. */
    WORDS
  }

  /** What spreadsheets and loggers write for want of a reading, in English and other languages. */
  private static final Pattern NOTHING =
      anyOf(
          "[-–—_. ]*",
          "nan|null|nil|none|nada|leer|missing|blank|empty|void|unknown|undef(ined)?",
          "#?n\\.?/?a\\.?|n\\.?d\\.?",
          "(no|not|kein|keine|sin|aucune?) ?(data|value|reading|probe|sensor|signal)",
          "(no|not|kein|keine|sin|aucune?) ?(connected|available|wert|daten|datos|donnée)",
          "((sensor|probe) ?)?(err|error|fault|fail|failed|failure|open|short|off|lost)",
          "(open|short) ?circuit|off-?line|disconnected|unplugged|burn-?out|fehler|erreur",
          "invalid|unavailable",
          "2147483647|-2147483648|4294967295");

  /** What is measured is above or below what can be read. */
  private static final Pattern OFF_RANGE =
      anyOf(
          "[-+<>≤≥↑↓]*(hi+|lo+|hh+|ll+|high|low|max|min|over|under|∞|inf|infinity)[-+!]*",
          "[-+<>≤≥↑↓]*(o\\.?l|[ou][fv]l|u\\.?l|off[- ]?scale)[-+!]*",
          "[-+<>≤≥↑↓]*(over|under|out ?of)[- ]?(range|flow|load|scale|limit)?[-+!]*",
          "[<>≤≥↑↓]+");

  /** A plain number of so many letters is looked at no further: a log may have millions. */
  private static final int USUAL = 9;

  private static final Pattern DIGIT = Pattern.compile("(?U).*\\p{Nd}.*", Pattern.DOTALL);
  private static final Pattern BRACKETS = Pattern.compile("[(\\[<{](.*)[)\\]>}]");

  private static Pattern anyOf(String... patterns) {
    return Pattern.compile("(?iU)" + String.join("|", patterns));
  }

  private static LogCell of(Kind kind) {
    return new LogCell(kind, Optional.empty(), Optional.empty());
  }

  static LogCell of(String text, char decimalMark) {
    Optional<BigDecimal> usual = Numbers.read(text, decimalMark);
    return text.length() <= USUAL && usual.isPresent()
        ? new LogCell(Kind.NUMBER, usual, Optional.empty())
        : unusual(text, decimalMark);
  }

  private static LogCell unusual(String text, char decimalMark) {
    UnitWord.Split split = UnitWord.behind(plain(text));
    Optional<BigDecimal> number = Numbers.logged(split.before(), decimalMark);
    if (number.isPresent() && !NOTHING.matcher(split.before()).matches()) {
      return new LogCell(Kind.NUMBER, number, split.unit());
    }
    Matcher brackets = BRACKETS.matcher(split.before());
    String word = brackets.matches() ? brackets.group(1) : split.before();
    if (NOTHING.matcher(word).matches()) {
      return of(Kind.NOTHING);
    }
    return DIGIT.matcher(text).matches() || OFF_RANGE.matcher(word).matches()
        ? of(Kind.LOST)
        : of(Kind.WORDS);
  }

  /** With the usual minus sign and the usual space. */
  private static String plain(String text) {
    return text.replace('\u2212', '-').replace('\u00A0', ' ').replace('\u202F', ' ').strip();
  }
}

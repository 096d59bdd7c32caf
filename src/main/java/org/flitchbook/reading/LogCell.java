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

  /** Those that spreadsheets and loggers write for want of a reading, English and others. */
  private static final Pattern NOTHING =
      Pattern.compile(
          "(?iU)[-–—_."
              + " ]*|nan|null|nil|none|#?n\\.?/?a\\.?|n\\.?d\\.?|nada|leer|missing|blank|empty|void|(no|not|kein|keine|sin|aucune?)"
              + " ?(data|value|reading|probe|sensor|signal|connected|available|wert|daten|datos|donnée)|((sensor|probe)"
              + " ?)?(err|error|fault|fail|failed|failure|open|short|off|lost)|(open|short)"
              + " ?circuit|off-?line|disconnected|unplugged|burn-?out|fehler|erreur"
              + "|invalid|unavailable|unknown|undefined|undef|2147483647|-2147483648|4294967295");

  /** What is measured is above or below what can be read. */
  private static final Pattern OFF_RANGE =
      Pattern.compile(
          "(?iU)[-+<>≤≥↑↓]*(hi+|lo+|hh+|ll+|high|low|max|min|o\\.?l|[ou][fv]l|u\\.?l|over|under|∞|inf|infinity|(over|under|out"
              + " ?of)[- ]?(range|flow|load|scale|limit)?|off[- ]?scale)[-+!]*|[<>≤≥↑↓]+");

  private static final Pattern DIGIT = Pattern.compile("(?U).*\\p{Nd}.*", Pattern.DOTALL);
  private static final Pattern BRACKETS = Pattern.compile("[(\\[<{](.*)[)\\]>}]");

  private static LogCell of(Kind kind) {
    return new LogCell(kind, Optional.empty(), Optional.empty());
  }

  static LogCell of(String text, char decimalMark) {
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

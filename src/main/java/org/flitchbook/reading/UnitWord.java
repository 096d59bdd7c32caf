package org.flitchbook.reading;

import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.flitchbook.measure.Unit;

/** Finds in a heading, or in a row of units, the scale of a temperature that it names. */
final class UnitWord {

  /** A letter alone is a probe's name as often; it counts behind a degree sign, however broken. */
  private static final Pattern SCALE =
      Pattern.compile(
          "(?i)(?:[°º˚?\uFFFD]|\\bdeg(?:rees?)?\\.?)\\s*([CF])\\b|\\btemp[^(\\[]*[(\\[]([CF])[)\\]]"
              + "|(℃|celsius)|(℉|fahrenheit)");

  /** Behind a number a letter alone is enough. */
  private static final Pattern BEHIND =
      Pattern.compile(
          "(?i)(.*?[^a-z]) *(?:(?:Â?[°º˚?\uFFFD]|deg(?:rees?)?\\.?)?"
              + " *([CF])|(℃|celsius)|(℉|fahrenheit)|(% *(?:r\\.? ?[hf]\\.?)?))");

  private UnitWord() {}

  /**
   * A cell, parted where a unit stands behind what it holds.
   *
   * @param before the whole cell where none does
   */
  record Split(String before, Optional<Unit> unit) {}

  static Split behind(String cell) {
    Matcher unit = BEHIND.matcher(cell);
    if (!unit.matches()) {
      return new Split(cell, Optional.empty());
    }
    boolean celsius = unit.group(3) != null || "c".equalsIgnoreCase(unit.group(2));
    Unit known = unit.group(5) != null ? Unit.PERCENT : celsius ? Unit.CELSIUS : Unit.FAHRENHEIT;
    return new Split(unit.group(1).strip(), Optional.of(known));
  }

  static Optional<Unit> in(String text) {
    Matcher scale = SCALE.matcher(text);
    if (!scale.find()) {
      return Optional.empty();
    }
    String letter = scale.group(1) == null ? scale.group(2) : scale.group(1);
    boolean celsius = letter == null ? scale.group(3) != null : letter.equalsIgnoreCase("c");
    return Optional.of(celsius ? Unit.CELSIUS : Unit.FAHRENHEIT);
  }

  /** The scale that a text names, where it is another than the one stated. */
  static Optional<Unit> against(Unit stated, String text) {
    boolean scale = stated == Unit.CELSIUS || stated == Unit.FAHRENHEIT;
    return in(text).filter(named -> scale && named != stated);
  }
}

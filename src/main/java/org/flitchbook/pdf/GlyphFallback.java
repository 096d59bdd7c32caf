package org.flitchbook.pdf;

import java.lang.Character.UnicodeScript;
import java.util.Arrays;
import java.util.Locale;
import java.util.Set;
import java.util.function.IntPredicate;
import org.flitchbook.document.Text;
import org.flitchbook.words.Words;

/**
 * Makes a string one that the font can show. Letters without a glyph, or of a script that is
 * written from the right and would come out backwards, are counted and their script is named: that
 * something was written can be seen, and what it was stands in the files. A sign of no script is
 * named by its number in Unicode.
 */
final class GlyphFallback {
  private static final Set<UnicodeScript> NO_SCRIPT =
      Set.of(UnicodeScript.COMMON, UnicodeScript.INHERITED, UnicodeScript.UNKNOWN);

  private final IntPredicate hasGlyph;
  private final Words words;

  GlyphFallback(IntPredicate hasGlyph, Words words) {
    this.hasGlyph = hasGlyph;
    this.words = words;
  }

  String of(String text) {
    String printable = Text.printable(text);
    if (printable.codePoints().allMatch(this::shown)) {
      return printable;
    }
    int[] codes = printable.codePoints().toArray();
    StringBuilder kept = new StringBuilder(printable.length());
    for (int from = 0; from < codes.length; ) {
      int to = end(codes, from);
      kept.append(shown(codes[from]) ? Character.toString(codes[from]) : named(codes, from, to));
      from = to;
    }
    return kept.toString();
  }

  /** The end of the letters of one script that begin here, marks upon them included. */
  private int end(int[] codes, int from) {
    int to = from + 1;
    while (!shown(codes[from]) && to < codes.length && goesOn(codes[from], codes[to])) {
      to++;
    }
    return to;
  }

  private boolean goesOn(int first, int next) {
    return isMark(next)
        || (!shown(next) && isLetter(first) && UnicodeScript.of(next) == UnicodeScript.of(first));
  }

  private String named(int[] codes, int from, int to) {
    if (!isLetter(codes[from])) {
      return String.format(Locale.ROOT, "[U+%04X]", codes[from]);
    }
    long letters = Arrays.stream(codes, from, to).filter(code -> !isMark(code)).count();
    return words.count(
        "pdf.unshown",
        letters,
        "[{0} letter of the script {1}]",
        "[{0} letters of the script {1}]",
        name(UnicodeScript.of(codes[from])));
  }

  private static String name(UnicodeScript script) {
    String words = script.name().replace('_', ' ').toLowerCase(Locale.ROOT);
    return words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1);
  }

  /** Whether it belongs to a script, which an emoji and a mark do not. */
  private static boolean isLetter(int character) {
    return !NO_SCRIPT.contains(UnicodeScript.of(character));
  }

  private static boolean isMark(int character) {
    int type = Character.getType(character);
    return type == Character.NON_SPACING_MARK
        || type == Character.ENCLOSING_MARK
        || type == Character.COMBINING_SPACING_MARK;
  }

  private boolean shown(int character) {
    if (character == '\n' || (character >= ' ' && character < 0x7f)) {
      return true;
    }
    byte direction = Character.getDirectionality(character);
    return direction != Character.DIRECTIONALITY_RIGHT_TO_LEFT
        && direction != Character.DIRECTIONALITY_RIGHT_TO_LEFT_ARABIC
        && hasGlyph.test(character);
  }
}

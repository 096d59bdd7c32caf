package org.flitchbook.pdf;

import org.flitchbook.document.Text;

/**
 * Makes a string one that the font can show. A character without a glyph, or of a script that is
 * written from the right and would come out backwards, becomes the replacement character U+FFFD.
 */
final class Legible {
  private static final int REPLACEMENT = 0xFFFD;

  private final Fonts fonts;

  Legible(Fonts fonts) {
    this.fonts = fonts;
  }

  String of(String text) {
    String printable = Text.printable(text);
    if (printable.codePoints().allMatch(this::shown)) {
      return printable;
    }
    StringBuilder kept = new StringBuilder(printable.length());
    printable.codePoints().forEach(c -> kept.appendCodePoint(shown(c) ? c : REPLACEMENT));
    return kept.toString();
  }

  private boolean shown(int character) {
    if (character == '\n' || (character >= ' ' && character < 0x7f)) {
      return true;
    }
    byte direction = Character.getDirectionality(character);
    return direction != Character.DIRECTIONALITY_RIGHT_TO_LEFT
        && direction != Character.DIRECTIONALITY_RIGHT_TO_LEFT_ARABIC
        && fonts.shows(character);
  }
}

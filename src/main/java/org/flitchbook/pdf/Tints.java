package org.flitchbook.pdf;

import org.flitchbook.document.Tone;

/** The light ground behind a tone. It supports the symbol and the words and never replaces them. */
final class Tints {
  private Tints() {}

  static Ink of(Tone tone) {
    return switch (tone) {
      case PLAIN -> Ink.SHADE;
      case PASS -> Ink.PASS;
      case FAIL -> Ink.FAIL;
      case DOUBT -> Ink.DOUBT;
      case WAIT -> Ink.WAIT;
    };
  }
}

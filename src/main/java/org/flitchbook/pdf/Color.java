package org.flitchbook.pdf;

import org.flitchbook.document.Tone;

/**
 * Black, one grey and very light tints, as red, green and blue from 0 to 1. The grey stands at 5:1
 * against white.
 */
enum Color {
  BLACK(0, 0, 0),
  GREY(0.42f, 0.42f, 0.42f),
  HAIR(0.75f, 0.75f, 0.75f),
  GRID(0.88f, 0.88f, 0.88f),
  SHADE(0.955f, 0.955f, 0.955f),
  WHITE(1, 1, 1),
  PASS(0.935f, 0.965f, 0.935f),
  FAIL(0.985f, 0.905f, 0.89f),
  DOUBT(0.99f, 0.945f, 0.83f),
  WAIT(0.94f, 0.945f, 0.965f);

  final float red;
  final float green;
  final float blue;

  Color(float red, float green, float blue) {
    this.red = red;
    this.green = green;
    this.blue = blue;
  }

  /**
   * The light ground behind a tone. It supports the symbol and the words and never replaces them.
   */
  static Color behind(Tone tone) {
    return switch (tone) {
      case PLAIN -> SHADE;
      case PASS -> PASS;
      case FAIL -> FAIL;
      case DOUBT -> DOUBT;
      case WAIT -> WAIT;
    };
  }
}

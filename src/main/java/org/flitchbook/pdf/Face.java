package org.flitchbook.pdf;

/** The two cuts of the one typeface. */
enum Face {
  PLAIN("DejaVuSansCondensed.ttf"),
  STRONG("DejaVuSansCondensed-Bold.ttf");

  final String file;

  Face(String file) {
    this.file = file;
  }
}

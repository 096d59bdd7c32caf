package org.flitchbook.document;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/** A sheet, upright. Width and height are in points, 72 to the inch. */
public enum Paper {
  /** 8.5 by 11 inches. */
  LETTER(612, 792),
  /** 210 by 297 millimetres, to a hundredth of a point. */
  A4(595.28, 841.89);

  private final double width;
  private final double height;

  Paper(double width, double height) {
    this.width = width;
    this.height = height;
  }

  /** Width in points. */
  public double width() {
    return width;
  }

  /** Height in points. */
  public double height() {
    return height;
  }

  /** The paper of that name in any case, or empty. */
  public static Optional<Paper> parse(String name) {
    String wanted = name.strip().toUpperCase(Locale.ROOT);
    return Arrays.stream(values()).filter(paper -> paper.name().equals(wanted)).findFirst();
  }
}

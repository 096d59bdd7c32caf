package org.flitchbook.plan;

import java.util.Arrays;
import java.util.Optional;
import java.util.stream.Collectors;
import org.flitchbook.measure.Dimension;

/** The computed quantities that a ceiling or a floor can judge. */
public enum Figure {
  INGOING_NITRITE("ingoing nitrite", Dimension.SHARE),
  INGOING_NITRATE("ingoing nitrate", Dimension.SHARE),
  INGOING_ACCELERATOR("ingoing accelerator", Dimension.SHARE),
  YIELD("yield", Dimension.SHARE),
  PEAK_INTERNAL_TEMPERATURE("peak internal temperature", Dimension.TEMPERATURE),
  RESIDUAL_NITRITE("residual nitrite", Dimension.SHARE),
  SALT("salt", Dimension.SHARE),
  BRINE_STRENGTH("brine strength", Dimension.SHARE),
  WATER_ACTIVITY("water activity", Dimension.NUMBER),
  PH("pH", Dimension.NUMBER);

  private final String word;
  private final Dimension dimension;

  Figure(String word, Dimension dimension) {
    this.word = word;
    this.dimension = dimension;
  }

  public String word() {
    return word;
  }

  public Dimension dimension() {
    return dimension;
  }

  static Optional<Figure> parse(String word) {
    return Arrays.stream(values()).filter(figure -> figure.word.equals(word)).findFirst();
  }

  static String choices() {
    return Arrays.stream(values()).map(Figure::word).collect(Collectors.joining(", "));
  }
}

package org.flitchbook.plan;

import org.flitchbook.measure.Dimension;
import org.flitchbook.measure.Measurable;
import org.flitchbook.message.Argument;
import org.flitchbook.message.Language;

/**
 * The computed quantities that a ceiling or a floor can judge. A figure carries its basis and the
 * two are never mixed: {@code ingoing} is what went in, {@code residual} what a laboratory finds;
 * nitrite without more words is counted as NaNO2, the {@code ion} as NO2, nitrate as NaNO3.
 */
public enum Figure implements Argument, Measurable {
  INGOING_NITRITE("ingoing nitrite", Dimension.SHARE),
  INGOING_NITRITE_ION("ingoing nitrite ion", Dimension.SHARE),
  INGOING_NITRATE("ingoing nitrate", Dimension.SHARE),
  INGOING_ACCELERATOR("ingoing accelerator", Dimension.SHARE),
  INGOING_SALT("ingoing salt", Dimension.SHARE),
  YIELD("yield", Dimension.SHARE),
  PEAK_INTERNAL_TEMPERATURE("peak internal temperature", Dimension.TEMPERATURE),
  RESIDUAL_NITRITE("residual nitrite", Dimension.SHARE),
  RESIDUAL_NITRITE_ION("residual nitrite ion", Dimension.SHARE),
  RESIDUAL_NITRATE("residual nitrate", Dimension.SHARE),
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

  @Override
  public String in(Language language) {
    return language.word("figure", word);
  }

  @Override
  public Object json() {
    return word;
  }

  @Override
  public Dimension dimension() {
    return dimension;
  }

  /** Whether it is summed from the weighings of the cure. */
  public boolean isIngoing() {
    return word.startsWith("ingoing ");
  }
}

package org.flitchbook.doubt;

import org.flitchbook.json.Format;
import org.flitchbook.measure.Dimension;
import org.flitchbook.measure.Level;
import org.flitchbook.measure.Quantity;
import org.flitchbook.message.Argument;
import org.flitchbook.message.Language;

/**
 * Degrees that a rule states, printed as they are written.
 *
 * @param level to compare readings with, where they are a temperature; see {@link Level}
 * @param difference to compare differences with, where they are one
 */
record Degrees(Quantity written, long level, long difference) implements Argument {

  private static final Format<Quantity> WRITTEN = Format.quantity(Dimension.TEMPERATURE);

  static final Format<Degrees> FORMAT =
      Format.of(WRITTEN.expected(), text -> WRITTEN.parser().apply(text).map(Degrees::of));

  private static Degrees of(Quantity written) {
    return new Degrees(written, Level.of(written), Level.ofDifference(written));
  }

  @Override
  public String in(Language language) {
    return written.asWritten().in(language);
  }

  @Override
  public Object json() {
    return written.json();
  }
}

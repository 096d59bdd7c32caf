package org.flitchbook.record;

import org.flitchbook.check.Finding;
import org.flitchbook.check.Measured;
import org.flitchbook.check.Verdict;
import org.flitchbook.document.Table;
import org.flitchbook.document.Text;
import org.flitchbook.document.Tone;
import org.flitchbook.measure.Dimension;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Ratio;
import org.flitchbook.measure.Unit;

/**
 * The margin of a finding on a scale drawn to its limit: as far from the tick as the margin is a
 * part of the limit. A temperature has no zero that its limit could be a part of; its scale ends
 * {@link #DEGREES} from the limit.
 */
record Margin(Finding finding, Phrases phrases) {

  private static final Quantity DEGREES = Quantity.of(10, Unit.CELSIUS);

  Table.Cell cell() {
    return finding
        .measured()
        .filter(measured -> finding.verdict() != Verdict.PENDING)
        .map(measured -> Table.Cell.of(scale(measured), words(measured.margin())))
        .orElse(new Table.Cell(Text.of("–"), Tone.PLAIN));
  }

  private static Table.Scale scale(Measured measured) {
    Quantity margin = measured.margin();
    Ratio whole = whole(measured);
    if (margin.value().signum() == 0 || whole.signum() == 0) {
      return new Table.Scale(Math.max(0, -margin.value().signum()));
    }
    double inside = margin.value().over(whole).rounded(3).doubleValue();
    return new Table.Scale(Math.max(-1, Math.min(1, -inside)));
  }

  private static Ratio whole(Measured measured) {
    return measured.limit().dimension() == Dimension.TEMPERATURE
        ? DEGREES.differenceIn(measured.margin().unit()).value()
        : measured.limit().in(measured.margin().unit()).value().abs();
  }

  private String words(Quantity margin) {
    String size = Phrases.quantity(new Quantity(margin.value().abs(), margin.unit()));
    return phrases
        .bound()
        .bound(
            switch (margin.value().signum()) {
              case 0 -> phrases.say("record.scale.at-limit", "at the limit");
              case 1 -> phrases.say("record.scale.inside", "{0} inside the limit", size);
              default -> phrases.say("record.scale.over", "{0} over the limit", size);
            });
  }
}

package org.flitchbook.doubt;

import static org.flitchbook.message.Message.say;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.util.stream.Stream;
import org.flitchbook.json.Choice;
import org.flitchbook.measure.Quantity;
import org.flitchbook.plan.Instrument;
import org.flitchbook.reading.Entry;
import org.flitchbook.sheet.Shape;

/** A weight between two steps of its scale was not read off it. */
@Choice("finer than its scale")
record FinerThanScale() implements Finder {

  @Override
  public Stream<Doubt> find(Subject subject) {
    return subject.lot().entries().stream()
        .filter(entry -> entry.what().shape() == Shape.MASS)
        .flatMap(entry -> finer(subject, entry));
  }

  private Stream<Doubt> finer(Subject subject, Entry entry) {
    return subject.plan().instrument(entry.instrument()).flatMap(Instrument::readability).stream()
        .filter(step -> step.inBase().signum() > 0)
        .filter(step -> lastPlace(entry).isBelow(step))
        .filter(step -> !isMultiple(entry.amount(), step))
        .map(
            step ->
                new Doubt(
                    entry.place().column("value"),
                    say("doubt.finer.found", "{0} on {1}", entry.shown(), entry.instrument()),
                    say("doubt.finer.expected", "a multiple of {0}", step.asWritten()),
                    say(
                        "do.finer-than-its-scale",
                        "Say which scale it was, or write what this one showed.")));
  }

  /**
   * One in the last place written: 0.01 lb for 1.28 lb, which no scale of 0.01 g is too coarse for.
   */
  private static Quantity lastPlace(Entry entry) {
    int mark = Math.max(entry.value().indexOf('.'), entry.value().indexOf(','));
    int places = mark < 0 ? 0 : entry.value().length() - mark - 1;
    return Quantity.of(BigDecimal.ONE.movePointLeft(places), entry.amount().unit());
  }

  private static boolean isMultiple(Quantity mass, Quantity step) {
    return mass.inBase().over(step.inBase()).denominator().equals(BigInteger.ONE);
  }
}

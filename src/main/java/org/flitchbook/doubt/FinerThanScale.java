package org.flitchbook.doubt;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.util.List;
import java.util.stream.Stream;
import org.flitchbook.input.Fault;
import org.flitchbook.measure.Quantity;
import org.flitchbook.plan.Instrument;
import org.flitchbook.reading.Entry;
import org.flitchbook.sheet.Shape;

/** A weight between two steps of its scale was not read off it. */
final class FinerThanScale implements Finder {

  @Override
  public String name() {
    return "finer than its scale";
  }

  @Override
  public List<Fault> find(Rule rule, Subject subject) {
    return subject.lot().entries().stream()
        .filter(entry -> entry.what().shape() == Shape.MASS)
        .flatMap(entry -> finer(rule, subject, entry))
        .toList();
  }

  private static Stream<Fault> finer(Rule rule, Subject subject, Entry entry) {
    return subject.plan().instrument(entry.instrument()).flatMap(Instrument::readability).stream()
        .filter(step -> step.inBase().signum() > 0)
        .filter(step -> lastPlace(entry).isBelow(step))
        .filter(step -> !isMultiple(entry.amount(), step))
        .map(
            step ->
                rule.fault(
                    subject,
                    entry.place().column("value"),
                    subject.say(
                        "doubt.finer.found", "{0} on {1}", entry.shown(), entry.instrument()),
                    subject.say("doubt.finer.expected", "a multiple of {0}", step)));
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

package org.flitchbook.doubt;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.flitchbook.input.Fault;
import org.flitchbook.measure.Dimension;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Ratio;
import org.flitchbook.measure.Unit;
import org.flitchbook.plan.Instrument;
import org.flitchbook.reading.Entry;
import org.flitchbook.sheet.What;

/** Curing salt weighed on a scale whose step is a large share of it. */
final class CoarseScale implements Finder {

  private final String name;

  /**
   * Finds by the rule of that name.
   *
   * @param name one rule is lenient and one is strict; they differ by their numbers
   */
  CoarseScale(String name) {
    this.name = name;
  }

  @Override
  public String name() {
    return name;
  }

  @Override
  public Map<String, Dimension> numbers() {
    return Map.of("above", Dimension.SHARE, "upTo", Dimension.SHARE);
  }

  @Override
  public List<Fault> find(Rule rule, Subject subject) {
    return subject.lot().entries().stream()
        .filter(entry -> entry.is(What.CURING_SALT) || entry.is(What.ACCELERATOR))
        .filter(entry -> entry.amount().value().signum() > 0)
        .flatMap(entry -> coarse(rule, subject, entry).stream())
        .toList();
  }

  private static Optional<Fault> coarse(Rule rule, Subject subject, Entry entry) {
    return subject
        .plan()
        .instrument(entry.instrument())
        .flatMap(Instrument::readability)
        .map(step -> share(step, entry.amount()))
        .filter(share -> share.isAbove(rule.number("above")) && !share.isAbove(rule.number("upTo")))
        .map(
            share ->
                rule.fault(
                    subject,
                    entry.place().column("instrument"),
                    subject.say(
                        "doubt.coarse.found",
                        "{0} on {1}, one step of which is {2} of it",
                        entry.shown(),
                        entry.instrument(),
                        share.shown()),
                    subject.say(
                        "doubt.coarse.expected",
                        "a scale whose step is at most {0}",
                        rule.number("above"))));
  }

  private static Quantity share(Quantity step, Quantity weighed) {
    return new Quantity(step.inBase().over(weighed.inBase()).times(Ratio.of(100)), Unit.PERCENT);
  }
}

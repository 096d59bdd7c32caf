package org.flitchbook.doubt;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.flitchbook.input.Fault;
import org.flitchbook.measure.Dimension;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Ratio;
import org.flitchbook.measure.Unit;
import org.flitchbook.plan.CureMethod;
import org.flitchbook.plan.Ingredient;
import org.flitchbook.reading.Entry;
import org.flitchbook.sheet.What;

/**
 * An amount of curing salt that is far off what a cure of its printed strength is used at: another
 * bag than the one written down, a decimal point, or a unit. A ready-mixed cure used at the rate of
 * a strong one passes every ceiling and cures nothing.
 */
final class CureOutOfRange implements Finder {

  private static final List<String> STRENGTHS = List.of("strong", "readyMix");

  @Override
  public String name() {
    return "curing salt out of its range";
  }

  @Override
  public Map<String, Dimension> numbers() {
    return Map.of(
        "strongFrom", Dimension.SHARE,
        "strongTo", Dimension.SHARE,
        "strongAtLeast", Dimension.SHARE,
        "strongAtMost", Dimension.SHARE,
        "readyMixFrom", Dimension.SHARE,
        "readyMixTo", Dimension.SHARE,
        "readyMixAtLeast", Dimension.SHARE,
        "readyMixAtMost", Dimension.SHARE);
  }

  @Override
  public List<Fault> find(Rule rule, Subject subject) {
    boolean rubbed =
        subject
            .lot()
            .product()
            .filter(product -> product.cureMethod().is(CureMethod.Way.DRY))
            .isPresent();
    return rubbed
        ? subject.lot().all(What.GREEN_WEIGHT).stream()
            .filter(green -> green.amount().value().signum() > 0)
            .flatMap(green -> ofPiece(rule, subject, green))
            .toList()
        : List.of();
  }

  private static Stream<Fault> ofPiece(Rule rule, Subject subject, Entry green) {
    List<Entry> cures =
        subject.lot().all(What.CURING_SALT).stream()
            .filter(cure -> cure.piece().isEmpty() || cure.piece().equals(green.piece()))
            .toList();
    return STRENGTHS.stream()
        .flatMap(
            strength ->
                out(rule, subject, strength, green, ofStrength(rule, subject, strength, cures))
                    .stream());
  }

  private static List<Entry> ofStrength(
      Rule rule, Subject subject, String strength, List<Entry> cures) {
    return cures.stream()
        .filter(
            cure ->
                subject.plan().ingredient(cure.item()).flatMap(Ingredient::sodiumNitrite).stream()
                    .anyMatch(
                        share ->
                            !share.isBelow(rule.number(strength + "From"))
                                && !share.isAbove(rule.number(strength + "To"))))
        .toList();
  }

  /** Several rows of one piece add up. */
  private static Optional<Fault> out(
      Rule rule, Subject subject, String strength, Entry green, List<Entry> cures) {
    Ratio cure = cures.stream().map(each -> each.amount().inBase()).reduce(Ratio.ZERO, Ratio::plus);
    Quantity least = rule.number(strength + "AtLeast");
    Quantity most = rule.number(strength + "AtMost");
    Quantity share =
        new Quantity(cure.over(green.amount().inBase()).times(Ratio.of(100)), Unit.PERCENT);
    if (cures.isEmpty() || !(share.isBelow(least) || share.isAbove(most))) {
      return Optional.empty();
    }
    Entry last = cures.get(cures.size() - 1);
    return Optional.of(
        rule.fault(
            subject,
            last.place().column("value"),
            subject.say(
                "doubt.cure.found",
                "{0} of the green weight, of lot {1}",
                share.shown(),
                last.item()),
            subject.say(
                "doubt.cure.expected", "{0} to {1} of a cure of its strength", least, most)));
  }
}

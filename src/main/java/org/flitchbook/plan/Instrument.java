package org.flitchbook.plan;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import org.flitchbook.measure.Dimension;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Unit;

/**
 * A scale, a thermometer or a logger.
 *
 * @param accuracy of a thermometer or logger, a difference of temperatures
 * @param readabilities of a scale, one for each unit that it can show; of a thermometer where it is
 *     stated
 * @param repeatability of a scale, the standard deviation of one mass weighed again and again
 * @param humidityAccuracy of a logger that reads humidity too, in per cent of relative humidity
 * @param checkEvery how long a good check holds
 * @param tolerance how far a check may be off
 */
public record Instrument(
    String id,
    String kind,
    Optional<Quantity> accuracy,
    List<Quantity> readabilities,
    Optional<Quantity> repeatability,
    Optional<Quantity> humidityAccuracy,
    Quantity checkEvery,
    Quantity tolerance) {

  /**
   * One step of what it shows in a unit: in pounds another than in grams, where the plan states
   * both. Kilograms are shown in the steps of grams, pounds in those of ounces; where the plan
   * states nothing of the kind, the largest step counts.
   *
   * @param written in which a reading was written
   * @return empty where the plan states none at all
   */
  public Optional<Quantity> readability(Unit written) {
    return first(step -> step.unit() == written)
        .or(() -> first(step -> step.unit().isBeside(written)))
        .or(() -> readabilities.stream().max(Comparator.naturalOrder()));
  }

  private Optional<Quantity> first(Predicate<Quantity> fits) {
    return readabilities.stream().filter(fits).findFirst();
  }

  /** How exactly it reads something of that dimension; empty where the plan doesn't state it. */
  public Optional<Quantity> accuracyFor(Dimension dimension) {
    return dimension == Dimension.SHARE ? humidityAccuracy : accuracy;
  }
}

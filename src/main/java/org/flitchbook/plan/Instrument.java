package org.flitchbook.plan;

import java.util.Optional;
import org.flitchbook.measure.Dimension;
import org.flitchbook.measure.Quantity;

/**
 * A scale, a thermometer or a logger.
 *
 * @param accuracy of a thermometer or logger, a difference of temperatures
 * @param readability of a scale
 * @param repeatability of a scale, the standard deviation of one mass weighed again and again
 * @param humidityAccuracy of a logger that reads humidity too, in per cent of relative humidity
 * @param checkEvery how long a good check holds
 * @param tolerance how far a check may be off
 */
public record Instrument(
    String id,
    String kind,
    Optional<Quantity> accuracy,
    Optional<Quantity> readability,
    Optional<Quantity> repeatability,
    Optional<Quantity> humidityAccuracy,
    Quantity checkEvery,
    Quantity tolerance) {

  /** How exactly it reads something of that dimension; empty where the plan doesn't state it. */
  public Optional<Quantity> accuracyFor(Dimension dimension) {
    return dimension == Dimension.SHARE ? humidityAccuracy : accuracy;
  }
}

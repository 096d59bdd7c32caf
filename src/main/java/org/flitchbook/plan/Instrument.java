package org.flitchbook.plan;

import java.util.Optional;
import org.flitchbook.measure.Quantity;

/**
 * A scale, a thermometer or a logger.
 *
 * @param accuracy of a thermometer or logger, a difference of temperatures
 * @param readability of a scale
 * @param checkEvery how long a good check holds
 * @param tolerance how far a check may be off
 */
public record Instrument(
    String id,
    String kind,
    Optional<Quantity> accuracy,
    Optional<Quantity> readability,
    Quantity checkEvery,
    Quantity tolerance) {}

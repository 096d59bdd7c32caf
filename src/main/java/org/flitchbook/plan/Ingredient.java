package org.flitchbook.plan;

import java.util.Optional;
import org.flitchbook.measure.Quantity;

/**
 * A curing ingredient's lot with the strength read off its label; a share that is not stated is not
 * known, and no strength is ever assumed.
 */
public record Ingredient(
    String lot,
    String name,
    Optional<Quantity> sodiumNitrite,
    Optional<Quantity> sodiumNitrate,
    Optional<Quantity> potassiumNitrite,
    Optional<Quantity> potassiumNitrate,
    Optional<Quantity> salt,
    Optional<Quantity> sodiumAscorbate,
    Optional<Quantity> sodiumErythorbate,
    Optional<Quantity> sodiumErythorbateMonohydrate,
    String custodian) {}

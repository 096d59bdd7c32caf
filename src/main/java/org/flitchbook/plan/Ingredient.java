package org.flitchbook.plan;

import java.util.Optional;
import org.flitchbook.json.Key;
import org.flitchbook.measure.Quantity;

/**
 * A curing ingredient's lot with the strength read off its label; a share that is not stated is not
 * known, and no strength is ever assumed.
 */
public record Ingredient(
    String lot,
    String name,
    @Key(format = "share of the whole") Optional<Quantity> sodiumNitrite,
    @Key(format = "share of the whole") Optional<Quantity> sodiumNitrate,
    @Key(format = "share of the whole") Optional<Quantity> potassiumNitrite,
    @Key(format = "share of the whole") Optional<Quantity> potassiumNitrate,
    @Key(format = "share of the whole") Optional<Quantity> salt,
    @Key(format = "share of the whole") Optional<Quantity> sodiumAscorbate,
    @Key(format = "share of the whole") Optional<Quantity> sodiumErythorbate,
    @Key(format = "share of the whole") Optional<Quantity> sodiumErythorbateMonohydrate,
    @Key(otherwise = "") String custodian) {}

package org.flitchbook.plan;

import java.time.ZoneId;
import java.util.Optional;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Unit;

/**
 * Whose book it is.
 *
 * @param temperature the unit in which the records speak
 * @param paper "Letter" or "A4"
 * @param timestampUrl the time stamp server that signatures are sent to (RFC 3161)
 */
public record Establishment(
    String name,
    String number,
    String address,
    String regime,
    ZoneId zone,
    Optional<Quantity> altitude,
    String paper,
    Unit temperature,
    char decimalMark,
    boolean soleOperator,
    Optional<String> timestampUrl) {}

package org.flitchbook.check;

import java.time.Instant;
import java.util.Optional;
import org.flitchbook.measure.Quantity;

/**
 * One stage of a span.
 *
 * @param probe the worst probe
 * @param measured empty where nothing could be clocked
 * @param start when its clock starts, and {@code end} when it stops or was last seen running
 */
public record Part(
    Quantity from,
    Quantity to,
    Verdict verdict,
    Optional<Measured> measured,
    String probe,
    Optional<Instant> start,
    Optional<Instant> end,
    String reason) {}

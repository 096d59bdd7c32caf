package org.flitchbook.check;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.flitchbook.measure.Quantity;
import org.flitchbook.message.Message;

/**
 * One stage of a span.
 *
 * @param probes the worst probe, or one after the other those of the worst curve
 * @param measured empty where nothing could be clocked
 * @param start when its clock starts, and {@code end} when it stops or was last seen running
 * @param reasons why it is not met, not shown or pending
 */
public record Part(
    Quantity from,
    Quantity to,
    Verdict verdict,
    Optional<Measured> measured,
    List<String> probes,
    Optional<Instant> start,
    Optional<Instant> end,
    List<Message> reasons) {

  /** They, as they are called in a record. */
  public String probe() {
    return String.join(" + ", probes);
  }
}

package org.flitchbook.plan;

import java.time.LocalDate;
import java.util.Optional;

/**
 * A key that the plan knows as a person's.
 *
 * @param fingerprint SHA-256 of its certificate, 64 digits of lower-case hexadecimal
 * @param from the first day on which it counts; empty: since it was made
 * @param until the last day on which it counts; empty: it is not retired
 */
public record PersonKey(String fingerprint, Optional<LocalDate> from, Optional<LocalDate> until) {

  public boolean isInForce(LocalDate day) {
    return from.filter(day::isBefore).isEmpty() && until.filter(day::isAfter).isEmpty();
  }
}

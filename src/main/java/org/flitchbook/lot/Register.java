package org.flitchbook.lot;

import java.time.Duration;
import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.flitchbook.measure.Dimension;
import org.flitchbook.measure.Quantity;
import org.flitchbook.plan.Instrument;
import org.flitchbook.reading.Entry;

/** The checks of the instruments, in order of time. */
public record Register(List<Check> checks) {

  public Register {
    checks = checks.stream().sorted(Comparator.comparing(Check::at)).toList();
  }

  /**
   * One check of an instrument.
   *
   * @param error what it read less what it should have read; a difference
   * @param passed whether the error is within the plan's tolerance
   */
  public record Check(Instrument instrument, Entry entry, Quantity error, boolean passed) {
    public Instant at() {
      return entry.time().earliest();
    }
  }

  /** The last check at or before a time. */
  public Optional<Check> last(String instrument, Instant time) {
    return checks.stream()
        .filter(check -> check.instrument().id().equals(instrument) && !check.at().isAfter(time))
        .reduce((earlier, later) -> later);
  }

  /** Whether the last check passed and is no older than the plan wants. */
  public boolean inForce(Instrument instrument, Instant time) {
    return last(instrument.id(), time)
        .filter(Check::passed)
        .filter(check -> !time.isAfter(check.at().plus(validity(instrument))))
        .isPresent();
  }

  /** How long a good check holds. */
  public static Duration validity(Instrument instrument) {
    return Duration.ofSeconds(instrument.checkEvery().inBase().rounded(0).longValueExact());
  }

  /** All checks of one instrument. */
  public List<Check> of(Instrument instrument) {
    return checks.stream()
        .filter(check -> check.instrument().id().equals(instrument.id()))
        .toList();
  }

  static boolean within(Quantity error, Quantity tolerance) {
    Quantity allowed =
        tolerance.dimension() == Dimension.TEMPERATURE
            ? tolerance.differenceIn(error.unit())
            : tolerance.in(error.unit());
    return !error.value().abs().isAbove(allowed.value());
  }
}

package org.flitchbook.doubt;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.flitchbook.input.Fault;
import org.flitchbook.lot.Register;
import org.flitchbook.plan.Instrument;

/** The next check after the use failed: what it read since the last good one is in doubt. */
final class FailedCheck implements Finder {

  @Override
  public String name() {
    return "instrument failed its check";
  }

  @Override
  public List<Fault> find(Rule rule, Subject subject) {
    return Uses.of(subject.lot())
        .firstFaults(subject, (instrument, use) -> look(rule, subject, instrument, use));
  }

  private static Optional<Fault> look(
      Rule rule, Subject subject, Instrument instrument, Uses.Use use) {
    return failedAfter(subject, instrument, use)
        .map(
            check ->
                rule.fault(
                    subject,
                    use.firstAt(),
                    subject.say(
                        "doubt.failed.found",
                        "{0}, which was off by {1} at its next check ({2})",
                        instrument.id(),
                        check.error().shown(),
                        check.entry().place()),
                    subject.say("words.at-most", "at most {0}", instrument.tolerance())));
  }

  /** Whether a check filed on that day puts in doubt what an instrument read of the lot before. */
  static boolean isReopened(Subject subject, LocalDate day) {
    return Uses.of(subject.lot()).ofInstruments().entrySet().stream()
        .anyMatch(
            each ->
                subject.plan().instrument(each.getKey()).stream()
                    .flatMap(
                        known ->
                            each.getValue().stream()
                                .flatMap(use -> failedAfter(subject, known, use).stream()))
                    .anyMatch(check -> check.entry().place().file().startsWith(day + "/")));
  }

  private static Optional<Register.Check> failedAfter(
      Subject subject, Instrument instrument, Uses.Use use) {
    return subject.register().of(instrument).stream()
        .filter(check -> check.at().isAfter(use.first()))
        .findFirst()
        .filter(check -> !check.passed());
  }
}

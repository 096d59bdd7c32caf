package org.flitchbook.doubt;

import static org.flitchbook.message.Message.say;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.flitchbook.json.Choice;
import org.flitchbook.lot.Register;

/** The next check after the use failed: what it read since the last good one is in doubt. */
@Choice("instrument failed its check")
record FailedCheck() implements Finder {

  @Override
  public Stream<Doubt> find(Subject subject) {
    return InstrumentUse.first(
        subject, use -> failedAfter(subject, use).map(check -> doubt(use, check)));
  }

  private Doubt doubt(InstrumentUse use, Register.Check check) {
    return new Doubt(
        use.firstAt(),
        say(
            "doubt.failed.found",
            "{0}, which was off by {1} at its next check ({2})",
            use.instrument().id(),
            check.error(),
            check.entry().place()),
        say("words.at-most", "at most {0}", use.instrument().tolerance().asWritten()),
        say(
            "do.instrument-failed-its-check",
            "Judge each lot since the last good check again with the error found, and dispose of"
                + " it."));
  }

  /** Whether a check filed on that day puts in doubt what an instrument read of the lot before. */
  static boolean isReopened(Subject subject, LocalDate day) {
    return InstrumentUse.ofEach(subject).stream()
        .flatMap(List::stream)
        .flatMap(use -> failedAfter(subject, use).stream())
        .anyMatch(check -> check.entry().place().file().startsWith(day + "/"));
  }

  private static Optional<Register.Check> failedAfter(Subject subject, InstrumentUse use) {
    return subject.register().of(use.instrument()).stream()
        .filter(check -> check.at().isAfter(use.first()))
        .findFirst()
        .filter(check -> !check.passed());
  }
}

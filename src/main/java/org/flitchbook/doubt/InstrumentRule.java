package org.flitchbook.doubt;

import static org.flitchbook.message.Message.say;

import java.time.Instant;
import java.time.LocalDate;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.flitchbook.input.Place;
import org.flitchbook.json.Choice;
import org.flitchbook.lot.Register;
import org.flitchbook.lot.Track;
import org.flitchbook.message.Message;
import org.flitchbook.plan.Instrument;
import org.flitchbook.reading.Entry;

/** The checks of the instruments that a lot was read with. */
sealed interface InstrumentRule extends Finder
    permits InstrumentRule.NotInForce, InstrumentRule.FailedCheck {

  /** An instrument whose last check failed, or is older than the plan wants. */
  @Choice("instrument not in force")
  record NotInForce() implements InstrumentRule {

    @Override
    public Stream<Doubt> find(Subject subject) {
      return InstrumentUse.first(subject, use -> look(subject, use));
    }

    private Optional<Doubt> look(Subject subject, InstrumentUse use) {
      Register register = subject.register();
      Instrument instrument = use.instrument();
      if (register.inForce(instrument, use.first()) && register.inForce(instrument, use.last())) {
        return Optional.empty();
      }
      Message last =
          register
              .last(instrument.id(), use.last())
              .map(
                  check ->
                      say("doubt.check.last", "its last check is at {0}", check.entry().place()))
              .orElse(say("doubt.check.none", "no check of it is on file"));
      return Optional.of(
          new Doubt(
              use.firstAt(),
              say("doubt.check.found", "{0}, and {1}", instrument.id(), last),
              say(
                  "doubt.check.expected",
                  "a good check at most {0} d before",
                  Register.validity(instrument).toDays()),
              say(
                  "do.instrument-not-in-force",
                  "Check the instrument now and write the result; or name another that read the"
                      + " same.")));
    }
  }

  /** The next check after the use failed: what it read since the last good one is in doubt. */
  @Choice("instrument failed its check")
  record FailedCheck() implements InstrumentRule {

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

    /**
     * Whether a check filed on that day puts in doubt what an instrument read of the lot before.
     */
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

  /** A use of an instrument for a lot: when first, where that is written, and when last. */
  record InstrumentUse(Instrument instrument, Instant first, Place firstAt, Instant last) {

    /** The uses of each of the plan's instruments. */
    static Collection<List<InstrumentUse>> ofEach(Subject subject) {
      Stream<InstrumentUse> byHand = subject.rows().flatMap(entry -> of(subject, entry));
      Stream<InstrumentUse> logged =
          subject.logs().stream().flatMap(log -> of(subject, log.track()));
      return Stream.concat(byHand, logged)
          .collect(
              Collectors.groupingBy(
                  InstrumentUse::instrument, LinkedHashMap::new, Collectors.toList()))
          .values();
    }

    private static Stream<InstrumentUse> of(Subject subject, Entry entry) {
      Instant at = entry.time().earliest();
      return subject.plan().instrument(entry.instrument()).stream()
          .map(instrument -> new InstrumentUse(instrument, at, entry.place(), at));
    }

    private static Stream<InstrumentUse> of(Subject subject, Track track) {
      Instant first = Instant.ofEpochMilli(track.earliest(0));
      Instant last = Instant.ofEpochMilli(track.earliest(track.size() - 1));
      return subject.plan().instrument(track.instrument()).stream()
          .map(instrument -> new InstrumentUse(instrument, first, track.place(0), last));
    }

    /** The first doubt of each instrument that is found in its uses. */
    static Stream<Doubt> first(Subject subject, Function<InstrumentUse, Optional<Doubt>> look) {
      return ofEach(subject).stream()
          .flatMap(uses -> uses.stream().flatMap(use -> look.apply(use).stream()).limit(1));
    }
  }
}

package org.flitchbook.lot;

import static java.util.stream.Collectors.groupingBy;
import static org.flitchbook.message.Message.say;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.flitchbook.input.Fault;
import org.flitchbook.measure.Dimension;
import org.flitchbook.measure.Level;
import org.flitchbook.measure.Quantity;
import org.flitchbook.message.Message;
import org.flitchbook.message.Word;
import org.flitchbook.plan.Instrument;
import org.flitchbook.plan.Plan;
import org.flitchbook.reading.Entry;
import org.flitchbook.sheet.Sheet;
import org.flitchbook.sheet.What;
import org.flitchbook.sums.Sums;

/**
 * The checks of the instruments.
 *
 * @param checks in order of time
 * @param byInstrument the same of each instrument, by its id
 */
public record Register(List<Check> checks, Map<String, List<Check>> byInstrument) {

  private static final Quantity ICE = Quantity.required("32 °F");

  private static Register of(Stream<Check> checks) {
    List<Check> inTime = checks.sorted(Comparator.comparing(Check::at)).toList();
    return new Register(
        inTime, inTime.stream().collect(groupingBy(check -> check.instrument().id())));
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
    List<Check> own = byInstrument.getOrDefault(instrument, List.of());
    for (int i = own.size() - 1; i >= 0; i--) {
      if (!own.get(i).at().isAfter(time)) {
        return Optional.of(own.get(i));
      }
    }
    return Optional.empty();
  }

  /** Whether the last check passed and is no older than the plan wants. */
  public boolean inForce(Instrument instrument, Instant time) {
    return last(instrument.id(), time)
        .filter(Check::passed)
        .filter(check -> !time.isAfter(check.at().plus(validity(instrument))))
        .isPresent();
  }

  /** Whether a check failed that was filed on that day. */
  public boolean hasFailed(LocalDate day) {
    return checks.stream()
        .filter(check -> !check.passed())
        .anyMatch(check -> check.entry().place().file().startsWith(day + "/"));
  }

  /** How long a good check holds. */
  public static Duration validity(Instrument instrument) {
    return Duration.ofSeconds(instrument.checkEvery().inBase().rounded(0).longValueExact());
  }

  /** All checks of one instrument. */
  public List<Check> of(Instrument instrument) {
    return byInstrument.getOrDefault(instrument.id(), List.of());
  }

  /** The checks among the entries whose error can be calculated. */
  static Register of(Plan plan, List<Entry> entries) {
    return of(
        written(entries)
            .flatMap(
                entry ->
                    plan
                        .instrument(entry.instrument())
                        .filter(instrument -> fits(instrument, entry))
                        .flatMap(instrument -> check(plan, instrument, entry))
                        .stream()));
  }

  private static Stream<Entry> written(List<Entry> entries) {
    return entries.stream().filter(entry -> entry.sheet() == Sheet.INSTRUMENTS);
  }

  private static boolean fits(Instrument instrument, Entry entry) {
    return entry.amount().dimension() == instrument.tolerance().dimension();
  }

  private static Optional<Check> check(Plan plan, Instrument instrument, Entry entry) {
    return wanted(plan, entry)
        .map(wanted -> entry.amount().minus(wanted))
        .map(error -> new Check(instrument, entry, error, isWithin(error, instrument.tolerance())));
  }

  private static boolean isWithin(Quantity error, Quantity tolerance) {
    Quantity allowed =
        tolerance.dimension() == Dimension.TEMPERATURE
            ? tolerance.differenceIn(error.unit())
            : tolerance.in(error.unit());
    return !error.value().abs().isAbove(allowed.value());
  }

  /** What an instrument should have read; empty where that can't be known. */
  private static Optional<Quantity> wanted(Plan plan, Entry entry) {
    return switch (entry.what()) {
      case ICE_POINT -> Optional.of(ICE);
      case BOILING_POINT -> plan.establishment().altitude().map(Sums::boilingPoint);
      default ->
          Quantity.parse(entry.item())
              .filter(known -> known.dimension() == entry.amount().dimension())
              .filter(Register::isMeasurable);
    };
  }

  /** Errors of temperatures are held as levels. */
  private static boolean isMeasurable(Quantity reference) {
    return reference.dimension() != Dimension.TEMPERATURE
        || Level.of(reference.value().rounded(Level.DECIMALS), reference.unit()).isPresent();
  }

  /** Why the error of a check can't be calculated, for each of which it can't. */
  static Stream<Fault> faults(Plan plan, List<Entry> entries) {
    return written(entries)
        .flatMap(
            entry ->
                plan.instrument(entry.instrument()).stream()
                    .filter(instrument -> !fits(instrument, entry) || wanted(plan, entry).isEmpty())
                    .map(instrument -> fault(instrument, entry)));
  }

  private static Fault fault(Instrument instrument, Entry entry) {
    if (!fits(instrument, entry)) {
      return fault(
          entry,
          "what",
          say(
              "lot.check.of-a",
              "{0} of a {1}",
              entry.what(),
              new Word("instrument", instrument.kind())),
          say("lot.check.fitting", "a check that fits it"));
    }
    return entry.is(What.BOILING_POINT)
        ? fault(
            entry,
            "what",
            say("lot.check.boiling", "a boiling point"),
            say("lot.check.altitude", "the establishment's \"altitude\" in the plan"))
        : fault(
            entry,
            "item",
            ReferenceCheck.item(entry),
            say("lot.check.reference", "the reference's value with its unit"));
  }

  private static Fault fault(Entry entry, String column, Message found, Message expected) {
    return Fault.stop("instrument check", "", entry.place().column(column), found, expected);
  }
}

package org.flitchbook.doubt;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.flitchbook.input.Fault;
import org.flitchbook.input.Place;
import org.flitchbook.lot.Lot;
import org.flitchbook.lot.Register;
import org.flitchbook.lot.Track;
import org.flitchbook.measure.Quantity;
import org.flitchbook.plan.Instrument;
import org.flitchbook.plan.Plan;
import org.flitchbook.reading.Entry;
import org.flitchbook.sheet.Shape;

/** Whether the instruments that read a lot had a good check in force, then and at the next one. */
final class InstrumentDoubts {

  static final String NOT_IN_FORCE = "instrument not in force";
  static final String FINER = "finer than its scale";
  static final String FAILED = "instrument failed its check";

  private final Plan plan;
  private final List<Rule> rules;
  private final Register register;

  InstrumentDoubts(Plan plan, List<Rule> rules, Register register) {
    this.plan = plan;
    this.rules = rules;
    this.register = register;
  }

  /** A use of an instrument for a lot: when first, when last, and where that stands. */
  private record Use(Instant first, Place firstAt, Instant last) {
    Use until(Instant time) {
      return time.isAfter(last) ? new Use(first, firstAt, time) : this;
    }
  }

  List<Fault> of(Lot lot) {
    Map<String, List<Use>> uses = new LinkedHashMap<>();
    for (Entry entry : lot.entries()) {
      if (!entry.instrument().isEmpty()) {
        Instant at = entry.time().earliest();
        uses.computeIfAbsent(entry.instrument(), id -> new ArrayList<>())
            .add(new Use(at, entry.place(), at));
      }
    }
    for (Lot.StepTrack each : lot.tracks()) {
      use(each.track(), uses);
    }
    List<Fault> faults = new ArrayList<>();
    lot.entries().forEach(entry -> finer(entry).ifPresent(faults::add));
    uses.forEach(
        (id, all) -> plan.instrument(id).ifPresent(known -> check(known, all, lot.code(), faults)));
    return faults;
  }

  /** A weight between two steps of its scale was not read off it. */
  private Optional<Fault> finer(Entry entry) {
    if (entry.what().shape() != Shape.MASS) {
      return Optional.empty();
    }
    return plan.instrument(entry.instrument())
        .flatMap(Instrument::readability)
        .filter(step -> step.inBase().signum() > 0)
        .filter(step -> lastPlace(entry).isBelow(step))
        .filter(step -> !isMultiple(entry.amount(), step))
        .flatMap(
            step ->
                rule(FINER)
                    .map(
                        rule ->
                            fault(
                                rule,
                                entry.lot(),
                                entry.place().column("value"),
                                entry.shown() + " on " + entry.instrument(),
                                "a multiple of " + step)));
  }

  /**
   * One in the last place written: 0.01 lb for 1.28 lb, which no scale of 0.01 g is too coarse for.
   */
  private static Quantity lastPlace(Entry entry) {
    int mark = Math.max(entry.value().indexOf('.'), entry.value().indexOf(','));
    int places = mark < 0 ? 0 : entry.value().length() - mark - 1;
    return Quantity.of(BigDecimal.ONE.movePointLeft(places), entry.amount().unit());
  }

  private static boolean isMultiple(Quantity mass, Quantity step) {
    return mass.inBase().over(step.inBase()).denominator().equals(BigInteger.ONE);
  }

  private static void use(Track track, Map<String, List<Use>> uses) {
    if (track.interval() > 0 && track.size() > 0) {
      Instant first = Instant.ofEpochMilli(track.earliest(0));
      Use use = new Use(first, track.place(0), first);
      uses.computeIfAbsent(track.instrument(), id -> new ArrayList<>())
          .add(use.until(Instant.ofEpochMilli(track.earliest(track.size() - 1))));
    }
  }

  private void check(Instrument instrument, List<Use> uses, String lot, List<Fault> faults) {
    for (Use use : uses) {
      Optional<Fault> fault = notInForce(instrument, use, lot);
      if (fault.isPresent()) {
        faults.add(fault.get());
        break;
      }
    }
    uses.stream()
        .map(use -> failedAfter(instrument, use, lot))
        .flatMap(Optional::stream)
        .findFirst()
        .ifPresent(faults::add);
  }

  private Optional<Fault> notInForce(Instrument instrument, Use use, String lot) {
    if (register.inForce(instrument, use.first()) && register.inForce(instrument, use.last())) {
      return Optional.empty();
    }
    Duration validity = Register.validity(instrument);
    String last =
        register
            .last(instrument.id(), use.last())
            .map(check -> "its last check is at " + check.entry().place())
            .orElse("no check of it is on file");
    return rule(NOT_IN_FORCE)
        .map(
            rule ->
                fault(
                    rule,
                    lot,
                    use.firstAt(),
                    instrument.id() + ", and " + last,
                    "a good check at most " + validity.toDays() + " d before"));
  }

  /** The next check after the use failed: what it read since the last good one is in doubt. */
  private Optional<Fault> failedAfter(Instrument instrument, Use use, String lot) {
    return register.of(instrument).stream()
        .filter(check -> check.at().isAfter(use.first()))
        .findFirst()
        .filter(check -> !check.passed())
        .flatMap(
            check ->
                rule(FAILED)
                    .map(
                        rule ->
                            fault(
                                rule,
                                lot,
                                use.firstAt(),
                                instrument.id()
                                    + ", which was off by "
                                    + check.error().shown()
                                    + " at its next check ("
                                    + check.entry().place()
                                    + ")",
                                "at most " + instrument.tolerance())));
  }

  private static Fault fault(Rule rule, String lot, Place place, String found, String expected) {
    return new Fault(
        rule.name(), rule.severity(), lot, place, found, expected + "; " + rule.what());
  }

  private Optional<Rule> rule(String name) {
    return rules.stream().filter(rule -> rule.name().equals(name)).findFirst();
  }
}

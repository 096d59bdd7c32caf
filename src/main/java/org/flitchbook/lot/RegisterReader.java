package org.flitchbook.lot;

import static org.flitchbook.message.Message.say;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
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

/** Calculates the error of each check of an instrument. */
final class RegisterReader {

  private static final Quantity ICE = Quantity.required("32 °F");

  private final Plan plan;
  private final List<Fault> faults = new ArrayList<>();
  private final Register register;

  RegisterReader(Plan plan, List<Entry> entries) {
    this.plan = plan;
    this.register =
        new Register(
            entries.stream()
                .filter(entry -> entry.sheet() == Sheet.INSTRUMENTS)
                .flatMap(entry -> check(entry).stream())
                .toList());
  }

  Register register() {
    return register;
  }

  List<Fault> faults() {
    return faults;
  }

  private Optional<Register.Check> check(Entry entry) {
    return plan.instrument(entry.instrument()).flatMap(instrument -> check(instrument, entry));
  }

  private Optional<Register.Check> check(Instrument instrument, Entry entry) {
    if (entry.amount().dimension() != instrument.tolerance().dimension()) {
      stop(
          entry,
          "what",
          say(
              "lot.check.of-a",
              "{0} of a {1}",
              entry.what(),
              new Word("instrument", instrument.kind())),
          say("lot.check.fitting", "a check that fits it"));
      return Optional.empty();
    }
    return wanted(entry)
        .map(wanted -> entry.amount().minus(wanted))
        .map(
            error ->
                new Register.Check(
                    instrument, entry, error, Register.within(error, instrument.tolerance())));
  }

  private Optional<Quantity> wanted(Entry entry) {
    if (entry.is(What.ICE_POINT)) {
      return Optional.of(ICE);
    }
    if (entry.is(What.BOILING_POINT)) {
      return boiling(entry);
    }
    Dimension dimension = entry.amount().dimension();
    Optional<Quantity> item =
        Quantity.parse(entry.item())
            .filter(known -> known.dimension() == dimension)
            .filter(RegisterReader::isMeasurable);
    if (item.isEmpty()) {
      stop(
          entry,
          "item",
          ReferenceCheck.item(entry),
          say("lot.check.reference", "the reference's value with its unit"));
    }
    return item;
  }

  /** Errors of temperatures are held as levels. */
  private static boolean isMeasurable(Quantity reference) {
    return reference.dimension() != Dimension.TEMPERATURE
        || Level.of(reference.value().rounded(Level.DECIMALS), reference.unit()).isPresent();
  }

  private Optional<Quantity> boiling(Entry entry) {
    Optional<Quantity> altitude = plan.establishment().altitude();
    if (altitude.isEmpty()) {
      stop(
          entry,
          "what",
          say("lot.check.boiling", "a boiling point"),
          say("lot.check.altitude", "the establishment's \"altitude\" in the plan"));
    }
    return altitude.map(Sums::boilingPoint);
  }

  private void stop(Entry entry, String column, Message found, Message expected) {
    faults.add(Fault.stop("instrument check", "", entry.place().column(column), found, expected));
  }
}

package org.flitchbook.lot;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.flitchbook.input.Fault;
import org.flitchbook.measure.Dimension;
import org.flitchbook.measure.Level;
import org.flitchbook.measure.Quantity;
import org.flitchbook.plan.Instrument;
import org.flitchbook.plan.Plan;
import org.flitchbook.reading.Entry;
import org.flitchbook.sheet.Sheet;
import org.flitchbook.sheet.What;
import org.flitchbook.sums.Sums;
import org.flitchbook.words.Words;

/** Works the error of each check of an instrument out. */
final class RegisterReader {

  private static final Quantity ICE = Quantity.required("32 °F");

  private final Plan plan;
  private final Words words;
  private final List<Fault> faults;

  RegisterReader(Plan plan, List<Fault> faults) {
    this.plan = plan;
    this.words = plan.words();
    this.faults = faults;
  }

  Register read(List<Entry> entries) {
    List<Register.Check> checks = new ArrayList<>();
    for (Entry entry : entries) {
      if (entry.sheet() == Sheet.INSTRUMENTS) {
        plan.instrument(entry.instrument())
            .flatMap(instrument -> check(instrument, entry))
            .ifPresent(checks::add);
      }
    }
    return new Register(checks);
  }

  private Optional<Register.Check> check(Instrument instrument, Entry entry) {
    if (entry.amount().dimension() != instrument.tolerance().dimension()) {
      stop(
          entry,
          "what",
          words.say(
              "lot.check.of-a",
              "{0} of a {1}",
              words.word("what", entry.what().word()),
              words.word("instrument", instrument.kind())),
          words.say("lot.check.fitting", "a check that fits it"));
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
          entry.item().isEmpty() ? words.say("words.nothing", "nothing") : entry.item(),
          words.say("lot.check.reference", "the reference's value with its unit"));
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
          words.say("lot.check.boiling", "a boiling point"),
          words.say("lot.check.altitude", "the establishment's \"altitude\" in the plan"));
    }
    return altitude.map(Sums::boilingPoint);
  }

  private void stop(Entry entry, String column, String found, String expected) {
    faults.add(Fault.stop("instrument check", "", entry.place().column(column), found, expected));
  }
}

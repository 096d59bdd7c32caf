package org.flitchbook.record;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.flitchbook.document.Block;
import org.flitchbook.lot.Lot;
import org.flitchbook.lot.Register;
import org.flitchbook.plan.Instrument;

/** The instruments that the lot's entries and logs name, each with its last check. */
final class InstrumentTable {

  private final DayJudged day;
  private final Lot lot;
  private final Phrases phrases;

  InstrumentTable(DayJudged day, Lot lot) {
    this.day = day;
    this.lot = lot;
    this.phrases = day.phrases();
  }

  Block block() {
    Grid grid =
        phrases
            .grid("record.instruments.caption", "Instruments in force")
            .head("record.instruments.instrument", "Instrument", 8)
            .head("record.instruments.last-check", "Last check", 8)
            .head("record.instruments.read", "What was read", 10)
            .number("record.instruments.error", "Error", 0)
            .number("record.instruments.tolerance", "Tolerance", 0)
            .head("record.instruments.holds-until", "Holds until", 6)
            .head("record.head.where", "Where it stands", 12);
    used().forEach(instrument -> grid.row(row(instrument, last(instrument))));
    return grid.isEmpty()
        ? phrases.nothingOf(phrases.say("record.instruments.instruments", "Instruments"))
        : grid.table();
  }

  List<Instrument> used() {
    return day.plan().instruments().stream().filter(this::isUsed).toList();
  }

  /** Those without a good check that holds at the moment judged. */
  List<Instrument> lapsed() {
    return used().stream()
        .filter(
            instrument ->
                last(instrument)
                    .filter(Register.Check::passed)
                    .filter(check -> !until(instrument, check).isBefore(day.moment()))
                    .isEmpty())
        .toList();
  }

  private Optional<Register.Check> last(Instrument instrument) {
    return day.register().last(instrument.id(), day.moment());
  }

  private String[] row(Instrument instrument, Optional<Register.Check> last) {
    return new String[] {
      instrument.id() + ", " + phrases.word("instrument", instrument.kind()),
      last.map(check -> phrases.time(check.at())).orElse(phrases.notRecorded()),
      last.map(this::read).orElse("–"),
      last.map(this::error).orElse("–"),
      instrument.tolerance().toString(),
      last.map(check -> phrases.date(until(instrument, check))).orElse("–"),
      last.map(check -> check.entry().place().toString()).orElse("–")
    };
  }

  private String read(Register.Check check) {
    return phrases.word("what", check.entry().what().word()) + " " + check.entry().shown();
  }

  private String error(Register.Check check) {
    String error = check.error().shown();
    return check.passed() ? error : phrases.say("record.instruments.failed", "{0}, FAILED", error);
  }

  private static Instant until(Instrument instrument, Register.Check check) {
    return check.at().plus(Register.validity(instrument));
  }

  private boolean isUsed(Instrument instrument) {
    return lot.entries().stream().anyMatch(e -> e.instrument().equals(instrument.id()))
        || lot.tracks().stream()
            .anyMatch(each -> each.track().instrument().equals(instrument.id()));
  }
}

package org.flitchbook.record;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.flitchbook.document.Block;
import org.flitchbook.document.Document;
import org.flitchbook.document.Paper;
import org.flitchbook.document.Running;
import org.flitchbook.lot.Lot;
import org.flitchbook.lot.Register;
import org.flitchbook.measure.Quantity;
import org.flitchbook.reading.Entry;
import org.flitchbook.sheet.What;

/** A trace for people: the lots, how each was touched, where it went, what should be left. */
final class TraceReport {

  private final DayJudged day;
  private final Trace trace;
  private final Phrases phrases;

  TraceReport(DayJudged day, Trace trace) {
    this.day = day;
    this.trace = trace;
    this.phrases = day.phrases();
  }

  Document document() {
    List<Block> blocks = new ArrayList<>();
    if (trace.lots().isEmpty()) {
      blocks.add(
          phrases.paragraph(
              phrases.say("record.trace.nothing", "It is known, and touches no lot.")));
    } else {
      blocks.add(lots());
      trace.lots().forEach(each -> touches(each).ifPresent(blocks::add));
      went().ifPresent(blocks::add);
      blocks.add(balance());
      trace.lots().forEach(each -> parted(each).ifPresent(blocks::add));
    }
    checks().ifPresent(blocks::add);
    List<String> roles =
        trace.roles().stream().map(role -> role.told().in(day.plan().words())).toList();
    return new Document(
        phrases.say("record.trace.title", "Trace of {0}", trace.code()),
        phrases.say(
            "record.trace.subject",
            "{0}; as of {1}",
            String.join(", ", roles),
            phrases.time(day.moment())),
        day.plan().words(),
        day.book() + "/trace/" + trace.code(),
        day.moment(),
        Paper.A4,
        new Running("", "", "", ""),
        blocks);
  }

  private Block lots() {
    Grid grid =
        phrases
            .grid("record.trace.lots", "Lots touched")
            .head("record.head.lot", "Lot", 6)
            .head("record.trace.product", "Product", 14)
            .head("record.head.verdict", "Verdict", 6)
            .number("record.trace.green", "Green weight", 6);
    for (Trace.TracedLot each : trace.lots()) {
      grid.row(
          grid.cell(each.judgement().lot().code()),
          grid.cell(
              phrases.orNotRecorded(
                  each.judgement().lot().product().map(product -> product.name()).orElse(""))),
          phrases.cell(each.judgement().verdict()),
          grid.cell(sum(each, What.GREEN_WEIGHT)));
    }
    return grid.table();
  }

  private Optional<Block> touches(Trace.TracedLot traced) {
    Grid grid =
        phrases
            .grid("record.trace.touches", "{0}: what touched it", traced.judgement().lot().code())
            .head("record.head.what", "What", 10)
            .head("record.head.item", "Item", 8)
            .number("record.head.value", "Value", 6)
            .head("record.head.time", "Time", 12)
            .head("record.head.where", "Where it stands", 12);
    for (Touch touch : traced.touches()) {
      grid.row(
          phrases.word("what", touch.what()),
          touch.item(),
          touch.readings() == 1
              ? touch.quantity()
              : phrases.say("record.trace.readings", "{0} readings", touch.readings()),
          time(touch),
          touch.place().toString());
    }
    return grid.isEmpty() ? Optional.empty() : Optional.of(grid.table());
  }

  private String time(Touch touch) {
    String from = phrases.time(touch.from());
    return touch.from().equals(touch.to()) ? from : from + " – " + phrases.time(touch.to());
  }

  private Optional<Block> went() {
    Grid grid =
        phrases
            .grid("record.trace.went", "What left the house")
            .head("record.head.lot", "Lot", 6)
            .head("record.head.what", "What", 8)
            .head("record.trace.customer", "Customer", 12)
            .number("record.trace.quantity", "Quantity", 6)
            .head("record.head.time", "Time", 9)
            .head("record.head.where", "Where it stands", 12);
    for (Trace.TracedLot each : trace.lots()) {
      for (Entry entry : each.went()) {
        grid.row(
            each.judgement().lot().code(),
            phrases.what(entry),
            entry.item(),
            phrases.orNotRecorded(entry.shown()),
            phrases.time(entry.time().written()),
            entry.place().toString());
      }
    }
    return grid.isEmpty()
        ? Optional.of(
            phrases.paragraph(
                phrases.say(
                    "record.trace.nothing-left",
                    "Nothing of it is on record as having left the house.")))
        : Optional.of(grid.table());
  }

  private Block balance() {
    Grid grid =
        phrases
            .grid("record.trace.balance", "Mass balance")
            .head("record.head.lot", "Lot", 6)
            .number("record.trace.packed", "Packed", 6)
            .number("record.trace.dispatched", "Dispatched", 6)
            .number("record.trace.returned", "Returned", 6)
            .number("record.trace.destroyed", "Destroyed", 6)
            .number("record.trace.left", "Packs still here", 6);
    for (Trace.TracedLot each : trace.lots()) {
      grid.row(
          each.judgement().lot().code(),
          sum(each, What.PACKED),
          sum(each, What.DISPATCHED),
          sum(each, What.RETURNED),
          sum(each, What.DESTROYED),
          shown(new Balance(each.judgement().lot()).left()));
    }
    return grid.table();
  }

  private String sum(Trace.TracedLot traced, What what) {
    return shown(new Balance(traced.judgement().lot()).sum(what));
  }

  private String shown(Optional<Quantity> sum) {
    return sum.map(Quantity::shown).orElse(phrases.notRecorded());
  }

  private Optional<Block> parted(Trace.TracedLot traced) {
    Lot lot = traced.judgement().lot();
    return new WeightSection(lot, phrases)
        .parted()
        .map(
            text ->
                phrases.paragraph(
                    phrases.say("record.trace.parted", "{0}: {1}", lot.code(), text)));
  }

  private Optional<Block> checks() {
    Grid grid =
        phrases
            .grid("record.trace.checks", "Checks of the instrument")
            .head("record.head.time", "Time", 9)
            .head("record.head.what", "What", 10)
            .number("record.head.value", "Value", 6)
            .number("record.instruments.error", "Error", 6)
            .head("record.head.where", "Where it stands", 12);
    for (Register.Check check : trace.checks()) {
      String error = check.error().shown();
      grid.row(
          phrases.time(check.at()),
          phrases.what(check.entry()),
          check.entry().shown(),
          check.passed() ? error : phrases.say("record.instruments.failed", "{0}, FAILED", error),
          check.entry().place().toString());
    }
    return grid.isEmpty() ? Optional.empty() : Optional.of(grid.table());
  }
}

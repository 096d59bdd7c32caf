package org.flitchbook.record;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.flitchbook.account.LotAccount.Distribution;
import org.flitchbook.account.Trace;
import org.flitchbook.account.Trace.Touch;
import org.flitchbook.account.Trace.TracedLot;
import org.flitchbook.check.Judgement;
import org.flitchbook.document.Block;
import org.flitchbook.document.Document;
import org.flitchbook.lot.Lot;
import org.flitchbook.lot.Register;
import org.flitchbook.measure.Quantity;
import org.flitchbook.message.Message;
import org.flitchbook.plan.Product;
import org.flitchbook.reading.Entry;
import org.flitchbook.record.JsonTree.Members;

/** A trace: the lots, how each was touched, where it went, what should be left. */
final class TraceReport extends Section {

  private final Trace trace;
  private final JsonTree values;

  TraceReport(DayJudged day, Trace trace) {
    super(day);
    this.trace = trace;
    this.values = day.jsonTree();
  }

  Document document() {
    Blocks blocks = new Blocks();
    if (trace.lots().isEmpty()) {
      blocks.add(paragraph("record.trace.nothing", "It is known, and touches no lot."));
    } else {
      blocks.add(lots());
      trace.lots().forEach(each -> blocks.add(touches(each)));
      blocks.add(went()).add(balance());
      trace.lots().forEach(each -> blocks.add(parted(each.judgement())));
    }
    blocks.add(checks());
    String roles = trace.roles().stream().map(this::say).collect(Collectors.joining(", "));
    return new Documents(day)
        .screen(
            say("record.trace.title", "Trace of {0}", trace.code()),
            say("record.trace.subject", "{0}; as of {1}", roles, time(day.moment())),
            "trace/" + trace.code(),
            blocks);
  }

  private static String code(TracedLot traced) {
    return traced.judgement().lot().code();
  }

  private Block lots() {
    return table("record.trace.lots", "Lots touched", trace.lots())
        .column(LOT, 6, TraceReport::code)
        .column("record.trace.product", "Product", 14, each -> product(each.judgement().lot()))
        .verdict(6, each -> each.judgement().verdict())
        .number("record.trace.green", "Green weight", 6, sum(Distribution::greenWeight))
        .table();
  }

  private Optional<Block> touches(TracedLot traced) {
    Message caption = Message.say("record.trace.touches", "{0}: what touched it", code(traced));
    return table(caption, traced.touches())
        .column(WHAT, 10, touch -> say(touch.what()))
        .column(ITEM, 8, Touch::item)
        .number(VALUE, 6, this::value)
        .column(TIME, 12, this::time)
        .where(12, Touch::place)
        .ifAny();
  }

  private String value(Touch touch) {
    return touch.readings() == 1
        ? touch.quantity()
        : say("record.trace.readings", "{0} readings", touch.readings());
  }

  private String time(Touch touch) {
    String from = time(touch.from());
    return touch.from().equals(touch.to()) ? from : from + " – " + time(touch.to());
  }

  private record Went(String lot, Entry entry) {}

  private Block went() {
    List<Went> all =
        trace.lots().stream()
            .flatMap(each -> each.went().stream().map(entry -> new Went(code(each), entry)))
            .toList();
    return table("record.trace.went", "What left the house", all)
        .column(LOT, 6, Went::lot)
        .column(WHAT, 8, each -> what(each.entry()))
        .column("record.trace.customer", "Customer", 12, each -> each.entry().item())
        .number("record.trace.quantity", "Quantity", 6, each -> orNotRecorded(each.entry().shown()))
        .column(TIME, 9, each -> time(each.entry()))
        .where(12, each -> each.entry().place())
        .or(
            paragraph(
                "record.trace.nothing-left",
                "Nothing of it is on record as having left the house."));
  }

  private Block balance() {
    return table("record.trace.balance", "Mass balance", trace.lots())
        .column(LOT, 6, TraceReport::code)
        .number("record.trace.packed", "Packed", 6, sum(Distribution::packed))
        .number("record.trace.dispatched", "Dispatched", 6, sum(Distribution::dispatched))
        .number("record.trace.returned", "Returned", 6, sum(Distribution::returned))
        .number("record.trace.destroyed", "Destroyed", 6, sum(Distribution::destroyed))
        .number("record.trace.left", "Packs still here", 6, sum(Distribution::left))
        .table();
  }

  private Function<TracedLot, String> sum(Function<Distribution, Optional<Quantity>> sum) {
    return each ->
        sum.apply(day.accounts().lot(each.judgement()).distribution())
            .map(Quantity::shown)
            .orElse(notRecorded());
  }

  private Optional<Block> parted(Judgement judgement) {
    return new TotalsSection(day, judgement)
        .balance()
        .map(text -> paragraph("record.trace.parted", "{0}: {1}", judgement.lot().code(), text));
  }

  private Optional<Block> checks() {
    return table("record.trace.checks", "Checks of the instrument", trace.checks())
        .column(TIME, 9, check -> time(check.at()))
        .column(WHAT, 10, check -> what(check.entry()))
        .number(VALUE, 6, check -> check.entry().shown())
        .number(ERROR, 6, check -> error(check.error(), check.passed()))
        .where(12, check -> check.entry().place())
        .ifAny();
  }

  /** The same in the stable form of version 1. */
  Map<String, Object> json() {
    return new Members()
        .with("flitchbook", JsonForm.VERSION)
        .with("book", day.book())
        .with("code", trace.code())
        .with("is", values.of(trace.roles()))
        .with("judgedAt", values.of(day.moment()))
        .with("lots", trace.lots().stream().map(this::lot))
        .with("checks", trace.checks().stream().map(this::check))
        .tree();
  }

  private Members lot(TracedLot traced) {
    Lot lot = traced.judgement().lot();
    return new Members()
        .with("lot", lot.code())
        .with("product", lot.product().map(Product::name).orElse(""))
        .with("verdict", traced.judgement().verdict().words())
        .with("touches", values.of(traced.touches()))
        .with("went", values.of(traced.went()))
        .with("grams", grams(day.accounts().lot(traced.judgement()).distribution()));
  }

  /** A sum that isn't known, since a weight is missing, has no key. */
  private static Members grams(Distribution sums) {
    return new Members()
        .with("green weight", sums.greenWeight().map(JsonForm::number))
        .with("packed", sums.packed().map(JsonForm::number))
        .with("dispatched", sums.dispatched().map(JsonForm::number))
        .with("returned", sums.returned().map(JsonForm::number))
        .with("destroyed", sums.destroyed().map(JsonForm::number))
        .with("left", sums.left().map(JsonForm::number));
  }

  private Members check(Register.Check check) {
    return values
        .entry(check.entry())
        .with("error", check.error().shown())
        .with("passed", check.passed());
  }
}

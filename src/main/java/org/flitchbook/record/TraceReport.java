package org.flitchbook.record;

import java.util.LinkedHashMap;
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
import org.flitchbook.reading.Entry;

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
        .column("record.trace.product", "Product", 14, each -> product(each.judgement()))
        .verdict(6, each -> each.judgement().verdict())
        .number("record.trace.green", "Green weight", 6, sum(Distribution::greenWeight))
        .table();
  }

  private String product(Judgement judgement) {
    return orNotRecorded(judgement.lot().product().map(p -> p.name()).orElse(""));
  }

  private Optional<Block> touches(TracedLot traced) {
    return table(
            Message.say("record.trace.touches", "{0}: what touched it", code(traced)),
            traced.touches())
        .column(WHAT, 10, touch -> say(touch.what()))
        .column(ITEM, 8, Touch::item)
        .number(VALUE, 6, this::value)
        .column(TIME, 12, this::time)
        .where(12, touch -> say(touch.place()))
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

  /** Something that left a lot or came back. */
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
        .where(12, each -> say(each.entry().place()))
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
        .map(text -> say("record.trace.parted", "{0}: {1}", judgement.lot().code(), text))
        .map(this::paragraph);
  }

  private Optional<Block> checks() {
    return table("record.trace.checks", "Checks of the instrument", trace.checks())
        .column(TIME, 9, check -> time(check.at()))
        .column(WHAT, 10, check -> what(check.entry()))
        .number(VALUE, 6, check -> check.entry().shown())
        .number(ERROR, 6, check -> error(check.error(), check.passed()))
        .where(12, check -> say(check.entry().place()))
        .ifAny();
  }

  /** The same in the stable form of version 1. */
  Map<String, Object> json() {
    Map<String, Object> tree = new LinkedHashMap<>();
    tree.put("flitchbook", JsonForm.VERSION);
    tree.put("book", day.book());
    tree.put("code", trace.code());
    tree.put("is", values.of(trace.roles()));
    tree.put("judgedAt", values.of(day.moment()));
    tree.put("lots", trace.lots().stream().map(this::lot).toList());
    tree.put("checks", trace.checks().stream().map(this::check).toList());
    return tree;
  }

  private Map<String, Object> lot(TracedLot traced) {
    Lot lot = traced.judgement().lot();
    Map<String, Object> tree = new LinkedHashMap<>();
    tree.put("lot", lot.code());
    tree.put("product", lot.product().map(product -> product.name()).orElse(""));
    tree.put("verdict", traced.judgement().verdict().words());
    tree.put("touches", values.of(traced.touches()));
    tree.put("went", values.of(traced.went()));
    tree.put("grams", grams(day.accounts().lot(traced.judgement()).distribution()));
    return tree;
  }

  /** A sum that isn't known, since a weight is missing, has no key. */
  private static Map<String, Object> grams(Distribution sums) {
    Map<String, Object> tree = new LinkedHashMap<>();
    put(tree, "green weight", sums.greenWeight());
    put(tree, "packed", sums.packed());
    put(tree, "dispatched", sums.dispatched());
    put(tree, "returned", sums.returned());
    put(tree, "destroyed", sums.destroyed());
    put(tree, "left", sums.left());
    return tree;
  }

  private static void put(Map<String, Object> tree, String key, Optional<Quantity> sum) {
    sum.ifPresent(grams -> tree.put(key, JsonForm.number(grams)));
  }

  private Map<String, Object> check(Register.Check check) {
    Map<String, Object> tree = values.entry(check.entry());
    tree.put("error", check.error().shown());
    tree.put("passed", check.passed());
    return tree;
  }
}

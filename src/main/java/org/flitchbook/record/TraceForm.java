package org.flitchbook.record;

import java.math.BigDecimal;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.flitchbook.lot.Lot;
import org.flitchbook.lot.Register;
import org.flitchbook.measure.Quantity;
import org.flitchbook.reading.Entry;
import org.flitchbook.sheet.What;

/** A trace as a tree of maps and lists, in the stable form of version 1. */
final class TraceForm {

  private static final List<What> BALANCED =
      List.of(What.GREEN_WEIGHT, What.PACKED, What.DISPATCHED, What.RETURNED, What.DESTROYED);

  private final DayJudged day;

  TraceForm(DayJudged day) {
    this.day = day;
  }

  Map<String, Object> of(Trace trace) {
    Map<String, Object> tree = new LinkedHashMap<>();
    tree.put("flitchbook", JsonForm.VERSION);
    tree.put("book", day.book());
    tree.put("code", trace.code());
    tree.put("is", trace.roles().stream().map(Role::word).toList());
    tree.put("judgedAt", time(day.moment()));
    tree.put("lots", trace.lots().stream().map(this::lot).toList());
    tree.put("checks", trace.checks().stream().map(this::check).toList());
    return tree;
  }

  private Map<String, Object> lot(Trace.TracedLot traced) {
    Lot lot = traced.judgement().lot();
    Map<String, Object> tree = new LinkedHashMap<>();
    tree.put("lot", lot.code());
    tree.put("product", lot.product().map(product -> product.name()).orElse(""));
    tree.put("verdict", traced.judgement().verdict().words());
    tree.put("touches", traced.touches().stream().map(this::touch).toList());
    tree.put("went", traced.went().stream().map(this::entry).toList());
    tree.put("grams", grams(new Balance(lot)));
    return tree;
  }

  private Map<String, Object> touch(Touch touch) {
    Map<String, Object> tree = new LinkedHashMap<>();
    tree.put("what", touch.what());
    tree.put("item", touch.item());
    tree.put("quantity", touch.quantity());
    tree.put("from", time(touch.from()));
    tree.put("to", time(touch.to()));
    tree.put("readings", touch.readings());
    tree.putAll(JsonForm.place(touch.place()));
    return tree;
  }

  private Map<String, Object> entry(Entry entry) {
    Map<String, Object> tree = new LinkedHashMap<>();
    tree.put("what", entry.what().word());
    tree.put("item", entry.item());
    tree.put("quantity", entry.shown());
    tree.put("time", time(entry.time().written()));
    tree.put("by", entry.by());
    tree.putAll(JsonForm.place(entry.place()));
    return tree;
  }

  /** A sum that isn't known, since a weight is missing, has no key. */
  private static Map<String, Object> grams(Balance balance) {
    Map<String, Object> tree = new LinkedHashMap<>();
    BALANCED.forEach(what -> put(tree, what.word(), balance.sum(what)));
    put(tree, "left", balance.left());
    return tree;
  }

  private static void put(Map<String, Object> tree, String key, Optional<Quantity> sum) {
    sum.map(JsonForm::number).ifPresent((BigDecimal grams) -> tree.put(key, grams));
  }

  private Map<String, Object> check(Register.Check check) {
    Map<String, Object> tree = entry(check.entry());
    tree.put("error", check.error().shown());
    tree.put("passed", check.passed());
    return tree;
  }

  private String time(Instant time) {
    return time.atZone(day.plan().establishment().zone()).toOffsetDateTime().toString();
  }
}

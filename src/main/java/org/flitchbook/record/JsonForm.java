package org.flitchbook.record;

import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.flitchbook.change.Change;
import org.flitchbook.check.Finding;
import org.flitchbook.check.Judgement;
import org.flitchbook.check.Measured;
import org.flitchbook.check.Part;
import org.flitchbook.input.Explained;
import org.flitchbook.input.Fault;
import org.flitchbook.input.Place;
import org.flitchbook.input.Stretch;
import org.flitchbook.measure.Quantity;
import org.flitchbook.plan.Limit;
import org.flitchbook.plan.Source;

/** The judgement as a tree of maps and lists, in the stable form of version 1. */
final class JsonForm {

  static final String VERSION = "1";

  /** More than any balance or logger can tell; the comparisons themselves are exact. */
  private static final int PLACES = 6;

  private JsonForm() {}

  static Map<String, Object> of(DayJudged day, List<Judgement> lots, List<Fault> faults) {
    Map<String, Object> tree = new LinkedHashMap<>();
    tree.put("flitchbook", VERSION);
    tree.put("book", day.book());
    tree.put("day", day.day().toString());
    tree.put(
        "judgedAt",
        day.moment().atZone(day.plan().establishment().zone()).toOffsetDateTime().toString());
    Map<String, Object> plan = new LinkedHashMap<>();
    plan.put("version", day.plan().version());
    plan.put("sha256", day.plan().sha256());
    tree.put("plan", plan);
    if (day.filing().isFiled()) {
      tree.put("filing", filing(day.filing()));
    }
    tree.put("lots", lots.stream().map(lot -> lot(day, lot)).toList());
    tree.put("faults", faults.stream().map(fault -> fault(day, fault)).toList());
    return tree;
  }

  private static Map<String, Object> filing(Filing filing) {
    Map<String, Object> tree = new LinkedHashMap<>();
    tree.put("revision", filing.revision());
    Map<String, Object> ledger = new LinkedHashMap<>();
    ledger.put("sequence", filing.line());
    ledger.put("hash", filing.hash());
    tree.put("ledger", ledger);
    if (filing.isAmendment()) {
      tree.put("amends", filing.amends());
      tree.put("changes", filing.changes().stream().map(JsonForm::change).toList());
    }
    tree.put("by", filing.by());
    tree.put("reason", filing.reason());
    return tree;
  }

  private static Map<String, Object> change(Change change) {
    Map<String, Object> tree = new LinkedHashMap<>();
    tree.put("change", change.what().word());
    tree.putAll(place(change.place()));
    if (change.what() == Change.What.CHANGED) {
      tree.put("lineBefore", change.before().line());
    }
    tree.put("before", change.old());
    tree.put("now", change.text());
    return tree;
  }

  private static Map<String, Object> lot(DayJudged day, Judgement judgement) {
    Map<String, Object> tree = new LinkedHashMap<>();
    tree.put("lot", judgement.lot().code());
    tree.put("product", judgement.lot().product().map(product -> product.name()).orElse(""));
    tree.put("class", judgement.lot().product().map(p -> p.productClass()).orElse(""));
    tree.put("verdict", judgement.verdict().words());
    tree.put("findings", judgement.findings().stream().map(JsonForm::finding).toList());
    tree.put("account", day.jsonTree().of(day.accounts().lot(judgement)));
    return tree;
  }

  private static Map<String, Object> finding(Finding finding) {
    Limit limit = finding.limit();
    Map<String, Object> tree = new LinkedHashMap<>();
    tree.put("limit", limit.id());
    tree.put("covers", limit.covers());
    tree.put("ccp", limit.monitoring().ccp());
    tree.put("step", limit.step().word());
    tree.put("rank", limit.rank().word());
    tree.put("kind", limit.kind().word());
    tree.put("verdict", finding.verdict().words());
    finding.measured().ifPresent(measured -> put(tree, measured));
    tree.put("formula", finding.formula());
    tree.put("reason", finding.reason());
    if (!finding.remark().isEmpty()) {
      tree.put("remark", finding.remark());
    }
    tree.put("source", source(limit.source()));
    limit.support().ifPresent(support -> tree.put("support", support));
    if (!limit.group().isEmpty()) {
      tree.put("group", limit.group());
    }
    tree.put("evidence", finding.evidence().stream().map(JsonForm::place).toList());
    if (!finding.parts().isEmpty()) {
      tree.put("parts", finding.parts().stream().map(JsonForm::part).toList());
    }
    return tree;
  }

  private static void put(Map<String, Object> tree, Measured measured) {
    tree.put("quantity", measured.quantity());
    tree.put("value", number(measured.value()));
    tree.put("unit", measured.value().unit().symbol());
    tree.put("bound", measured.bound());
    tree.put("limitValue", number(measured.limit()));
    tree.put("margin", number(measured.margin()));
    measured.interpolated().ifPresent(time -> tree.put("interpolated", time.value().rounded(1)));
    measured.uncertainty().ifPresent(half -> tree.put("uncertainty", number(half)));
  }

  private static Map<String, Object> part(Part part) {
    Map<String, Object> tree = new LinkedHashMap<>();
    tree.put("from", number(part.from()));
    tree.put("to", number(part.to()));
    tree.put("fromUnit", part.from().unit().symbol());
    tree.put("verdict", part.verdict().words());
    tree.put("probe", part.probe());
    part.measured().ifPresent(measured -> put(tree, measured));
    part.start().ifPresent(time -> tree.put("start", time.toString()));
    part.end().ifPresent(time -> tree.put("end", time.toString()));
    tree.put("reason", part.reason());
    return tree;
  }

  private static Map<String, Object> source(Source source) {
    Map<String, Object> tree = new LinkedHashMap<>();
    tree.put("document", source.document());
    tree.put("clause", source.clause());
    tree.put("edition", source.edition());
    tree.put("standing", source.standing().word());
    return tree;
  }

  static Map<String, Object> place(Place place) {
    Map<String, Object> tree = new LinkedHashMap<>();
    tree.put("file", place.file());
    tree.put("line", place.line());
    if (!place.column().isEmpty()) {
      tree.put("column", place.column());
    }
    return tree;
  }

  private static Map<String, Object> fault(DayJudged day, Fault fault) {
    Map<String, Object> tree = new LinkedHashMap<>();
    tree.put("rule", fault.rule());
    tree.put("severity", fault.severity().word());
    tree.put("lot", fault.lot());
    tree.putAll(place(fault.place()));
    tree.put("found", fault.found().in(day.plan().words()));
    tree.put("expected", fault.expected().in(day.plan().words()));
    fault.stretch().ifPresent(stretch -> put(tree, stretch));
    fault.explained().ifPresent(said -> tree.put("explained", explained(said)));
    return tree;
  }

  private static void put(Map<String, Object> tree, Stretch stretch) {
    tree.put("from", stretch.from().toString());
    tree.put("until", stretch.until().toString());
  }

  private static Map<String, Object> explained(Explained said) {
    Map<String, Object> tree = new LinkedHashMap<>(place(said.place()));
    tree.put("by", said.by());
    tree.put("why", said.why());
    said.choice().ifPresent(choice -> tree.put("choice", choice.name().toLowerCase(Locale.ROOT)));
    tree.put("evidence", said.evidence().stream().map(JsonForm::place).toList());
    tree.put("borneOut", said.isBorneOut());
    if (!said.isBorneOut()) {
      tree.put("lacks", said.lacks());
    }
    return tree;
  }

  static BigDecimal number(Quantity quantity) {
    BigDecimal rounded = quantity.value().rounded(PLACES).stripTrailingZeros();
    return rounded.scale() < 0 ? rounded.setScale(0) : rounded;
  }
}

package org.flitchbook.record;

import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Stream;
import org.flitchbook.change.Change;
import org.flitchbook.check.CureLine;
import org.flitchbook.check.Finding;
import org.flitchbook.check.Judgement;
import org.flitchbook.check.Measured;
import org.flitchbook.check.Part;
import org.flitchbook.input.Explained;
import org.flitchbook.input.Fault;
import org.flitchbook.input.Place;
import org.flitchbook.input.Stretch;
import org.flitchbook.measure.Quantity;
import org.flitchbook.message.Language;
import org.flitchbook.message.Listing;
import org.flitchbook.message.Message;
import org.flitchbook.plan.Limit;
import org.flitchbook.plan.Source;
import org.flitchbook.reading.Entry;

/**
 * The judgement as a tree of maps and lists, in the stable form of version 1. What is said stands
 * in it twice: as text in the language of the plan, and under {@code said} by its ids and
 * arguments, which no wording changes.
 */
final class JsonForm {

  static final String VERSION = "1";

  /** The form of a record's JSON: 1 is that of version 0.1.0, which names none. */
  private static final int FORM = 2;

  /** More than any balance or logger can tell; the comparisons themselves are exact. */
  private static final int PLACES = 6;

  private final DayJudged day;
  private final Language language;

  private JsonForm(DayJudged day) {
    this.day = day;
    this.language = day.plan().words();
  }

  static Map<String, Object> of(DayJudged day, List<Judgement> lots, List<Fault> faults) {
    Map<String, Object> tree = new LinkedHashMap<>();
    tree.put("flitchbook", VERSION);
    tree.put(Records.FORM, FORM);
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
      tree.put("filing", filing(day.filing(), day.plan().words()));
    }
    JsonForm form = new JsonForm(day);
    tree.put("lots", lots.stream().map(form::lot).toList());
    tree.put("faults", faults.stream().map(form::fault).toList());
    return tree;
  }

  private static Map<String, Object> filing(Filing filing, Language language) {
    Map<String, Object> tree = new LinkedHashMap<>();
    tree.put("revision", filing.revision());
    Map<String, Object> ledger = new LinkedHashMap<>();
    ledger.put("sequence", filing.line());
    ledger.put("hash", filing.hash());
    tree.put("ledger", ledger);
    if (filing.isAmendment()) {
      tree.put("amends", filing.amends());
      tree.put(
          "changes", filing.changes().stream().map(change -> change(change, language)).toList());
    }
    tree.put("by", filing.by());
    tree.put("reason", filing.reason());
    return tree;
  }

  private static Map<String, Object> change(Change change, Language language) {
    Map<String, Object> tree = new LinkedHashMap<>();
    tree.put("change", change.type().word());
    tree.putAll(
        place(change.name().map(name -> Place.of(name.in(language))).orElse(change.place())));
    if (change.type() == Change.Type.CHANGED) {
      tree.put("lineBefore", change.before().line());
    }
    tree.put("before", change.old().map(old -> old.in(language)).orElse(""));
    tree.put("now", change.text().map(text -> text.in(language)).orElse(""));
    return tree;
  }

  private Map<String, Object> lot(Judgement judgement) {
    Map<String, Object> tree = new LinkedHashMap<>();
    tree.put("lot", judgement.lot().code());
    tree.put("product", judgement.lot().product().map(product -> product.name()).orElse(""));
    tree.put("class", judgement.lot().product().map(p -> p.productClass()).orElse(""));
    tree.put("verdict", judgement.verdict().words());
    tree.put("findings", judgement.findings().stream().map(this::finding).toList());
    tree.put("cureSums", CureLine.of(judgement).stream().map(this::cureLine).toList());
    tree.put("account", day.jsonTree().of(day.accounts().lot(judgement)));
    return tree;
  }

  private Map<String, Object> cureLine(CureLine line) {
    Map<String, Object> tree = new LinkedHashMap<>();
    if (line instanceof CureLine.Weighed weighed) {
      Entry entry = weighed.entry();
      tree.put("weighed", entry.what().json());
      Stream.of(Map.entry("piece", entry.piece()), Map.entry("item", entry.item()))
          .filter(each -> !each.getValue().isEmpty())
          .forEach(each -> tree.put(each.getKey(), each.getValue()));
      tree.put("value", number(entry.amount()));
      tree.put("unit", entry.amount().unit().symbol());
      tree.putAll(place(entry.place()));
    } else if (line instanceof CureLine.Summed summed) {
      tree.put("finding", summed.finding().limit().id());
      put(tree, summed.measured());
      tree.put("formula", summed.formula().json());
      tree.put("verdict", summed.finding().verdict().words());
    } else if (line instanceof CureLine.Provable proved) {
      tree.put("provable", number(proved.half()));
      tree.put("unit", proved.half().unit().symbol());
    }
    return tree;
  }

  private Map<String, Object> finding(Finding finding) {
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
    tree.put("formula", text(finding.formulas()));
    tree.put("reason", text(finding.reasons()));
    if (!finding.remarks().isEmpty()) {
      tree.put("remark", text(finding.remarks()));
    }
    said(tree, finding.reasons(), finding.remarks(), finding.formulas());
    tree.put("source", source(limit.source()));
    limit.support().ifPresent(support -> tree.put("support", support));
    if (!limit.group().isEmpty()) {
      tree.put("group", limit.group());
    }
    tree.put("evidence", finding.evidence().stream().map(JsonForm::place).toList());
    if (!finding.parts().isEmpty()) {
      tree.put("parts", finding.parts().stream().map(this::part).toList());
    }
    return tree;
  }

  private String text(List<Message> messages) {
    return Listing.semicolons(messages).in(language);
  }

  private static void said(
      Map<String, Object> tree,
      List<Message> reasons,
      List<Message> remarks,
      List<Message> formulas) {
    Map<String, Object> said = new LinkedHashMap<>();
    said.put("reasons", Listing.semicolons(reasons).json());
    said.put("remarks", Listing.semicolons(remarks).json());
    said.put("formulas", Listing.semicolons(formulas).json());
    said.values().removeIf(List.of()::equals);
    if (!said.isEmpty()) {
      tree.put("said", said);
    }
  }

  /** The quantity is a word of the form, and English like its keys. */
  private static void put(Map<String, Object> tree, Measured measured) {
    tree.put("quantity", measured.quantity().in(Language.ENGLISH));
    tree.put("value", number(measured.value()));
    tree.put("unit", measured.value().unit().symbol());
    tree.put("bound", measured.bound());
    tree.put("limitValue", number(measured.limit()));
    tree.put("margin", number(measured.margin()));
    measured.interpolated().ifPresent(time -> tree.put("interpolated", time.value().rounded(1)));
    measured.uncertainty().ifPresent(half -> tree.put("uncertainty", number(half)));
  }

  private Map<String, Object> part(Part part) {
    Map<String, Object> tree = new LinkedHashMap<>();
    tree.put("from", number(part.from()));
    tree.put("to", number(part.to()));
    tree.put("fromUnit", part.from().unit().symbol());
    tree.put("verdict", part.verdict().words());
    tree.put("probe", part.probe());
    part.measured().ifPresent(measured -> put(tree, measured));
    part.start().ifPresent(time -> tree.put("start", time.toString()));
    part.end().ifPresent(time -> tree.put("end", time.toString()));
    tree.put("reason", text(part.reasons()));
    said(tree, part.reasons(), List.of(), List.of());
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

  private Map<String, Object> fault(Fault fault) {
    Map<String, Object> tree = new LinkedHashMap<>();
    tree.put("rule", fault.rule());
    tree.put("severity", fault.severity().word());
    tree.put("lot", fault.lot());
    tree.putAll(place(fault.place()));
    tree.put("found", fault.found().in(language));
    tree.put("expected", fault.expected().in(language));
    Map<String, Object> said = new LinkedHashMap<>();
    said.put("found", fault.found().json());
    said.put("expected", fault.expected().json());
    tree.put("said", said);
    fault.stretch().ifPresent(stretch -> put(tree, stretch));
    fault.explained().ifPresent(by -> tree.put("explained", explained(by)));
    return tree;
  }

  private static void put(Map<String, Object> tree, Stretch stretch) {
    tree.put("from", stretch.from().toString());
    tree.put("until", stretch.until().toString());
  }

  private Map<String, Object> explained(Explained said) {
    Map<String, Object> tree = new LinkedHashMap<>(place(said.place()));
    tree.put("by", said.by());
    tree.put("why", said.why());
    said.choice().ifPresent(choice -> tree.put("choice", choice.name().toLowerCase(Locale.ROOT)));
    tree.put("evidence", said.evidence().stream().map(JsonForm::place).toList());
    tree.put("borneOut", said.isBorneOut());
    said.lacks()
        .ifPresent(
            lacks -> {
              tree.put("lacks", lacks.in(language));
              tree.put("lacksSaid", lacks.json());
            });
    return tree;
  }

  static BigDecimal number(Quantity quantity) {
    BigDecimal rounded = quantity.value().rounded(PLACES).stripTrailingZeros();
    return rounded.scale() < 0 ? rounded.setScale(0) : rounded;
  }
}

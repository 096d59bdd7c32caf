package org.flitchbook.record;

import java.math.BigDecimal;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.flitchbook.check.CureLine;
import org.flitchbook.check.Finding;
import org.flitchbook.check.Judgement;
import org.flitchbook.check.Measured;
import org.flitchbook.check.Part;
import org.flitchbook.input.Explained;
import org.flitchbook.input.Fault;
import org.flitchbook.input.Place;
import org.flitchbook.measure.Quantity;
import org.flitchbook.message.Language;
import org.flitchbook.message.Listing;
import org.flitchbook.message.Message;
import org.flitchbook.plan.Limit;
import org.flitchbook.plan.Plan;
import org.flitchbook.plan.Product;
import org.flitchbook.reading.Entry;
import org.flitchbook.record.DayJudged.Filing;
import org.flitchbook.record.JsonTree.Members;

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
  private final JsonTree values;

  private JsonForm(DayJudged day) {
    this.day = day;
    this.language = day.plan().words();
    this.values = day.jsonTree();
  }

  static Map<String, Object> of(DayJudged day, List<Judgement> lots, List<Fault> faults) {
    JsonForm form = new JsonForm(day);
    Plan plan = day.plan();
    return new Members()
        .with("flitchbook", VERSION)
        .with(Records.FORM, FORM)
        .with("book", day.book())
        .with("day", day.day().toString())
        .with("judgedAt", form.values.of(day.moment()))
        .with("plan", new Members().with("version", plan.version()).with("sha256", plan.sha256()))
        .with(
            FilingForm.FILING,
            Optional.of(day.filing())
                .filter(Filing::isFiled)
                .map(filing -> FilingForm.of(filing, form.language)))
        .with("lots", lots.stream().map(form::lot))
        .with("faults", faults.stream().map(form::fault))
        .tree();
  }

  private Members lot(Judgement judgement) {
    Optional<Product> product = judgement.lot().product();
    return new Members()
        .with("lot", judgement.lot().code())
        .with("product", product.map(Product::name).orElse(""))
        .with("class", product.map(Product::productClass).orElse(""))
        .with("verdict", judgement.verdict().words())
        .with("findings", judgement.findings().stream().map(this::finding))
        .with("cureSums", CureLine.of(judgement).stream().map(JsonForm::cureLine))
        .with("account", values.of(day.accounts().lot(judgement)));
  }

  private static Members cureLine(CureLine line) {
    if (line instanceof CureLine.Weighed weighed) {
      Entry entry = weighed.entry();
      return new Members()
          .with("weighed", entry.what().json())
          .unlessEmpty("piece", entry.piece())
          .unlessEmpty("item", entry.item())
          .with("value", number(entry.amount()))
          .with("unit", entry.amount().unit().symbol())
          .and(place(entry.place()));
    }
    if (line instanceof CureLine.Provable proved) {
      return new Members()
          .with("provable", number(proved.half()))
          .with("unit", proved.half().unit().symbol());
    }
    CureLine.Summed summed = (CureLine.Summed) line;
    return new Members()
        .with("finding", summed.finding().limit().id())
        .and(measured(summed.measured()))
        .with("formula", summed.formula().json())
        .with("verdict", summed.finding().verdict().words());
  }

  private Members finding(Finding finding) {
    Limit limit = finding.limit();
    return new Members()
        .with("limit", limit.id())
        .with("covers", limit.covers())
        .with("ccp", limit.monitoring().ccp())
        .with("step", limit.step().word())
        .with("rank", limit.rank().word())
        .with("kind", limit.kind().word())
        .with("verdict", finding.verdict().words())
        .and(finding.measured().map(JsonForm::measured).orElseGet(Members::new))
        .with("formula", text(finding.formulas()))
        .with("reason", text(finding.reasons()))
        .unlessEmpty("remark", text(finding.remarks()))
        .and(said(finding.reasons(), finding.remarks(), finding.formulas()))
        .with("source", values.of(limit.source()))
        .with("support", limit.support())
        .unlessEmpty("group", limit.group())
        .with("evidence", values.of(finding.evidence()))
        .unlessEmpty("parts", finding.parts().stream().map(each -> part(each).tree()).toList());
  }

  private String text(List<Message> messages) {
    return Listing.semicolons(messages).in(language);
  }

  private static Members said(
      List<Message> reasons, List<Message> remarks, List<Message> formulas) {
    Members said =
        new Members()
            .unlessEmpty("reasons", Listing.semicolons(reasons).json())
            .unlessEmpty("remarks", Listing.semicolons(remarks).json())
            .unlessEmpty("formulas", Listing.semicolons(formulas).json());
    return new Members().unlessEmpty("said", said.tree());
  }

  /** The quantity is a word of the form, and English like its keys. */
  private static Members measured(Measured measured) {
    return new Members()
        .with("quantity", measured.quantity().in(Language.ENGLISH))
        .with("value", number(measured.value()))
        .with("unit", measured.value().unit().symbol())
        .with("bound", measured.bound())
        .with("limitValue", number(measured.limit()))
        .with("margin", number(measured.margin()))
        .with("interpolated", measured.interpolated().map(time -> time.value().rounded(1)))
        .with("uncertainty", measured.uncertainty().map(JsonForm::number));
  }

  private Members part(Part part) {
    return new Members()
        .with("from", number(part.from()))
        .with("to", number(part.to()))
        .with("fromUnit", part.from().unit().symbol())
        .with("verdict", part.verdict().words())
        .with("probe", part.probe())
        .and(part.measured().map(JsonForm::measured).orElseGet(Members::new))
        .with("start", part.start().map(Instant::toString))
        .with("end", part.end().map(Instant::toString))
        .with("reason", text(part.reasons()))
        .and(said(part.reasons(), List.of(), List.of()));
  }

  static Members place(Place place) {
    return new Members()
        .with("file", place.file())
        .with("line", place.line())
        .unlessEmpty("column", place.column());
  }

  private Members fault(Fault fault) {
    Members said =
        new Members().with("found", fault.found().json()).with("expected", fault.expected().json());
    return new Members()
        .with("rule", fault.rule())
        .with("severity", fault.severity().word())
        .with("lot", fault.lot())
        .and(place(fault.place()))
        .with("found", fault.found().in(language))
        .with("expected", fault.expected().in(language))
        .with("said", said)
        .with("from", fault.stretch().map(stretch -> stretch.from().toString()))
        .with("until", fault.stretch().map(stretch -> stretch.until().toString()))
        .with("explained", fault.explained().map(this::explained));
  }

  private Members explained(Explained said) {
    return place(said.place())
        .with("by", said.by())
        .with("why", said.why())
        .with("choice", said.choice().map(choice -> choice.name().toLowerCase(Locale.ROOT)))
        .with("evidence", values.of(said.evidence()))
        .with("borneOut", said.isBorneOut())
        .with("lacks", said.lacks().map(lacks -> lacks.in(language)))
        .with("lacksSaid", said.lacks().map(lacks -> lacks.json()));
  }

  static BigDecimal number(Quantity quantity) {
    BigDecimal rounded = quantity.value().rounded(PLACES).stripTrailingZeros();
    return rounded.scale() < 0 ? rounded.setScale(0) : rounded;
  }
}

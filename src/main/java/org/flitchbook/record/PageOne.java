package org.flitchbook.record;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.flitchbook.check.Checks;
import org.flitchbook.check.Finding;
import org.flitchbook.check.Judgement;
import org.flitchbook.check.Verdict;
import org.flitchbook.document.Banner;
import org.flitchbook.document.Block;
import org.flitchbook.document.Caution;
import org.flitchbook.document.Cell;
import org.flitchbook.document.Fact;
import org.flitchbook.document.Facts;
import org.flitchbook.document.SignatureBox;
import org.flitchbook.document.Signatures;
import org.flitchbook.document.Target;
import org.flitchbook.lot.Lot;
import org.flitchbook.lot.Stay;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Ratio;
import org.flitchbook.measure.Unit;
import org.flitchbook.plan.Limit;
import org.flitchbook.plan.Product;
import org.flitchbook.plan.Rank;
import org.flitchbook.plan.Standing;
import org.flitchbook.reading.Entry;
import org.flitchbook.sheet.Step;
import org.flitchbook.sheet.What;

/** The first page of a batch record: the verdict and all that it rests on, in one look. */
final class PageOne {

  private final DayJudged day;
  private final Judgement judgement;
  private final Lot lot;
  private final Phrases phrases;

  PageOne(DayJudged day, Judgement judgement) {
    this.day = day;
    this.judgement = judgement;
    this.lot = judgement.lot();
    this.phrases = day.phrases();
  }

  List<Block> blocks() {
    List<Block> blocks = new ArrayList<>();
    blocks.add(
        new Banner(
            Phrases.tone(judgement.verdict()),
            phrases.verdict(judgement.verdict()).toUpperCase(Locale.ROOT),
            phrases.bound().bound(sentence())));
    blocks.add(facts());
    limits().ifPresent(blocks::add);
    if (judgement.deviations().isEmpty()) {
      blocks.add(phrases.paragraph(phrases.say("record.page-one.no-deviation")));
    }
    remarks().ifPresent(blocks::add);
    doubts().ifPresent(blocks::add);
    blocks.add(new Caution(phrases.say("record.caution")));
    blocks.add(signatures());
    return blocks;
  }

  private String sentence() {
    String plan = day.plan().version();
    List<Finding> missed = judgement.deviations();
    if (lot.product().isEmpty()) {
      return phrases.say("record.page-one.no-product");
    }
    if (!missed.isEmpty()) {
      String limits = String.join("; ", missed.stream().map(this::missed).toList());
      return phrases.count("record.page-one.deviations", missed.size(), plan, limits);
    }
    return switch (judgement.verdict()) {
      case MET -> phrases.say("record.page-one.met", plan);
      case PENDING -> phrases.say("record.page-one.pending", plan);
      default -> phrases.say("record.page-one.to-explain");
    };
  }

  private String missed(Finding finding) {
    return phrases.say(
        "record.page-one.missed", finding.limit().name(), phrases.verdict(finding.verdict()));
  }

  private Facts facts() {
    List<Fact> facts = new ArrayList<>();
    fact(
        facts,
        "record.page-one.product",
        lot.product().map(p -> p.name() + " (" + p.code() + ")").orElse(""));
    fact(
        facts,
        "record.page-one.class",
        lot.product().map(p -> phrases.word("class", p.productClass())).orElse(""));
    fact(facts, "record.page-one.quantity", quantity());
    fact(facts, "record.page-one.cure", lot.product().map(this::cutAndCure).orElse(""));
    fact(facts, "record.page-one.from-to", passage());
    fact(
        facts,
        "record.page-one.regime",
        phrases.word("regime", day.plan().establishment().regime()));
    fact(
        facts,
        "record.page-one.plan",
        phrases.say(
            "record.page-one.plan-version",
            day.plan().version(),
            day.plan().signed(),
            day.plan().signedBy()));
    fact(facts, "record.page-one.reassess-by", day.plan().reassessBy().toString());
    fact(facts, "record.page-one.judged-as-of", phrases.time(day.moment()));
    fact(facts, "record.page-one.release", release());
    return new Facts(2, facts);
  }

  private String cutAndCure(Product product) {
    return phrases.say(
        "record.page-one.cut-and-cure",
        phrases.word("cut", product.cut()),
        phrases.word("method", product.cureMethod()));
  }

  private void fact(List<Fact> facts, String key, String value) {
    facts.add(new Fact(phrases.say(key), phrases.bound().of(phrases.orNotRecorded(value))));
  }

  private String quantity() {
    Optional<Entry> last = lot.last(What.WEIGHT);
    List<Entry> green = lot.all(What.GREEN_WEIGHT);
    if (green.isEmpty()) {
      return "";
    }
    Ratio sum =
        green.stream().map(entry -> entry.amount().inBase()).reduce(Ratio.ZERO, Ratio::plus);
    String weighed = new Quantity(sum, Unit.GRAM).shown();
    return last.map(entry -> after(weighed, entry))
        .orElseGet(() -> phrases.say("record.page-one.green", weighed));
  }

  private String after(String green, Entry weight) {
    String step = phrases.word("step", weight.sheet().word());
    return phrases.say("record.page-one.green-and-after", green, weight.shown(), step);
  }

  private String passage() {
    if (lot.stays().isEmpty()) {
      return "";
    }
    Stay first = lot.stays().get(0);
    Stay last = lot.stays().get(lot.stays().size() - 1);
    String from = phrases.step(first.step()) + " " + time(first.into());
    String to =
        last.out()
            .map(out -> phrases.step(last.step()) + " " + time(out))
            .orElseGet(() -> phrases.say("record.page-one.still-in", phrases.step(last.step())));
    return from + " – " + to;
  }

  private String time(Entry entry) {
    return phrases.time(entry.time().written());
  }

  private String release() {
    if (!judgement.deviations().isEmpty()) {
      return phrases.count("record.page-one.on-hold", judgement.deviations().size());
    }
    return lot.first(Step.RELEASE.into())
        .map(review -> phrases.say("record.page-one.reviewed", time(review), review.by()))
        .orElseGet(
            () ->
                judgement.verdict() == Verdict.MET
                    ? phrases.say("record.page-one.not-reviewed")
                    : phrases.say("record.page-one.not-to-leave"));
  }

  private Optional<Block> limits() {
    Grid grid =
        phrases
            .grid("record.page-one.limits")
            .head("record.page-one.ccp", 0)
            .head("record.head.limit", 26)
            .number("record.worst-value", 0)
            .number("record.head.limit-value", 0)
            .number("record.page-one.margin", 0)
            .head("record.head.verdict", 0)
            .head("record.page-one.source", 14);
    for (Finding finding : Checks.inOrder(judgement.findings())) {
      grid.row(row(grid, finding));
    }
    return grid.isEmpty() ? Optional.empty() : Optional.of(grid.table());
  }

  private Cell[] row(Grid grid, Finding finding) {
    Limit limit = finding.limit();
    String ccp = limit.monitoring().ccp();
    return new Cell[] {
      grid.cell(ccp.isEmpty() ? "–" : ccp),
      grid.leading(
          limit.rank() == Rank.CRITICAL ? limit.name() : phrases.ranked(limit),
          new Target.Section(phrases.say(BatchRecord.section(limit.step())))),
      grid.cell(Phrases.worst(finding)),
      grid.cell(finding.measured().map(phrases::bound).orElse("–")),
      grid.cell(Phrases.margin(finding)),
      phrases.cell(finding.verdict()),
      grid.cell(source(limit))
    };
  }

  private String source(Limit limit) {
    Standing standing = limit.source().standing();
    boolean plain = standing == Standing.READ || standing == Standing.PLAN;
    return day.plan().cited(limit.source())
        + (plain ? "" : " (" + phrases.word("standing", standing.word()) + ")");
  }

  /** Where the remarks stand; in full they would push the signatures off the page. */
  private Optional<Block> remarks() {
    List<String> names =
        judgement.findings().stream()
            .filter(finding -> !finding.remark().isEmpty())
            .map(finding -> finding.limit().name())
            .toList();
    return names.isEmpty()
        ? Optional.empty()
        : Optional.of(
            phrases.paragraph(
                phrases.say(
                    "record.page-one.remarks",
                    String.join("; ", names),
                    phrases.say("record.batch.deviations"))));
  }

  private Optional<Block> doubts() {
    int open = judgement.openFaults().size();
    return open == 0
        ? Optional.empty()
        : Optional.of(
            phrases.paragraph(
                phrases.count("record.page-one.doubts", open, phrases.say("record.batch.doubts"))));
  }

  private Signatures signatures() {
    String maker =
        lot.first(What.CURING_SALT)
            .flatMap(entry -> day.plan().person(entry.by()))
            .map(person -> person.name())
            .orElse("");
    boolean alone = day.plan().establishment().soleOperator();
    return new Signatures(
        List.of(
            new SignatureBox(
                "prepared",
                phrases.say("record.page-one.prepared-by"),
                maker,
                phrases.say("record.page-one.prepared")),
            new SignatureBox(
                "reviewed",
                phrases.say(alone ? "record.page-one.review-alone" : "record.page-one.review"),
                "",
                phrases.say("record.page-one.complete"))));
  }
}

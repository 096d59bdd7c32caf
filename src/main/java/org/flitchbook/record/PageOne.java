package org.flitchbook.record;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Predicate;
import org.flitchbook.check.Finding;
import org.flitchbook.check.Judgement;
import org.flitchbook.check.Verdict;
import org.flitchbook.document.Banner;
import org.flitchbook.document.Block;
import org.flitchbook.document.Caution;
import org.flitchbook.document.Fact;
import org.flitchbook.document.Facts;
import org.flitchbook.document.SignatureBox;
import org.flitchbook.document.Signatures;
import org.flitchbook.lot.Lot;
import org.flitchbook.lot.Stay;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Ratio;
import org.flitchbook.measure.Unit;
import org.flitchbook.plan.Product;
import org.flitchbook.reading.Entry;
import org.flitchbook.sheet.Step;
import org.flitchbook.sheet.What;

/** The first page of a batch record: the verdict and all that it rests on, in one look. */
final class PageOne {

  private final DayJudged day;
  private final Judgement judgement;
  private final Lot lot;
  private final Phrases phrases;
  private final Keeping keeping;

  PageOne(DayJudged day, Judgement judgement) {
    this.day = day;
    this.judgement = judgement;
    this.lot = judgement.lot();
    this.phrases = day.phrases();
    this.keeping = new Keeping(day, List.of(lot));
  }

  List<Block> blocks() {
    List<Block> blocks = new ArrayList<>();
    blocks.add(
        new Banner(
            Phrases.tone(judgement.verdict()),
            phrases.verdict(judgement.verdict()).toUpperCase(Locale.ROOT),
            phrases.bound().bound(sentence() + " " + asOf())));
    blocks.add(facts());
    blocks.addAll(new LimitTable(day, judgement).blocks(keeping.rule().orElse("")));
    blocks.add(standing());
    blocks.add(new Caution(phrases.say("record.caution")));
    blocks.add(signatures());
    return blocks;
  }

  /** How good the evidence is, what is open, what is to come, and what is told further on. */
  private Facts standing() {
    List<Fact> facts = new ArrayList<>();
    fact(facts, "record.page-one.evidence", new EvidenceWords(day, judgement).sentence());
    List<String> missed = judgement.deviations().stream().map(this::missed).toList();
    String none = phrases.say("record.page-one.no-deviation");
    fact(facts, "record.page-one.open", missed.isEmpty() ? none : String.join("; ", missed));
    List<String> pending = names(finding -> finding.verdict() == Verdict.PENDING);
    if (!pending.isEmpty()) {
      fact(facts, "record.page-one.to-come", String.join("; ", pending));
    }
    List<String> remarked = names(finding -> !finding.remark().isEmpty());
    if (!remarked.isEmpty()) {
      String there = phrases.say("record.batch.deviations");
      String limits = String.join("; ", remarked);
      fact(facts, "record.page-one.to-note", phrases.say("record.page-one.see", limits, there));
    }
    int open = judgement.openFaults().size();
    if (open > 0) {
      String there = phrases.say("record.batch.doubts");
      fact(facts, "record.batch.doubts", phrases.count("record.page-one.doubts", open, there));
    }
    return new Facts(1, facts);
  }

  private List<String> names(Predicate<Finding> wanted) {
    return judgement.findings().stream()
        .filter(wanted)
        .map(finding -> finding.limit().name())
        .distinct()
        .toList();
  }

  private String sentence() {
    String plan = day.plan().version();
    List<Finding> missed = judgement.deviations();
    if (lot.product().isEmpty()) {
      return phrases.say("record.page-one.no-product");
    }
    if (!missed.isEmpty()) {
      return phrases.count("record.page-one.deviations", missed.size(), plan);
    }
    return switch (judgement.verdict()) {
      case MET -> phrases.say("record.page-one.met", plan);
      case PENDING -> phrases.say("record.page-one.pending", plan);
      default -> phrases.say("record.page-one.to-explain");
    };
  }

  private String asOf() {
    return phrases.say("record.page-one.judged-as-of", phrases.time(day.moment()));
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
    fact(facts, "record.page-one.release", release());
    fact(facts, "record.page-one.keep", keeping.until());
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
                alone ? alone() : phrases.say("record.page-one.complete"))));
  }

  /** Who reviews what he made himself says how long after. */
  private String alone() {
    Optional<Entry> review = lot.first(Step.RELEASE.into());
    String complete = phrases.say("record.page-one.complete");
    return review
        .flatMap(this::hoursAfter)
        .map(hours -> complete + " " + phrases.count("record.page-one.alone-after", hours))
        .orElse(complete + " " + phrases.say("record.page-one.alone"));
  }

  private Optional<Long> hoursAfter(Entry review) {
    return lot.entries().stream()
        .filter(entry -> entry.time().isBefore(review.time()))
        .reduce((earlier, later) -> later)
        .map(last -> last.time().writtenTo(review.time()).toHours());
  }
}

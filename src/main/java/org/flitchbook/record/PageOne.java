package org.flitchbook.record;

import static org.flitchbook.message.Message.say;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Predicate;
import org.flitchbook.check.Finding;
import org.flitchbook.check.Judgement;
import org.flitchbook.check.Verdict;
import org.flitchbook.document.Block;
import org.flitchbook.document.Facts;
import org.flitchbook.document.Signatures;
import org.flitchbook.lot.Lot;
import org.flitchbook.lot.Stay;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Ratio;
import org.flitchbook.measure.Unit;
import org.flitchbook.message.Message;
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
        new Block.Banner(
            Phrases.tone(judgement.verdict()),
            phrases.verdict(judgement.verdict()).toUpperCase(Locale.ROOT),
            phrases.bound().bound(sentence() + " " + asOf())));
    blocks.add(facts());
    blocks.addAll(new LimitTable(day, judgement).blocks(keeping.rule().orElse("")));
    blocks.add(standing());
    blocks.add(
        new Block.Caution(
            phrases.say(
                "record.caution",
                "Curing salt is toxic in excess: weigh it, never spoon it. The limits are those of"
                    + " the plan named here; confirm them with the local authority or a process"
                    + " authority. This record says which limits were met, not met or not shown. It"
                    + " does not say that food is safe, and it replaces no licensed decision.")));
    blocks.add(signatures());
    return blocks;
  }

  /** How good the evidence is, what is open, what is to come, and what is told further on. */
  private Facts standing() {
    List<Facts.Fact> facts = new ArrayList<>();
    fact(
        facts,
        say("record.page-one.evidence", "Evidence"),
        new EvidenceWords(day, judgement).sentence());
    List<String> missed = judgement.deviations().stream().map(this::missed).toList();
    String none = phrases.say("record.page-one.no-deviation", "none");
    fact(
        facts,
        say("record.page-one.open", "Open deviations"),
        missed.isEmpty() ? none : String.join("; ", missed));
    List<String> pending = names(finding -> finding.verdict() == Verdict.PENDING);
    if (!pending.isEmpty()) {
      fact(facts, say("record.page-one.to-come", "Pending"), String.join("; ", pending));
    }
    List<String> remarked = names(finding -> !finding.remarks().isEmpty());
    if (!remarked.isEmpty()) {
      String there = phrases.say("record.batch.deviations", "Deviations and remarks");
      String limits = String.join("; ", remarked);
      fact(
          facts,
          say("record.page-one.to-note", "To note"),
          phrases.say("record.page-one.see", "{0}: see \"{1}\"", limits, there));
    }
    int open = judgement.openFaults().size();
    if (open > 0) {
      String there = phrases.say("record.batch.doubts", "Data in doubt");
      fact(
          facts,
          say("record.batch.doubts", "Data in doubt"),
          phrases.count(
              "record.page-one.doubts",
              open,
              "{0} fault to be explained, see \"{1}\"",
              "{0} faults to be explained, see \"{1}\"",
              there));
    }
    return new Facts(1, facts);
  }

  private List<String> names(Predicate<Finding> wanted) {
    return judgement.findings().stream()
        .filter(wanted)
        .map(finding -> phrases.name(finding.limit()))
        .distinct()
        .toList();
  }

  private String sentence() {
    String plan = day.plan().version();
    List<Finding> missed = judgement.deviations();
    if (lot.product().isEmpty()) {
      return phrases.say(
          "record.page-one.no-product",
          "No product is on record, so that no limit could be judged.");
    }
    if (!missed.isEmpty()) {
      return phrases.count(
          "record.page-one.deviations",
          missed.size(),
          "One open deviation from plan version {1}: the lot is held.",
          "{0} open deviations from plan version {1}: the lot is held.",
          plan);
    }
    return switch (judgement.verdict()) {
      case MET ->
          phrases.say(
              "record.page-one.met", "Every critical limit of plan version {0} was met.", plan);
      case PENDING ->
          phrases.say(
              "record.page-one.pending",
              "No critical limit of plan version {0} is missed so far; steps are to come.",
              plan);
      default ->
          phrases.say(
              "record.page-one.to-explain",
              "The readings leave something to be explained before any release.");
    };
  }

  private String asOf() {
    return phrases.say(
        "record.page-one.judged-as-of", "Judged as of {0}.", phrases.time(day.moment()));
  }

  private String missed(Finding finding) {
    return phrases.say(
        "record.page-one.missed",
        "{0} {1}",
        phrases.name(finding.limit()),
        phrases.verdict(finding.verdict()));
  }

  private Facts facts() {
    List<Facts.Fact> facts = new ArrayList<>();
    fact(
        facts,
        say("record.page-one.product", "Product"),
        lot.product().map(p -> p.name() + " (" + p.code() + ")").orElse(""));
    fact(
        facts,
        say("record.page-one.class", "Class"),
        lot.product().map(p -> phrases.word("class", p.productClass())).orElse(""));
    fact(facts, say("record.page-one.quantity", "Quantity"), quantity());
    fact(
        facts, say("record.page-one.cure", "Cure"), lot.product().map(this::cutAndCure).orElse(""));
    fact(facts, say("record.page-one.from-to", "From – to"), passage());
    fact(
        facts,
        say("record.page-one.regime", "Regime"),
        phrases.word("regime", day.plan().establishment().regime()));
    fact(
        facts,
        say("record.page-one.plan", "Plan"),
        phrases.say(
            "record.page-one.plan-version",
            "version {0}, signed {1} by {2}",
            day.plan().version(),
            day.plan().signed(),
            day.plan().signedBy()));
    fact(
        facts,
        say("record.page-one.reassess-by", "Reassess by"),
        day.plan().reassessBy().toString());
    fact(facts, say("record.page-one.release", "Release"), release());
    fact(facts, say("record.page-one.keep", "Keep until"), keeping.until());
    return new Facts(2, facts);
  }

  private String cutAndCure(Product product) {
    return phrases.say(
        "record.page-one.cut-and-cure",
        "{0}, {1} cure",
        phrases.word("cut", product.cut()),
        phrases.word("method", product.cureMethod().word()));
  }

  private void fact(List<Facts.Fact> facts, Message label, String value) {
    facts.add(new Facts.Fact(phrases.say(label), phrases.bound().of(phrases.orNotRecorded(value))));
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
        .orElseGet(() -> phrases.say("record.page-one.green", "{0} green", weighed));
  }

  private String after(String green, Entry weight) {
    String step = phrases.word("step", weight.sheet().word());
    return phrases.say(
        "record.page-one.green-and-after",
        "{0} green, {1} after the {2}",
        green,
        weight.shown(),
        step);
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
            .orElseGet(
                () ->
                    phrases.say(
                        "record.page-one.still-in", "still in {0}", phrases.step(last.step())));
    return from + " – " + to;
  }

  private String time(Entry entry) {
    return phrases.time(entry.time().written());
  }

  private String release() {
    if (!judgement.deviations().isEmpty()) {
      return phrases.count(
          "record.page-one.on-hold",
          judgement.deviations().size(),
          "ON HOLD: {0} open deviation",
          "ON HOLD: {0} open deviations");
    }
    return lot.first(Step.RELEASE.into())
        .map(
            review ->
                phrases.say(
                    "record.page-one.reviewed", "reviewed {0} by {1}", time(review), review.by()))
        .orElseGet(
            () ->
                judgement.verdict() == Verdict.MET
                    ? phrases.say(
                        "record.page-one.not-reviewed",
                        "not yet reviewed; not to leave before the review")
                    : phrases.say("record.page-one.not-to-leave", "not to leave"));
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
            new Signatures.Box(
                "prepared",
                phrases.say("record.page-one.prepared-by", "Prepared by"),
                maker,
                phrases.say(
                    "record.page-one.prepared", "The entries are mine and were made at the time.")),
            new Signatures.Box(
                "reviewed",
                phrases.say(
                    alone
                        ? say("record.page-one.review-alone", "Pre-shipment review, sole operator")
                        : say("record.page-one.review", "Pre-shipment review")),
                "",
                alone
                    ? alone()
                    : phrases.say(
                        "record.page-one.complete",
                        "Complete; limits met, or corrective action and disposition on file."))));
  }

  /** Who reviews what he made himself says how long after. */
  private String alone() {
    Optional<Entry> review = lot.first(Step.RELEASE.into());
    String complete =
        phrases.say(
            "record.page-one.complete",
            "Complete; limits met, or corrective action and disposition on file.");
    return review
        .flatMap(this::hoursAfter)
        .map(
            hours ->
                complete
                    + " "
                    + phrases.count(
                        "record.page-one.alone-after",
                        hours,
                        "I work alone; the review came {0} hour after the last entry before it.",
                        "I work alone; the review came {0} hours after the last entry before it."))
        .orElse(
            complete
                + " "
                + phrases.say(
                    "record.page-one.alone",
                    "I work alone, and have let time pass before this review."));
  }

  private Optional<Long> hoursAfter(Entry review) {
    return lot.entries().stream()
        .filter(entry -> entry.time().isBefore(review.time()))
        .reduce((earlier, later) -> later)
        .map(last -> last.time().writtenTo(review.time()).toHours());
  }
}

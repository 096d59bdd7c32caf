package org.flitchbook.record;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.flitchbook.check.Finding;
import org.flitchbook.check.Judgement;
import org.flitchbook.check.Verdict;
import org.flitchbook.document.Block;
import org.flitchbook.document.Block.Facts;
import org.flitchbook.lot.Stay;
import org.flitchbook.measure.Quantity;
import org.flitchbook.plan.Plan;
import org.flitchbook.plan.Product;
import org.flitchbook.reading.Entry;
import org.flitchbook.sheet.Step;
import org.flitchbook.sheet.What;

/** The first page of a batch record: the verdict and all that it rests on, in one look. */
final class PageOne extends LotSection {

  private final Plan plan;

  PageOne(DayJudged day, Judgement judgement) {
    super(day, judgement);
    this.plan = day.plan();
  }

  List<Block> blocks() {
    return new Blocks()
        .add(banner())
        .add(facts())
        .add(new PlanSection(day, judgement).limits())
        .add(standing())
        .add(caution())
        .add(SigningBoxes.ofLot(day, judgement))
        .add(asked())
        .list();
  }

  private Block.Banner banner() {
    String asOf = say("record.page-one.judged-as-of", "Judged as of {0}.", time(day.moment()));
    return new Block.Banner(
        tone(judgement.verdict()),
        say(judgement.verdict()).toUpperCase(Locale.ROOT),
        unbroken(left(judgement) + sentence() + " " + asOf));
  }

  private String sentence() {
    if (lot.product().isEmpty()) {
      return say(
          "record.page-one.no-product",
          "No product is on record, so that no limit could be judged.");
    }
    String version = plan.version();
    if (account.open().deviations() > 0) {
      return count(
          "record.page-one.deviations",
          account.open().deviations(),
          "One open deviation from plan version {1}: the lot is held.",
          "{0} open deviations from plan version {1}: the lot is held.",
          version);
    }
    return switch (judgement.verdict()) {
      case MET ->
          say("record.page-one.met", "Every critical limit of plan version {0} was met.", version);
      case PENDING ->
          say(
              "record.page-one.pending",
              "No critical limit of plan version {0} is missed so far; steps are to come.",
              version);
      default ->
          say(
              "record.page-one.to-explain",
              "The readings leave something to be explained before any release.");
    };
  }

  private Facts facts() {
    Optional<Product> product = lot.product();
    String named = product.map(p -> p.name() + " (" + p.code() + ")").orElse("");
    String productClass = product.map(p -> word("class", p.productClass())).orElse("");
    String version =
        say(
            "record.page-one.plan-version",
            "version {0}, signed {1} by {2}",
            plan.version(),
            plan.signed(),
            plan.signedBy());
    return new Facts(
        2,
        List.of(
            fact("record.page-one.product", "Product", named),
            fact("record.page-one.class", "Class", productClass),
            fact("record.page-one.quantity", "Quantity", quantity()),
            fact("record.page-one.cure", "Cure", product.map(this::cutAndCure).orElse("")),
            fact("record.page-one.from-to", "From – to", passage()),
            fact("record.page-one.regime", "Regime", word("regime", plan.establishment().regime())),
            fact("record.page-one.plan", "Plan", version),
            fact("record.page-one.reassess-by", "Reassess by", plan.reassessBy().toString()),
            fact("record.page-one.release", "Release", release()),
            fact(
                "record.page-one.keep",
                "Keep until",
                new Documents(day).keepUntil(account.keepUntil()))));
  }

  private String cutAndCure(Product product) {
    String cut = word("cut", product.cut());
    return say("record.page-one.cut-and-cure", "{0}, {1} cure", cut, product.cureMethod());
  }

  private String quantity() {
    Optional<Entry> last = lot.last(What.WEIGHT);
    return account
        .distribution()
        .greenWeight()
        .filter(weight -> lot.first(What.GREEN_WEIGHT).isPresent())
        .map(
            green ->
                last.map(weight -> after(green, weight))
                    .orElse(say("record.page-one.green", "{0} green", green)))
        .orElse("");
  }

  private String after(Quantity green, Entry weight) {
    return say(
        "record.page-one.green-and-after",
        "{0} green, {1} after the {2}",
        green,
        weight.shown(),
        word("step", weight.sheet().word()));
  }

  private String passage() {
    List<Stay> steps = account.steps();
    if (steps.isEmpty()) {
      return "";
    }
    Stay first = steps.get(0);
    Stay last = steps.get(steps.size() - 1);
    String to =
        last.out()
            .map(out -> say(last.step()) + " " + time(out))
            .orElse(say("record.page-one.still-in", "still in {0}", last.step()));
    return say(first.step()) + " " + time(first.into()) + " – " + to;
  }

  private String release() {
    int open = account.open().deviations();
    if (open > 0) {
      return count(
          "record.page-one.on-hold",
          open,
          "ON HOLD: {0} open deviation",
          "ON HOLD: {0} open deviations");
    }
    String not =
        judgement.verdict() == Verdict.MET
            ? say(
                "record.page-one.not-reviewed", "not yet reviewed; not to leave before the review")
            : say("record.page-one.not-to-leave", "not to leave");
    return lot.first(Step.RELEASE.into())
        .map(by -> say("record.page-one.reviewed", "reviewed {0} by {1}", time(by), by.by()))
        .orElse(not);
  }

  /** How good the evidence is, what is open, what is to come, and what is said further on. */
  private Facts standing() {
    List<Facts.Fact> facts = new ArrayList<>();
    String evidence = new EvidenceSection(day, judgement).sentence();
    facts.add(fact("record.page-one.evidence", "Evidence", evidence));
    String missed =
        judgement.deviations().stream()
            .map(f -> say("record.page-one.missed", "{0} {1}", name(f.limit()), f.verdict()))
            .collect(Collectors.joining("; "));
    String none = say("record.page-one.no-deviation", "none");
    facts.add(fact("record.page-one.open", "Open deviations", missed.isEmpty() ? none : missed));
    String pending = names(finding -> finding.verdict() == Verdict.PENDING);
    if (!pending.isEmpty()) {
      facts.add(fact("record.page-one.to-come", "Pending", pending));
    }
    String remarked = names(finding -> !finding.remarks().isEmpty());
    if (!remarked.isEmpty()) {
      String see = say("record.page-one.see", "{0}: see \"{1}\"", remarked, DEVIATIONS);
      facts.add(fact("record.page-one.to-note", "To note", see));
    }
    if (account.open().doubts() > 0) {
      String doubts =
          count(
              "record.page-one.doubts",
              account.open().doubts(),
              "{0} fault to be explained, see \"{1}\"",
              "{0} faults to be explained, see \"{1}\"",
              DOUBTS);
      facts.add(fact(DOUBTS, doubts));
    }
    return new Facts(1, facts);
  }

  private String names(Predicate<Finding> wanted) {
    return judgement.findings().stream()
        .filter(wanted)
        .map(finding -> name(finding.limit()))
        .distinct()
        .collect(Collectors.joining("; "));
  }
}

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
import org.flitchbook.document.Paragraph;
import org.flitchbook.document.SignatureBox;
import org.flitchbook.document.Signatures;
import org.flitchbook.lot.Lot;
import org.flitchbook.lot.Stay;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Ratio;
import org.flitchbook.measure.Unit;
import org.flitchbook.plan.Limit;
import org.flitchbook.plan.Rank;
import org.flitchbook.plan.Standing;
import org.flitchbook.reading.Entry;
import org.flitchbook.sheet.Step;
import org.flitchbook.sheet.What;

/** The first page of a batch record: the verdict and all that it rests on, in one look. */
final class PageOne {

  static final String CAUTION =
      "Curing salt is toxic in excess: weigh it, never spoon it. The limits are those of the plan"
          + " named here; confirm them with the local authority or a process authority. This record"
          + " says which limits were met, not met or not shown. It does not say that food is safe,"
          + " and it replaces no licensed decision.";

  private final DayJudged day;
  private final Judgement judgement;
  private final Lot lot;

  PageOne(DayJudged day, Judgement judgement) {
    this.day = day;
    this.judgement = judgement;
    this.lot = judgement.lot();
  }

  List<Block> blocks() {
    List<Block> blocks = new ArrayList<>();
    blocks.add(
        new Banner(
            Phrases.tone(judgement.verdict()),
            judgement.verdict().words().toUpperCase(Locale.ROOT),
            Bound.bound(sentence())));
    blocks.add(facts());
    limits().ifPresent(blocks::add);
    if (judgement.deviations().isEmpty()) {
      blocks.add(new Paragraph(Bound.of("Open deviations: none.")));
    }
    remarks().ifPresent(blocks::add);
    doubts().ifPresent(blocks::add);
    blocks.add(new Caution(CAUTION));
    blocks.add(signatures());
    return blocks;
  }

  private String sentence() {
    String plan = "plan version " + day.plan().version();
    List<Finding> missed = judgement.deviations();
    if (lot.product().isEmpty()) {
      return "No product is on record, so that no limit could be judged.";
    }
    if (!missed.isEmpty()) {
      return (missed.size() == 1 ? "One open deviation" : missed.size() + " open deviations")
          + " from "
          + plan
          + ", the lot is held: "
          + String.join("; ", missed.stream().map(PageOne::missed).toList())
          + ".";
    }
    return switch (judgement.verdict()) {
      case MET -> "Every critical limit of " + plan + " was met.";
      case PENDING -> "No critical limit of " + plan + " is missed so far; steps are to come.";
      default -> "The readings leave something to be explained before any release.";
    };
  }

  private static String missed(Finding finding) {
    return finding.limit().name() + " " + finding.verdict().words();
  }

  private Facts facts() {
    List<Fact> facts = new ArrayList<>();
    fact(facts, "Product", lot.product().map(p -> p.name() + " (" + p.code() + ")").orElse(""));
    fact(facts, "Class", lot.product().map(p -> p.productClass()).orElse(""));
    fact(facts, "Quantity", quantity());
    fact(
        facts,
        "Cure",
        lot.product().map(p -> p.cut() + ", " + p.cureMethod() + " cure").orElse(""));
    fact(facts, "From – to", passage());
    fact(facts, "Regime", day.plan().establishment().regime());
    fact(
        facts,
        "Plan",
        "version "
            + day.plan().version()
            + ", signed "
            + day.plan().signed()
            + " by "
            + day.plan().signedBy());
    fact(facts, "Reassess by", day.plan().reassessBy().toString());
    fact(facts, "Judged as of", Phrases.time(day.moment(), day.plan().establishment().zone()));
    fact(facts, "Release", release());
    return new Facts(2, facts);
  }

  private static void fact(List<Fact> facts, String label, String value) {
    facts.add(new Fact(label, Bound.of(Grid.orNotRecorded(value))));
  }

  private String quantity() {
    Optional<Entry> last = lot.last(What.WEIGHT);
    List<Entry> green = lot.all(What.GREEN_WEIGHT);
    if (green.isEmpty()) {
      return "";
    }
    Ratio sum =
        green.stream().map(entry -> entry.amount().inBase()).reduce(Ratio.ZERO, Ratio::plus);
    String weighed = new Quantity(sum, Unit.GRAM).shown() + " green";
    return last.map(entry -> weighed + ", " + entry.shown() + " after the " + entry.sheet().word())
        .orElse(weighed);
  }

  private String passage() {
    if (lot.stays().isEmpty()) {
      return "";
    }
    Stay first = lot.stays().get(0);
    Stay last = lot.stays().get(lot.stays().size() - 1);
    String from = first.step().word() + " " + time(first.into());
    String to =
        last.out()
            .map(out -> last.step().word() + " " + time(out))
            .orElse("still in " + last.step().word());
    return from + " – " + to;
  }

  private String time(Entry entry) {
    return Phrases.time(entry.time().written(), day.plan().establishment().zone());
  }

  private String release() {
    if (!judgement.deviations().isEmpty()) {
      return "ON HOLD: "
          + judgement.deviations().size()
          + " open "
          + (judgement.deviations().size() == 1 ? "deviation" : "deviations");
    }
    return lot.first(Step.RELEASE.into())
        .map(review -> "reviewed " + time(review) + " by " + review.by())
        .orElse(
            judgement.verdict() == Verdict.MET
                ? "not yet reviewed; not to leave before the review"
                : "not to leave");
  }

  private Optional<Block> limits() {
    Grid grid =
        new Grid("Limits in force, each beside its worst value")
            .head("CCP", 0)
            .head("Limit", 26)
            .number("Worst value", 0)
            .number("Limit value", 0)
            .number("Margin", 0)
            .head("Verdict", 0)
            .head("Source", 14);
    for (Finding finding : Checks.inOrder(judgement.findings())) {
      grid.row(row(finding));
    }
    return grid.isEmpty() ? Optional.empty() : Optional.of(grid.table());
  }

  private Cell[] row(Finding finding) {
    Limit limit = finding.limit();
    String rank = limit.rank() == Rank.CRITICAL ? "" : ", " + limit.rank().word();
    String ccp = limit.monitoring().ccp();
    return new Cell[] {
      Grid.cell(ccp.isEmpty() ? "–" : ccp),
      Grid.cell(limit.name() + rank),
      Grid.cell(Phrases.worst(finding)),
      Grid.cell(finding.measured().map(Phrases::bound).orElse("–")),
      Grid.cell(Phrases.margin(finding)),
      Grid.cell(finding.verdict().words(), Phrases.tone(finding.verdict())),
      Grid.cell(source(limit))
    };
  }

  private String source(Limit limit) {
    Standing standing = limit.source().standing();
    boolean plain = standing == Standing.READ || standing == Standing.PLAN;
    return day.plan().cited(limit.source()) + (plain ? "" : " (" + standing.word() + ")");
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
            new Paragraph(
                Bound.of(
                    "To note on "
                        + String.join("; ", names)
                        + ": see \"Deviations and remarks\".")));
  }

  private Optional<Block> doubts() {
    int open = judgement.openFaults().size();
    return open == 0
        ? Optional.empty()
        : Optional.of(
            new Paragraph(
                Bound.of(
                    "Data in doubt: "
                        + open
                        + (open == 1 ? " fault" : " faults")
                        + " to be explained, listed under \"Data in doubt\".")));
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
                "Prepared by",
                maker,
                "The entries are mine and were made at the time."),
            new SignatureBox(
                "reviewed",
                alone ? "Pre-shipment review, sole operator" : "Pre-shipment review",
                "",
                "Complete; limits met, or corrective action and disposition on file.")));
  }
}

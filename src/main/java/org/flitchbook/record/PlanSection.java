package org.flitchbook.record;

import static java.util.stream.Collectors.joining;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.flitchbook.account.LotAccount.MarginShare;
import org.flitchbook.check.Checks;
import org.flitchbook.check.Finding;
import org.flitchbook.check.Judgement;
import org.flitchbook.check.PlanChoice;
import org.flitchbook.document.Block;
import org.flitchbook.document.Table;
import org.flitchbook.document.Text;
import org.flitchbook.document.Tone;
import org.flitchbook.lot.Stay;
import org.flitchbook.measure.Quantity;
import org.flitchbook.message.Message;
import org.flitchbook.plan.Limit;
import org.flitchbook.plan.Plan;
import org.flitchbook.plan.Product;
import org.flitchbook.plan.Rank;
import org.flitchbook.plan.RuleSet;
import org.flitchbook.plan.Standing;
import org.flitchbook.reading.Entry;

/** The plan that a lot was judged by: its limits, its versions, and what it rests on. */
final class PlanSection extends LotSection {

  private final List<String> sources = new ArrayList<>();

  PlanSection(DayJudged day, Judgement judgement) {
    super(day, judgement);
  }

  List<Block> blocks() {
    return new Blocks().add(versions()).add(monitoring()).add(notRead()).list();
  }

  /** Which version each step began under, where the plan changed while the lot was made. */
  private Optional<Block> versions() {
    Instant begin = lot.entries().get(0).time().earliest();
    String begun = lot.stays().stream().map(stay -> begun(stay) + " ").collect(joining());
    return day.versions().formerSince(begin).isEmpty()
        ? Optional.empty()
        : Optional.of(paragraph(begun + counting()));
  }

  private String begun(Stay stay) {
    Plan plan = day.versions().at(stay.into().time().earliest());
    return say(
        "record.plans.begun",
        "The step {0} began under plan version {1}, signed {2}.",
        stay.step(),
        plan.version(),
        plan.signed());
  }

  private String counting() {
    Optional<PlanChoice> choice = PlanChoice.of(lot, day.versions());
    if (choice.isEmpty()) {
      return say(
          "record.plans.stricter",
          "Each limit was judged under every version in force while the lot was made; the"
              + " stricter finding counts, and says by which version it was made.");
    }
    Entry entry = choice.get().entry();
    return say(
        "record.plans.settled",
        "{0} settled that version {1} counts: {2} ({3}).",
        entry.by(),
        choice.get().version(),
        entry.note(),
        entry.place());
  }

  private Block monitoring() {
    List<Limit> limits = Checks.inOrder(judgement.findings()).stream().map(Finding::limit).toList();
    return table(
            "record.monitoring.caption",
            "Each limit: why, how it is watched, what is done where it is missed",
            limits)
        .column(LIMIT, 10, limit -> name(limit) + " (" + limit.id() + ")")
        .column("record.monitoring.because", "Because", 17, limit -> say(limit.because()))
        .column("record.monitoring.watched", "Watched", 8, l -> orDash(l.monitoring().monitored()))
        .column(BY, 3, l -> orDash(l.monitoring().by()))
        .column("record.monitoring.if-missed", "If missed", 8, l -> planned(l).orElse("–"))
        .column("record.monitoring.edition", "Edition and standing", 12, this::edition)
        .table();
  }

  private String edition(Limit limit) {
    return limit.source().edition() + "; " + say(limit.source().standing().meaning());
  }

  private List<Block> notRead() {
    Blocks blocks = new Blocks();
    String conflicts = say(lot.product().map(Product::conflicts).orElse(List.of()));
    if (!conflicts.isEmpty()) {
      blocks.add(strong(say("record.monitoring.conflict", "Limits in conflict: {0}.", conflicts)));
    }
    for (RuleSet set : day.plan().ruleSets()) {
      if (!set.notRead().isEmpty()) {
        blocks.add(
            paragraph(
                "record.monitoring.not-read",
                "Of the rule set \"{0}\" this was not read in its own text: {1}",
                set.name(),
                String.join(" ", set.notRead())));
      }
    }
    String own = String.join(", ", day.plan().ownTemplates());
    if (!own.isEmpty()) {
      blocks.add(
          paragraph(
              "record.monitoring.own-files",
              "The book's own files stood in for the tool's: {0}.",
              own));
    }
    return blocks.list();
  }

  /**
   * Every limit beside its worst value, with the margin as a number and on a scale; the sources are
   * numbered and stand below the table, with the rule by which the record is kept.
   */
  List<Block> limits() {
    List<Finding> findings = Checks.inOrder(judgement.findings());
    if (findings.isEmpty()) {
      return List.of();
    }
    // It numbers the sources.
    Block table = limits(findings);
    String numbered =
        IntStream.range(0, sources.size())
            .mapToObj(i -> "[" + (i + 1) + "]\u00a0" + sources.get(i))
            .collect(joining("; "));
    String cited = say("record.page-one.sources", "Sources: {0}.", numbered);
    String kept = new Documents(day).keepingRule(account.keepUntil());
    return List.of(table, note(cited, kept));
  }

  private Block limits(List<Finding> findings) {
    return table("record.page-one.limits", "Limits in force, each beside its worst value", findings)
        .column("record.page-one.ccp", "CCP", 0, f -> orDash(f.limit().monitoring().ccp()))
        .cells(LIMIT, Table.Align.LEFT, 30, f -> new Table.Cell(named(f.limit()), Tone.PLAIN))
        .number(WORST_VALUE, 0, Phrases::worst)
        .number(LIMIT_VALUE, 0, f -> f.measured().map(Phrases::sign).orElse("–"))
        .number("record.page-one.margin", "Margin", 0, Phrases::margin)
        .cells(
            Message.say("record.page-one.scale", "inside │ over"), Table.Align.LEFT, 0, this::scale)
        .verdict(0, Finding::verdict)
        .table();
  }

  /** The limit, which leads to its step, with the number of its source. */
  private Text named(Limit limit) {
    String name = limit.rank() == Rank.CRITICAL ? name(limit) : ranked(limit);
    Text.Target step = new Text.Target.Section(say(BatchRecord.title(limit.step())));
    return Text.of(
        new Text.Span(unbroken(name), PLAIN, Optional.of(step)),
        new Text.Span("\u00a0[" + number(source(limit)) + "]", Text.Style.MUTED));
  }

  private int number(String source) {
    if (!sources.contains(source)) {
      sources.add(source);
    }
    return sources.indexOf(source) + 1;
  }

  private String source(Limit limit) {
    Standing standing = limit.source().standing();
    boolean plain = standing == Standing.READ || standing == Standing.PLAN;
    return day.plan().cited(limit.source()) + (plain ? "" : " (" + say(standing) + ")");
  }

  /** The margin as far from the tick as it is a part of the limit. */
  private Table.Cell scale(Finding finding) {
    return MarginShare.of(finding)
        .map(share -> share.share().inBase().negate().rounded(3).doubleValue())
        .map(over -> new Table.Scale(Math.max(-1, Math.min(1, over))))
        .map(scale -> Table.Cell.of(scale, words(finding.measured().orElseThrow().margin())))
        .orElse(new Table.Cell(Text.of("–"), Tone.PLAIN));
  }

  private String words(Quantity margin) {
    String size = size(margin);
    return unbroken(
        switch (margin.value().signum()) {
          case 0 -> say("record.scale.at-limit", "at the limit");
          case 1 -> say("record.scale.inside", "{0} inside the limit", size);
          default -> say("record.scale.over", "{0} over the limit", size);
        });
  }
}

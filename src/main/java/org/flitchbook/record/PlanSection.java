package org.flitchbook.record;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.flitchbook.check.Checks;
import org.flitchbook.check.Finding;
import org.flitchbook.check.Judgement;
import org.flitchbook.check.PlanChoice;
import org.flitchbook.document.Block;
import org.flitchbook.lot.Stay;
import org.flitchbook.message.Listing;
import org.flitchbook.message.Message;
import org.flitchbook.plan.Limit;
import org.flitchbook.plan.Plan;
import org.flitchbook.plan.Product;

/** The plan that a lot was judged by: its versions, its limits, and what it rests on. */
final class PlanSection extends LotSection {

  PlanSection(DayJudged day, Judgement judgement) {
    super(day, judgement);
  }

  List<Block> blocks() {
    return new Blocks().add(versions()).add(monitoring()).add(notRead()).list();
  }

  /** Which version each step began under, where the plan changed while the lot was made. */
  private Optional<Block> versions() {
    Instant begin = lot.entries().get(0).time().earliest();
    if (day.versions().formerSince(begin).isEmpty()) {
      return Optional.empty();
    }
    Stream<String> begun = lot.stays().stream().map(this::begun);
    return Optional.of(
        paragraph(Stream.concat(begun, Stream.of(counting())).collect(Collectors.joining(" "))));
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
    return PlanChoice.of(lot, day.versions())
        .map(this::settled)
        .orElse(
            say(
                "record.plans.stricter",
                "Each limit was judged under every version in force while the lot was made; the"
                    + " stricter finding counts, and says by which version it was made."));
  }

  private String settled(PlanChoice choice) {
    return say(
        "record.plans.settled",
        "{0} settled that version {1} counts: {2} ({3}).",
        choice.entry().by(),
        choice.version(),
        choice.entry().note(),
        choice.entry().place());
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
    List<Message> conflicts = lot.product().map(Product::conflicts).orElse(List.of());
    if (!conflicts.isEmpty()) {
      String all = say(Listing.semicolons(conflicts));
      blocks.add(strong(say("record.monitoring.conflict", "Limits in conflict: {0}.", all)));
    }
    day.plan().ruleSets().stream()
        .filter(set -> !set.notRead().isEmpty())
        .map(
            set ->
                paragraph(
                    "record.monitoring.not-read",
                    "Of the rule set \"{0}\" this was not read in its own text: {1}",
                    set.name(),
                    String.join(" ", set.notRead())))
        .forEach(blocks::add);
    if (!day.plan().ownTemplates().isEmpty()) {
      blocks.add(
          paragraph(
              "record.monitoring.own-files",
              "The book's own files stood in for the tool's: {0}.",
              String.join(", ", day.plan().ownTemplates())));
    }
    return blocks.list();
  }
}

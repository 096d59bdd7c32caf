package org.flitchbook.record;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.flitchbook.check.Finding;
import org.flitchbook.check.Judgement;
import org.flitchbook.document.Block;
import org.flitchbook.document.Fact;
import org.flitchbook.document.Facts;
import org.flitchbook.document.Heading;
import org.flitchbook.document.Paragraph;
import org.flitchbook.input.Place;
import org.flitchbook.plan.Limit;
import org.flitchbook.reading.Entry;
import org.flitchbook.sheet.Sheet;
import org.flitchbook.sheet.What;

/** The deviations of one lot: the facts, and the parts of the corrective action on file. */
final class DeviationSection {

  private final DayJudged day;
  private final Judgement judgement;

  DeviationSection(DayJudged day, Judgement judgement) {
    this.day = day;
    this.judgement = judgement;
  }

  /** One sentence a deviation, for the batch record. */
  List<Block> brief() {
    List<Block> blocks = new ArrayList<>();
    for (Finding finding : judgement.deviations()) {
      blocks.add(
          new Paragraph(
              Bound.of(
                  Phrases.capital(finding.limit().name())
                      + ", "
                      + finding.verdict().words()
                      + ": "
                      + finding.reason()
                      + ".")));
    }
    if (blocks.isEmpty()) {
      blocks.add(new Paragraph(Bound.of("No deviation is open.")));
    }
    for (Finding finding : judgement.findings()) {
      if (!finding.remark().isEmpty()) {
        String name = Phrases.capital(finding.limit().name());
        blocks.add(new Paragraph(Bound.of(name + ", to note: " + finding.remark() + ".")));
      }
    }
    new Entries(judgement.lot(), day.plan().establishment().zone())
        .of(Sheet.ACTIONS, "Corrective action on file")
        .ifPresent(blocks::add);
    return blocks;
  }

  /** In full, for the deviation report. */
  List<Block> full() {
    List<Block> blocks = new ArrayList<>();
    String product = judgement.lot().product().map(p -> ", " + p.name()).orElse("");
    blocks.add(new Heading(2, "Lot " + judgement.lot().code() + product));
    for (Finding finding : judgement.deviations()) {
      blocks.add(
          new Heading(
              3, Phrases.capital(finding.limit().name()) + ": " + finding.verdict().words()));
      blocks.add(facts(finding));
    }
    blocks.add(new Heading(3, "Hold, corrective action and disposition (9 CFR 417.3(a))"));
    blocks.add(parts());
    new Entries(judgement.lot(), day.plan().establishment().zone())
        .of(Sheet.ACTIONS, "Entries on file")
        .ifPresent(blocks::add);
    return blocks;
  }

  private Facts facts(Finding finding) {
    Limit limit = finding.limit();
    List<Fact> facts = new ArrayList<>();
    fact(facts, "What was found", finding.reason());
    fact(facts, "Worst value", finding.measured().map(m -> Phrases.quantity(m.value())).orElse(""));
    fact(
        facts,
        "Limit",
        finding.measured().map(Phrases::bound).orElse("–")
            + ", "
            + limit.source().cited()
            + ", "
            + limit.source().edition());
    fact(facts, "Beyond the limit by", beyond(finding));
    fact(facts, "Reckoned", finding.formula());
    fact(
        facts,
        "Evidence",
        String.join(
            ", ", finding.evidence().stream().map(Place::toString).distinct().limit(6).toList()));
    if (!finding.remark().isEmpty()) {
      fact(facts, "To note", Phrases.capital(finding.remark()));
    }
    fact(facts, "The plan says", limit.monitoring().ifMissed());
    fact(facts, "CCP and step", ccp(limit) + limit.step().word());
    return new Facts(2, facts);
  }

  private static String ccp(Limit limit) {
    return limit.monitoring().ccp().isEmpty() ? "" : "CCP " + limit.monitoring().ccp() + ", ";
  }

  private static String beyond(Finding finding) {
    return finding
        .measured()
        .map(measured -> measured.margin())
        .filter(margin -> margin.value().signum() < 0)
        .map(margin -> new org.flitchbook.measure.Quantity(margin.value().abs(), margin.unit()))
        .map(Phrases::quantity)
        .orElse("–");
  }

  private static void fact(List<Fact> facts, String label, String value) {
    facts.add(new Fact(label, Bound.of(Grid.orNotRecorded(value))));
  }

  /** Each part with what is on file, or room to write it by hand. */
  private Block parts() {
    Grid grid =
        new Grid("To be complete before the deviation is closed")
            .head("Part", 12)
            .head("On file", 26)
            .head("By and when", 12);
    part(grid, "Held: what, how much, where", What.HELD);
    part(grid, "1. Cause found and removed", What.CAUSE);
    part(grid, "2. Control regained", What.CONTROL_REGAINED);
    part(grid, "3. Recurrence prevented", What.PREVENTION);
    part(grid, "4. Disposition, to the last gram", What.DISPOSITION);
    part(grid, "Closed", What.CLOSED);
    return grid.table();
  }

  private void part(Grid grid, String name, What what) {
    List<Entry> entries = judgement.lot().all(what);
    String told = String.join("; ", entries.stream().map(DeviationSection::told).toList());
    String who =
        entries.isEmpty() ? "" : entries.get(entries.size() - 1).by() + ", " + when(entries);
    grid.row(name, told.isEmpty() ? Phrases.NOT_RECORDED : told, who);
  }

  private String when(List<Entry> entries) {
    Entry last = entries.get(entries.size() - 1);
    return Phrases.time(last.time().written(), day.plan().establishment().zone());
  }

  private static String told(Entry entry) {
    return Optional.of(
            String.join(
                ", ",
                List.of(entry.shown(), entry.item(), entry.note()).stream()
                    .filter(text -> !text.isEmpty())
                    .toList()))
        .filter(text -> !text.isEmpty())
        .orElse(entry.what().word());
  }
}

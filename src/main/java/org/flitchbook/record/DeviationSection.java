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
import org.flitchbook.input.Place;
import org.flitchbook.plan.Limit;
import org.flitchbook.reading.Entry;
import org.flitchbook.sheet.Sheet;
import org.flitchbook.sheet.What;

/** The deviations of one lot: the facts, and the parts of the corrective action on file. */
final class DeviationSection {

  private final Judgement judgement;
  private final Phrases phrases;

  DeviationSection(DayJudged day, Judgement judgement) {
    this.judgement = judgement;
    this.phrases = day.phrases();
  }

  /** One sentence a deviation, for the batch record. */
  List<Block> brief() {
    List<Block> blocks = new ArrayList<>();
    for (Finding finding : judgement.deviations()) {
      blocks.add(
          phrases.paragraph(
              phrases.say(
                  "record.deviation.brief",
                  Phrases.capital(finding.limit().name()),
                  phrases.verdict(finding.verdict()),
                  finding.reason())));
    }
    if (blocks.isEmpty()) {
      blocks.add(phrases.paragraph(phrases.say("record.deviation.none")));
    }
    for (Finding finding : judgement.findings()) {
      if (!finding.remark().isEmpty()) {
        String name = Phrases.capital(finding.limit().name());
        blocks.add(
            phrases.paragraph(phrases.say("record.deviation.remark", name, finding.remark())));
      }
    }
    new Entries(judgement.lot(), phrases)
        .of(Sheet.ACTIONS, phrases.say("record.deviation.actions"))
        .ifPresent(blocks::add);
    return blocks;
  }

  /** In full, for the deviation report. */
  List<Block> full() {
    List<Block> blocks = new ArrayList<>();
    String product = judgement.lot().product().map(p -> ", " + p.name()).orElse("");
    blocks.add(
        new Heading(2, phrases.say("record.deviation.lot", judgement.lot().code()) + product));
    for (Finding finding : judgement.deviations()) {
      blocks.add(
          new Heading(
              3,
              Phrases.capital(finding.limit().name()) + ": " + phrases.verdict(finding.verdict())));
      blocks.add(facts(finding));
    }
    blocks.add(new Heading(3, phrases.say("record.deviation.heading")));
    blocks.add(parts());
    new Entries(judgement.lot(), phrases)
        .of(Sheet.ACTIONS, phrases.say("record.deviation.entries"))
        .ifPresent(blocks::add);
    return blocks;
  }

  private Facts facts(Finding finding) {
    Limit limit = finding.limit();
    List<Fact> facts = new ArrayList<>();
    fact(facts, "record.head.found", finding.reason());
    fact(
        facts,
        "record.worst-value",
        finding.measured().map(m -> Phrases.quantity(m.value())).orElse(""));
    fact(
        facts,
        "record.head.limit",
        finding.measured().map(phrases::bound).orElse("–")
            + ", "
            + limit.source().cited()
            + ", "
            + limit.source().edition());
    fact(facts, "record.deviation.beyond", beyond(finding));
    fact(facts, "record.deviation.reckoned", finding.formula());
    fact(
        facts,
        "record.deviation.evidence",
        String.join(
            ", ", finding.evidence().stream().map(Place::toString).distinct().limit(6).toList()));
    if (!finding.remark().isEmpty()) {
      fact(facts, "record.deviation.to-note", Phrases.capital(finding.remark()));
    }
    fact(facts, "record.head.plan-says", limit.monitoring().ifMissed());
    fact(facts, "record.deviation.ccp-and-step", ccp(limit) + phrases.step(limit.step()));
    return new Facts(2, facts);
  }

  private String ccp(Limit limit) {
    String ccp = limit.monitoring().ccp();
    return ccp.isEmpty() ? "" : phrases.say("record.deviation.ccp", ccp);
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

  private void fact(List<Fact> facts, String key, String value) {
    facts.add(new Fact(phrases.say(key), phrases.bound().of(phrases.orNotRecorded(value))));
  }

  /** Each part with what is on file, or room to write it by hand. */
  private Block parts() {
    Grid grid =
        phrases
            .grid("record.deviation.parts")
            .head("record.deviation.part", 12)
            .head("record.deviation.on-file", 26)
            .head("record.deviation.by-and-when", 12);
    part(grid, "record.deviation.held", What.HELD);
    part(grid, "record.deviation.cause", What.CAUSE);
    part(grid, "record.deviation.control", What.CONTROL_REGAINED);
    part(grid, "record.deviation.prevention", What.PREVENTION);
    part(grid, "record.deviation.disposition", What.DISPOSITION);
    part(grid, "record.deviation.closed", What.CLOSED);
    return grid.table();
  }

  private void part(Grid grid, String key, What what) {
    List<Entry> entries = judgement.lot().all(what);
    String told = String.join("; ", entries.stream().map(this::told).toList());
    String who =
        entries.isEmpty() ? "" : entries.get(entries.size() - 1).by() + ", " + when(entries);
    grid.row(phrases.say(key), phrases.orNotRecorded(told), who);
  }

  private String when(List<Entry> entries) {
    Entry last = entries.get(entries.size() - 1);
    return phrases.time(last.time().written());
  }

  private String told(Entry entry) {
    return Optional.of(
            String.join(
                ", ",
                List.of(entry.shown(), entry.item(), entry.note()).stream()
                    .filter(text -> !text.isEmpty())
                    .toList()))
        .filter(text -> !text.isEmpty())
        .orElse(phrases.word("what", entry.what().word()));
  }
}

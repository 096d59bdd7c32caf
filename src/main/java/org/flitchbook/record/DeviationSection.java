package org.flitchbook.record;

import static org.flitchbook.message.Message.say;

import java.util.ArrayList;
import java.util.List;
import org.flitchbook.check.Finding;
import org.flitchbook.check.Judgement;
import org.flitchbook.check.Part;
import org.flitchbook.document.Block;
import org.flitchbook.lot.Lot;
import org.flitchbook.message.Message;
import org.flitchbook.sheet.Sheet;

/** The deviations of one lot: in a sentence each for its record, in full for the day's report. */
final class DeviationSection {

  private final DayJudged day;
  private final Judgement judgement;
  private final Lot lot;
  private final Phrases phrases;

  DeviationSection(DayJudged day, Judgement judgement) {
    this.day = day;
    this.judgement = judgement;
    this.lot = judgement.lot();
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
                  "{0}, {1}: {2}.",
                  Phrases.capital(phrases.name(finding.limit())),
                  phrases.verdict(finding.verdict()),
                  phrases.say(finding.reasons()))));
    }
    if (blocks.isEmpty()) {
      blocks.add(phrases.paragraph(phrases.say("record.deviation.none", "No deviation is open.")));
    }
    for (Finding finding : judgement.findings()) {
      if (!finding.remarks().isEmpty()) {
        String name = Phrases.capital(phrases.name(finding.limit()));
        blocks.add(
            phrases.paragraph(
                phrases.say(
                    "record.deviation.remark",
                    "{0}, to note: {1}.",
                    name,
                    phrases.say(finding.remarks()))));
      }
    }
    actions(say("record.deviation.actions", "Corrective action on file"), blocks);
    return blocks;
  }

  private void actions(Message caption, List<Block> blocks) {
    new Entries(lot, phrases).of(Sheet.ACTIONS, phrases.say(caption)).ifPresent(blocks::add);
  }

  /** In full, for the deviation report. */
  List<Block> full() {
    List<Block> blocks = new ArrayList<>();
    String product = lot.product().map(p -> ", " + p.name()).orElse("");
    blocks.add(
        new Block.Heading(2, phrases.say("record.deviation.lot", "Lot {0}", lot.code()) + product));
    judgement.deviations().forEach(finding -> finding(finding, blocks));
    blocks.add(
        new Block.Heading(
            3, phrases.say("record.deviation.evidence-quality", "How good the evidence is")));
    blocks.add(
        phrases.paragraph(Phrases.capital(new EvidenceWords(day, judgement).sentence()) + "."));
    if (!judgement.faults().isEmpty()) {
      blocks.add(new Sections(day, judgement).doubts());
      new ExplanationTable(day, judgement).block().ifPresent(blocks::add);
    }
    actions(say("record.deviation.entries", "Entries on file"), blocks);
    blocks.addAll(new ActionSection(day, judgement).blocks());
    return blocks;
  }

  private void finding(Finding finding, List<Block> blocks) {
    String name = Phrases.capital(phrases.name(finding.limit()));
    blocks.add(new Block.Heading(3, name + ": " + phrases.verdict(finding.verdict())));
    blocks.addAll(new DeviationFacts(lot, finding, phrases).blocks());
    CoreChart chart = new CoreChart(day, judgement);
    for (Part part : finding.parts()) {
      if (part.verdict().isMissed()) {
        String band = phrases.band(part.from(), part.to());
        chart
            .excerpt(
                finding,
                part,
                phrases.say(
                    "record.deviation.excerpt",
                    "{0}, {1}: half an hour before to half an hour after",
                    band,
                    part.probe()))
            .ifPresent(blocks::add);
      }
    }
  }
}

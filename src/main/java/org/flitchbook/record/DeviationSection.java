package org.flitchbook.record;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.flitchbook.account.Deviation;
import org.flitchbook.check.Finding;
import org.flitchbook.check.Judgement;
import org.flitchbook.check.Measured;
import org.flitchbook.check.Part;
import org.flitchbook.document.Block;
import org.flitchbook.document.Block.Facts;
import org.flitchbook.input.Place;
import org.flitchbook.message.Message;
import org.flitchbook.plan.Limit;
import org.flitchbook.sheet.Sheet;

/** The deviations of one lot: in a sentence each for its record, in full for the day's report. */
final class DeviationSection extends LotSection {

  private static final int MOST_PLACES = 6;

  DeviationSection(DayJudged day, Judgement judgement) {
    super(day, judgement);
  }

  /** One sentence a deviation, for the batch record. */
  List<Block> brief() {
    Blocks blocks = new Blocks();
    for (Finding finding : judgement.deviations()) {
      String said =
          say(
              "record.deviation.brief",
              "{0}, {1}: {2}.",
              name(finding),
              finding.verdict(),
              reason(finding));
      blocks.add(paragraph(said));
    }
    if (judgement.deviations().isEmpty()) {
      blocks.add(paragraph("record.deviation.none", "No deviation is open."));
    }
    for (Finding finding : judgement.findings()) {
      String remark = remark(finding);
      if (!remark.isEmpty()) {
        blocks.add(
            paragraph(say("record.deviation.remark", "{0}, to note: {1}.", name(finding), remark)));
      }
    }
    return blocks.add(actions("record.deviation.actions", "Corrective action on file")).list();
  }

  private String name(Finding finding) {
    return capital(name(finding.limit()));
  }

  private Optional<Block> actions(String id, String english) {
    return new Entries(day, judgement).of(Sheet.ACTIONS, Message.say(id, english));
  }

  /** In full, for the deviation report. */
  List<Block> full() {
    String product = lot.product().map(p -> ", " + p.name()).orElse("");
    Blocks blocks =
        new Blocks()
            .add(
                new Block.Heading(2, say("record.deviation.lot", "Lot {0}", lot.code()) + product));
    EvidenceSection evidence = new EvidenceSection(day, judgement);
    for (int i = 0; i < account.deviations().size(); i++) {
      finding(judgement.deviations().get(i), account.deviations().get(i), blocks);
    }
    blocks
        .add(subheading("record.deviation.evidence-quality", "How good the evidence is"))
        .add(paragraph(capital(evidence.sentence()) + "."));
    if (!judgement.faults().isEmpty()) {
      blocks.add(evidence.doubts());
    }
    return blocks
        .add(actions("record.deviation.entries", "Entries on file"))
        .add(new ActionSection(day, judgement).blocks())
        .list();
  }

  private void finding(Finding finding, Deviation deviation, Blocks blocks) {
    blocks
        .add(new Block.Heading(3, name(finding) + ": " + say(finding.verdict())))
        .add(facts(finding, deviation));
    String remark = capital(remark(finding));
    if (!remark.isEmpty()) {
      String label = say("record.deviation.to-note", "To note");
      blocks.add(new Facts(1, List.of(fact(label, remark))));
    }
    CoreChart chart = new CoreChart(day, judgement);
    finding.parts().stream()
        .filter(part -> part.verdict().isMissed())
        .forEach(part -> blocks.add(chart.excerpt(finding, part, excerpt(part))));
  }

  private String excerpt(Part part) {
    return say(
        "record.deviation.excerpt",
        "{0}, {1}: half an hour before to half an hour after",
        range(part.from(), part.to()),
        part.probe());
  }

  /** What happened when, how far beyond the limit, who found it. */
  private Facts facts(Finding finding, Deviation deviation) {
    Limit limit = finding.limit();
    return new Facts(
        2,
        List.of(
            fact(FOUND, reason(finding)),
            fact(LIMIT, limit(finding)),
            fact(
                WORST_VALUE,
                finding.measured().map(Measured::value).map(Phrases::quantity).orElse("")),
            fact(
                "record.deviation.beyond",
                "Beyond the limit by",
                deviation.beyond().map(Phrases::quantity).orElse("–")),
            fact("record.deviation.happened", "From – to", happened(deviation)),
            fact("record.deviation.found-by", "Found by, when", foundBy(deviation)),
            fact("record.deviation.reckoned", "Reckoned", formula(finding)),
            fact("record.deviation.evidence", "Evidence", evidence(finding)),
            fact(PLAN_SAYS, limit.monitoring().ifMissed()),
            fact("record.deviation.ccp-and-step", "CCP and step", ccp(limit) + say(limit.step()))));
  }

  private String limit(Finding finding) {
    return String.join(
        ", ",
        finding.measured().map(this::bound).orElse("–"),
        finding.limit().source().cited(),
        finding.limit().source().edition());
  }

  /** The stages that were missed, from when to when; else the readings that it rests on. */
  private String happened(Deviation deviation) {
    return deviation.stages().isEmpty()
        ? deviation.readings().map(this::readings).orElse("")
        : deviation.stages().stream().map(this::stage).collect(Collectors.joining("; "));
  }

  private String stage(Deviation.Period stage) {
    return range(time(stage.from()), stage.until().map(this::time).orElse("–"));
  }

  private String readings(Deviation.Period readings) {
    return readings.until().filter(readings.from()::equals).isPresent()
        ? time(readings.from())
        : stage(readings);
  }

  /** Who wrote that it was found, else who was the first to hold the lot. */
  private String foundBy(Deviation deviation) {
    return deviation.found().map(entry -> entry.by() + ", " + time(entry)).orElse("");
  }

  private static String evidence(Finding finding) {
    return finding.evidence().stream()
        .map(Place::toString)
        .distinct()
        .limit(MOST_PLACES)
        .collect(Collectors.joining(", "));
  }

  private String ccp(Limit limit) {
    String ccp = limit.monitoring().ccp();
    return ccp.isEmpty() ? "" : say("record.deviation.ccp", "CCP {0}, ", ccp);
  }
}

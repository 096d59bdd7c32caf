package org.flitchbook.record;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.flitchbook.account.LotAccount.Between;
import org.flitchbook.account.LotAccount.Deviation;
import org.flitchbook.account.LotAccount.HeldMass;
import org.flitchbook.check.Finding;
import org.flitchbook.check.Judgement;
import org.flitchbook.check.Part;
import org.flitchbook.document.Block;
import org.flitchbook.document.Block.Facts;
import org.flitchbook.document.Block.Sum;
import org.flitchbook.input.Place;
import org.flitchbook.measure.Quantity;
import org.flitchbook.message.Message;
import org.flitchbook.plan.Limit;
import org.flitchbook.plan.Source;
import org.flitchbook.reading.Entry;
import org.flitchbook.sheet.Sheet;
import org.flitchbook.sheet.What;

/**
 * The deviations of one lot: in a sentence each for its record; in full, with what was done about
 * them, for the day's report. Where nothing is on file there is ruled room to write it by hand.
 */
final class DeviationSection extends LotSection {

  private static final int MOST_PLACES = 6;
  private static final int LINES = 2;
  private static final int LINES_TO_CLOSE = 1;

  DeviationSection(DayJudged day, Judgement judgement) {
    super(day, judgement);
  }

  /** One sentence a deviation, for the batch record. */
  List<Block> brief() {
    Blocks blocks = new Blocks();
    for (Finding finding : judgement.deviations()) {
      String name = name(finding);
      String verdict = say(finding.verdict());
      String reason = say(finding.reasons());
      blocks.add(paragraph("record.deviation.brief", "{0}, {1}: {2}.", name, verdict, reason));
    }
    if (judgement.deviations().isEmpty()) {
      blocks.add(paragraph("record.deviation.none", "No deviation is open."));
    }
    for (Finding finding : judgement.findings()) {
      String remark = say(finding.remarks());
      if (!remark.isEmpty()) {
        blocks.add(
            paragraph("record.deviation.remark", "{0}, to note: {1}.", name(finding), remark));
      }
    }
    return blocks.add(actions("record.deviation.actions", "Corrective action on file")).list();
  }

  private String name(Finding finding) {
    return capital(name(finding.limit()));
  }

  private Optional<Block> actions(String id, String english) {
    return new ReadingTables(day, judgement).entries(Sheet.ACTIONS, Message.say(id, english));
  }

  /** In full, for the deviation report. */
  List<Block> full() {
    String product = lot.product().map(p -> ", " + p.name()).orElse("");
    EvidenceSection evidence = new EvidenceSection(day, judgement);
    Blocks blocks =
        new Blocks()
            .add(
                new Block.Heading(2, say("record.deviation.lot", "Lot {0}", lot.code()) + product));
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
        .add(subheading("record.action.hold", "Hold, and what has left already"))
        .add(action())
        .list();
  }

  private void finding(Finding finding, Deviation deviation, Blocks blocks) {
    blocks
        .add(new Block.Heading(3, name(finding) + ": " + say(finding.verdict())))
        .add(facts(finding, deviation));
    String remark = capital(say(finding.remarks()));
    if (!remark.isEmpty()) {
      blocks.add(new Facts(1, List.of(fact("record.deviation.to-note", "To note", remark))));
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
    String worst = finding.measured().map(m -> quantity(m.value())).orElse("");
    String beyond = deviation.beyond().map(Phrases::quantity).orElse("–");
    String foundBy = deviation.found().map(entry -> entry.by() + ", " + time(entry)).orElse("");
    return new Facts(
        2,
        List.of(
            fact(FOUND, say(finding.reasons())),
            fact(LIMIT, limit(finding)),
            fact(WORST_VALUE, worst),
            fact("record.deviation.beyond", "Beyond the limit by", beyond),
            fact("record.deviation.happened", "From – to", happened(deviation)),
            fact("record.deviation.found-by", "Found by, when", foundBy),
            fact("record.deviation.calculation", "Calculation", say(finding.formulas())),
            fact("record.deviation.evidence", "Evidence", evidence(finding)),
            fact(PLAN_SAYS, limit.monitoring().ifMissed()),
            fact("record.deviation.ccp-and-step", "CCP and step", ccp(limit) + say(limit.step()))));
  }

  private String limit(Finding finding) {
    String bound = finding.measured().map(this::bound).orElse("–");
    Source source = finding.limit().source();
    return String.join(", ", bound, source.cited(), source.edition());
  }

  /** The stages that were missed, from when to when; else the readings that it rests on. */
  private String happened(Deviation deviation) {
    return deviation.stages().isEmpty()
        ? deviation.readings().map(this::readings).orElse("")
        : deviation.stages().stream().map(this::stage).collect(Collectors.joining("; "));
  }

  private String stage(Between stage) {
    return range(time(stage.from()), stage.until().map(this::time).orElse("–"));
  }

  private String readings(Between readings) {
    return readings.until().filter(readings.from()::equals).isPresent()
        ? time(readings.from())
        : stage(readings);
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

  /** The parts of 9 CFR 417.3(a) or, where the plan has no action for it, of (b). */
  private List<Block> action() {
    boolean foreseen =
        judgement.deviations().stream().allMatch(f -> planned(f.limit()).isPresent());
    String held =
        foreseen
            ? say("record.action.held", "Held: what, how much, where, tag")
            : say("record.action.segregated", "1. Segregated and held: what, how much, where, tag");
    return new Blocks()
        .add(left())
        .add(part(held, What.HELD, LINES))
        .add(foreseen ? foreseen() : unforeseen())
        .add(balance(account.held()))
        .add(part(say("record.action.closed", "Verified and closed"), What.CLOSED, LINES_TO_CLOSE))
        .list();
  }

  private List<Block> foreseen() {
    return List.of(
        subheading("record.action.planned", "Corrective action (9 CFR 417.3(a))"),
        part("record.action.cause", "1. Cause found and removed", What.CAUSE),
        part("record.action.control", "2. Control regained", What.CONTROL_REGAINED),
        part("record.action.prevention", "3. Recurrence prevented", What.PREVENTION),
        part("record.action.disposition", "4. Disposition, to the last gram", What.DISPOSITION));
  }

  private List<Block> unforeseen() {
    return List.of(
        subheading(
            "record.action.unforeseen",
            "Corrective action that the plan did not foresee (9 CFR 417.3(b))"),
        part("record.action.evaluated", "2. Acceptability reviewed", What.EVALUATED),
        part(
            "record.action.disposition-unforeseen",
            "3. Disposition, to the last gram",
            What.DISPOSITION),
        part(
            "record.action.reassessed", "4. Plan reassessed by a trained person", What.REASSESSED));
  }

  private Block left() {
    String nothing =
        say("record.action.nothing-left", "nothing of this lot is on file as dispatched");
    String label = say("record.action.left", "Left already");
    return onFile(label, What.DISPATCHED).orElse(new Facts(1, List.of(fact(label, nothing))));
  }

  private Block part(String id, String english, What what) {
    return part(say(id, english), what, LINES);
  }

  /** What is on file of a part, or room to write it. */
  private Block part(String label, What what, int lines) {
    List<String> slots =
        List.of(
            say("record.action.by", "By"),
            say("record.action.date", "Date"),
            say("record.action.time", "Time"));
    String nothing = say("record.nothing-of", "{0}: NOT RECORDED", label);
    return onFile(label, what).orElse(new Block.Blank(nothing, lines, slots));
  }

  private Optional<Block> onFile(String label, What what) {
    return Optional.of(lot.all(what).stream().map(entry -> fact(label, line(entry))).toList())
        .filter(facts -> !facts.isEmpty())
        .map(facts -> new Facts(1, facts));
  }

  private String line(Entry entry) {
    String parts = joined(", ", entry.shown(), entry.item(), entry.note());
    String who = orNotRecorded(entry.by());
    return say("record.action.told", "{0} ({1}, {2})", parts, who, time(entry)).strip();
  }

  /** The held mass less each disposition; what is left must be nothing. */
  private Optional<Block> balance(HeldMass held) {
    List<Sum.Line> lines = new ArrayList<>();
    if (!held.dispositions().isEmpty()) {
      held.mass().ifPresent(mass -> lines.add(line("record.action.mass-held", "Held", mass)));
    }
    held.dispositions().stream()
        .filter(entry -> entry.quantity().isPresent())
        .forEach(entry -> lines.add(takenOff(entry)));
    held.left()
        .ifPresent(
            left -> lines.add(line("record.action.still-held", "Still to be disposed of", left)));
    return held.left().map(left -> new Sum(lines));
  }

  private Sum.Line line(String id, String english, Quantity mass) {
    return new Sum.Line(say(id, english), "", unbroken(mass.shown()));
  }

  private Sum.Line takenOff(Entry disposition) {
    String what = disposition.item().isEmpty() ? disposition.note() : disposition.item();
    return new Sum.Line(orNotRecorded(what), "", "− " + disposition.shown());
  }
}

package org.flitchbook.record;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.flitchbook.check.CureLine;
import org.flitchbook.check.Finding;
import org.flitchbook.check.Judgement;
import org.flitchbook.document.Block;
import org.flitchbook.document.Block.Sum;
import org.flitchbook.document.Text;
import org.flitchbook.reading.Entry;
import org.flitchbook.sheet.What;

/** The sums of the cure worked line by line. */
final class CureSum {

  private final DayJudged day;
  private final Judgement judgement;
  private final Phrases phrases;

  CureSum(DayJudged day, Judgement judgement) {
    this.day = day;
    this.judgement = judgement;
    this.phrases = day.phrases();
  }

  List<Block> blocks() {
    List<Block> blocks = new ArrayList<>();
    List<Sum.Line> lines = CureLine.of(judgement).stream().flatMap(this::lines).toList();
    if (!lines.isEmpty()) {
      blocks.add(new Sum(lines));
    }
    for (Finding finding : judgement.findings()) {
      if (CureLine.isOfCure(finding) && finding.verdict().isMissed()) {
        blocks.add(
            new Block.Paragraph(
                Text.of(
                    phrases.span(
                        phrases.say(
                            "record.sum.missed",
                            "{0} is {1}: {2}.",
                            Phrases.capital(phrases.name(finding.limit())),
                            finding.verdict(),
                            phrases.reason(finding)),
                        Text.Style.STRONG))));
      }
    }
    return blocks;
  }

  private Stream<Sum.Line> lines(CureLine line) {
    if (line instanceof CureLine.Weighed weighed) {
      return Stream.of(new Sum.Line(label(weighed.entry()), "", weighed.entry().shown()));
    }
    return line instanceof CureLine.Summed summed
        ? summed(summed)
        : Stream.of(provable((CureLine.Provable) line));
  }

  private Sum.Line provable(CureLine.Provable proved) {
    return new Sum.Line(
        phrases.say("record.sum.provable", "What these scales can prove (k = 2)"),
        "",
        bound("± " + proved.half().shown()));
  }

  private String label(Entry entry) {
    String name = Phrases.capital(phrases.word("what", entry.what().word()));
    return phrases.ofPiece(entry.is(What.CURING_SALT) ? ofLot(name, entry) : name, entry);
  }

  private String ofLot(String name, Entry entry) {
    return day.plan()
        .ingredient(entry.item())
        .map(
            known ->
                phrases.say(
                    "record.sum.of-ingredient",
                    "{0}, {1} lot {2}",
                    name,
                    known.name(),
                    known.lot()))
        .orElseGet(() -> phrases.say("record.sum.of-lot", "{0}, lot {1}", name, entry.item()));
  }

  private String bound(String text) {
    return phrases.unbroken(text);
  }

  private Stream<Sum.Line> summed(CureLine.Summed summed) {
    Finding finding = summed.finding();
    return Stream.of(
        new Sum.Line(
            Phrases.capital(summed.measured().quantity().in(day.plan().words())),
            bound(summed.formula().in(day.plan().words())),
            bound(summed.measured().value().shown())),
        new Sum.Line(
            bound(Phrases.capital(phrases.bound(summed.measured()))),
            "",
            bound(
                phrases.say(
                    "record.sum.margin",
                    "{0}, margin {1}",
                    finding.verdict(),
                    Phrases.margin(finding)))));
  }
}

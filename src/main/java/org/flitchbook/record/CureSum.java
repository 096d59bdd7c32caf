package org.flitchbook.record;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.flitchbook.check.Finding;
import org.flitchbook.check.Judgement;
import org.flitchbook.check.Measured;
import org.flitchbook.document.Block;
import org.flitchbook.document.Paragraph;
import org.flitchbook.document.Style;
import org.flitchbook.document.Sum;
import org.flitchbook.document.Text;
import org.flitchbook.plan.Kind;
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
    List<Sum.Line> lines = new ArrayList<>();
    weighed(lines);
    for (Finding finding : judgement.findings()) {
      isOfCure(finding).ifPresent(bound -> worked(lines, finding, bound));
    }
    provable(lines);
    if (!lines.isEmpty()) {
      blocks.add(new Sum(lines));
    }
    for (Finding finding : judgement.findings()) {
      if (isOfCure(finding).isPresent() && finding.verdict().isMissed()) {
        blocks.add(
            new Paragraph(
                Text.of(
                    phrases.span(
                        phrases.say(
                            "record.sum.missed",
                            "{0} is {1}: {2}.",
                            Phrases.capital(phrases.name(finding.limit())),
                            finding.verdict(),
                            phrases.reason(finding)),
                        Style.STRONG))));
      }
    }
    return blocks;
  }

  /** Once, since every limit on the same sum has the same scales behind it. */
  private void provable(List<Sum.Line> lines) {
    judgement.findings().stream()
        .filter(finding -> isOfCure(finding).isPresent())
        .flatMap(finding -> finding.measured().flatMap(Measured::uncertainty).stream())
        .findFirst()
        .ifPresent(
            half ->
                lines.add(
                    new Sum.Line(
                        phrases.say("record.sum.provable", "What these scales can prove (k = 2)"),
                        "",
                        bound("± " + half.shown()))));
  }

  private void weighed(List<Sum.Line> lines) {
    for (What what : List.of(What.GREEN_WEIGHT, What.RIND_WEIGHT, What.CURING_SALT)) {
      for (Entry entry : judgement.lot().all(what)) {
        lines.add(new Sum.Line(label(entry), "", entry.shown()));
      }
    }
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

  private static Optional<Kind.Bound> isOfCure(Finding finding) {
    return finding.limit().kind() instanceof Kind.Bound bound && bound.figure().isIngoing()
        ? Optional.of(bound)
        : Optional.empty();
  }

  private void worked(List<Sum.Line> lines, Finding finding, Kind.Bound bound) {
    Optional<Measured> measured = finding.measured();
    if (measured.isEmpty()) {
      return;
    }
    String result = measured.get().value().shown();
    String sum = finding.formula().replace(" = " + result, "");
    lines.add(
        new Sum.Line(
            Phrases.capital(phrases.word("figure", bound.figure().word())),
            bound(sum),
            bound(result)));
    lines.add(
        new Sum.Line(
            bound(Phrases.capital(phrases.bound(measured.get()))),
            "",
            bound(
                phrases.say(
                    "record.sum.margin",
                    "{0}, margin {1}",
                    finding.verdict(),
                    Phrases.margin(finding)))));
  }
}

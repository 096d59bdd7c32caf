package org.flitchbook.record;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.flitchbook.check.Finding;
import org.flitchbook.check.Judgement;
import org.flitchbook.check.Measured;
import org.flitchbook.document.Block;
import org.flitchbook.document.Paragraph;
import org.flitchbook.document.Sum;
import org.flitchbook.plan.Kind;
import org.flitchbook.reading.Entry;
import org.flitchbook.sheet.What;

/** The sums of the cure worked line by line. */
final class CureSum {

  private final DayJudged day;
  private final Judgement judgement;

  CureSum(DayJudged day, Judgement judgement) {
    this.day = day;
    this.judgement = judgement;
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
                Bound.strong(
                    Phrases.capital(finding.limit().name())
                        + " is "
                        + finding.verdict().words()
                        + ": "
                        + finding.reason()
                        + ".")));
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
                        "What these scales can prove (k = 2)",
                        "",
                        Bound.bound("± " + half.shown()))));
  }

  private void weighed(List<Sum.Line> lines) {
    for (What what : List.of(What.GREEN_WEIGHT, What.RIND_WEIGHT, What.CURING_SALT)) {
      for (Entry entry : judgement.lot().all(what)) {
        lines.add(new Sum.Line(label(entry), "", entry.shown()));
      }
    }
  }

  private String label(Entry entry) {
    String piece = entry.piece().isEmpty() ? "" : ", piece " + entry.piece();
    String strength =
        entry.is(What.CURING_SALT)
            ? day.plan()
                .ingredient(entry.item())
                .map(i -> ", " + i.name() + " lot " + i.lot())
                .orElse(", lot " + entry.item())
            : "";
    return Phrases.capital(entry.what().word()) + strength + piece;
  }

  private static Optional<Kind.Bound> isOfCure(Finding finding) {
    return finding.limit().kind() instanceof Kind.Bound bound && bound.figure().isIngoing()
        ? Optional.of(bound)
        : Optional.empty();
  }

  private static void worked(List<Sum.Line> lines, Finding finding, Kind.Bound bound) {
    Optional<Measured> measured = finding.measured();
    if (measured.isEmpty()) {
      return;
    }
    String result = measured.get().value().shown();
    String sum = finding.formula().replace(" = " + result, "");
    lines.add(
        new Sum.Line(
            Phrases.capital(bound.figure().word()), Bound.bound(sum), Bound.bound(result)));
    lines.add(
        new Sum.Line(
            Bound.bound(Phrases.capital(Phrases.bound(measured.get()))),
            "",
            Bound.bound(finding.verdict().words() + ", margin " + Phrases.margin(finding))));
  }
}

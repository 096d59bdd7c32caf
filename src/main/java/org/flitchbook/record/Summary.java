package org.flitchbook.record;

import java.util.ArrayList;
import java.util.List;
import org.flitchbook.check.Checks;
import org.flitchbook.check.Finding;
import org.flitchbook.check.Judgement;
import org.flitchbook.check.Verdict;
import org.flitchbook.document.Block;
import org.flitchbook.document.Document;
import org.flitchbook.document.Paper;
import org.flitchbook.document.Paragraph;
import org.flitchbook.document.Running;
import org.flitchbook.input.Fault;
import org.flitchbook.input.Severity;
import org.flitchbook.plan.Limit;

/** The day in a few lines: each lot's verdict, and under it what is wrong and what to do. */
final class Summary {

  private final DayJudged day;

  Summary(DayJudged day) {
    this.day = day;
  }

  Document document() {
    List<Block> blocks = new ArrayList<>();
    for (Judgement each : day.judgements()) {
      blocks.add(new Paragraph(Bound.of(String.join("\n", lot(each)))));
    }
    if (day.judgements().isEmpty()) {
      blocks.add(line("No lot has anything filed on this day, and none is in a running step."));
    }
    for (Fault fault : day.faults()) {
      blocks.add(line(told(fault)));
    }
    return new Document(
        day.plan().establishment().name() + ", " + day.day(),
        "Judged under plan version " + day.plan().version(),
        day.plan().words(),
        day.book() + "/" + day.day(),
        day.moment(),
        Paper.A4,
        new Running("", "", "", ""),
        blocks);
  }

  private static String told(Fault fault) {
    return fault.severity().word() + " (" + fault.rule() + "): " + fault;
  }

  private static Paragraph line(String text) {
    return new Paragraph(Bound.of(text));
  }

  private List<String> lot(Judgement judgement) {
    List<String> lines = new ArrayList<>();
    String product = judgement.lot().product().map(p -> ", " + p.name()).orElse("");
    lines.add(
        Phrases.tone(judgement.verdict()).symbol()
            + " "
            + judgement.lot().code()
            + product
            + ": "
            + judgement.verdict().words().toUpperCase(java.util.Locale.ROOT));
    for (Finding finding : Checks.inOrder(judgement.findings())) {
      boolean said =
          finding.verdict().isMissed()
              && (judgement.deviations().contains(finding)
                  || judgement.operatingMisses().contains(finding));
      if (said) {
        lines.add("– " + missed(finding));
      }
    }
    long pending =
        judgement.findings().stream().filter(f -> f.verdict() == Verdict.PENDING).count();
    if (pending > 0) {
      lines.add("– " + pending + (pending == 1 ? " limit is" : " limits are") + " pending");
    }
    judgement.faults().stream()
        .filter(fault -> !fault.is(Severity.BROKEN))
        .forEach(fault -> lines.add("– " + told(fault)));
    return lines;
  }

  private String missed(Finding finding) {
    Limit limit = finding.limit();
    String what = finding.verdict().words() + ": " + limit.name();
    String why = finding.reason().isEmpty() ? "" : ": " + finding.reason();
    String act = Phrases.planned(limit).map(text -> " → " + text).orElse("");
    return what + why + " (" + day.plan().cited(limit.source()) + ")" + act;
  }
}

package org.flitchbook.record;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.flitchbook.check.Checks;
import org.flitchbook.check.Finding;
import org.flitchbook.check.Judgement;
import org.flitchbook.check.Verdict;
import org.flitchbook.document.Block;
import org.flitchbook.document.Document;
import org.flitchbook.input.Fault;
import org.flitchbook.input.Severity;
import org.flitchbook.plan.Limit;

/** The day in a few lines: each lot's verdict, and under it what is wrong and what to do. */
final class Summary {

  private final DayJudged day;
  private final Phrases phrases;

  Summary(DayJudged day) {
    this.day = day;
    this.phrases = day.phrases();
  }

  Document document() {
    List<Block> blocks = new ArrayList<>();
    for (Judgement each : day.judgements()) {
      blocks.add(phrases.paragraph(String.join("\n", lot(each))));
    }
    if (day.judgements().isEmpty()) {
      blocks.add(
          phrases.paragraph(
              phrases.say(
                  "record.summary.no-lot",
                  "No lot has anything filed on this day, and none is in a running step.")));
    }
    for (Fault fault : day.faults()) {
      blocks.add(phrases.paragraph(told(fault)));
    }
    return new Document(
        day.plan().establishment().name() + ", " + day.day(),
        phrases.say("record.summary.plan", "Judged under plan version {0}", day.plan().version()),
        day.plan().words(),
        day.book() + "/" + day.day(),
        day.moment(),
        Document.Paper.A4,
        new Document.Running("", "", "", ""),
        blocks);
  }

  private String told(Fault fault) {
    String told = plainly(fault);
    return fault
        .explained()
        .map(
            said ->
                phrases.say(
                    "record.summary.explained",
                    "{0}; explained by {1}: {2}",
                    told,
                    said.by(),
                    said.why()))
        .orElse(told);
  }

  private String plainly(Fault fault) {
    return phrases.say(
        "record.summary.fault",
        "{0} ({1}): {2}: found {3}, expected {4}",
        phrases.word("severity", fault.severity().word()),
        phrases.word("rule", fault.rule()),
        fault.place(),
        fault.found(),
        fault.expected());
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
            + phrases.verdict(judgement.verdict()).toUpperCase(Locale.ROOT));
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
      lines.add(
          "– "
              + phrases.count(
                  "record.summary.pending",
                  pending,
                  "{0} limit is pending",
                  "{0} limits are pending"));
    }
    judgement.faults().stream()
        .filter(fault -> !fault.is(Severity.BROKEN))
        .forEach(fault -> lines.add("– " + told(fault)));
    return lines;
  }

  private String missed(Finding finding) {
    Limit limit = finding.limit();
    String what = phrases.verdict(finding.verdict()) + ": " + phrases.name(limit);
    String why = finding.reasons().isEmpty() ? "" : ": " + phrases.say(finding.reasons());
    String act = Phrases.planned(limit).map(text -> " → " + text).orElse("");
    return what + why + " (" + day.plan().cited(limit.source()) + ")" + act;
  }
}

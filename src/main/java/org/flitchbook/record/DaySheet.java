package org.flitchbook.record;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import org.flitchbook.account.DayAccount;
import org.flitchbook.account.LotAccount;
import org.flitchbook.check.Checks;
import org.flitchbook.check.Finding;
import org.flitchbook.check.Judgement;
import org.flitchbook.check.Verdict;
import org.flitchbook.document.Block;
import org.flitchbook.document.Block.Signatures;
import org.flitchbook.document.Document;
import org.flitchbook.input.Fault;
import org.flitchbook.input.Severity;
import org.flitchbook.lot.Stay;
import org.flitchbook.plan.Product;
import org.flitchbook.reading.FileRead;
import org.flitchbook.sheet.Step;

/** The sheet of one day: every lot with its verdict, and what is to be done. */
final class DaySheet extends Section {

  private final DayAccount account;

  DaySheet(DayJudged day) {
    super(day);
    this.account = day.accounts().day(day.judgements());
  }

  Document document(List<FileRead> carried) {
    Documents documents = new Documents(day);
    Blocks blocks =
        new Blocks()
            .add(banner())
            .add(lots())
            // Before the details, so that the boxes to sign stand under the verdicts, never alone.
            .add(keepingNote(account.keepUntil()))
            .add(caution())
            .add(signatures())
            .add(documents.changes())
            .add(missed())
            .add(doubts())
            .add(documents.evidence(carried));
    String title = say("record.day.title", "Day sheet {0}", day.day());
    return documents.record(title, "", "day", blocks);
  }

  private Block.Banner banner() {
    Verdict worst = account.verdicts().keySet().stream().findFirst().orElse(Verdict.PENDING);
    String counts =
        account.verdicts().entrySet().stream()
            .map(each -> say("record.day.count", "{0} {1}", each.getValue(), each.getKey()))
            .collect(Collectors.joining(", "));
    return new Block.Banner(
        tone(worst),
        say("record.day.lots", "{0} LOTS", account.lots()),
        capital(
            account.lots() == 0
                ? say("record.day.no-lot", "No lot.")
                : say("record.day.counts", "{0}.", counts)));
  }

  /** One row a lot: where it is, its verdict, what is open, and what to do. */
  private Block lots() {
    return table("record.day.lots-of-the-day", "Lots of the day", day.judgements())
        .record(LOT, 0, each -> each.lot().code())
        .column("record.day.product", "Product", 16, this::product)
        .column(STEP, 0, this::step)
        .verdict(0, Judgement::verdict)
        .column("record.day.open", "Open", 16, this::open)
        .column("record.day.to-do", "To do", 14, this::toDo)
        .or(paragraph("record.day.nothing-filed", "No lot has anything filed on this day."));
  }

  private String product(Judgement judgement) {
    return judgement.lot().product().map(p -> p.name()).orElse(notRecorded());
  }

  private String step(Judgement judgement) {
    List<Stay> stays = judgement.lot().stays();
    if (stays.isEmpty()) {
      return say("record.day.before-cure", "before cure");
    }
    Stay last = stays.get(stays.size() - 1);
    return last.out().isPresent()
        ? say("record.day.after", "after {0}", last.step())
        : say("record.day.in", "in {0}", last.step());
  }

  private String open(Judgement judgement) {
    List<String> open = new ArrayList<>();
    judgement.deviations().forEach(finding -> open.add(name(finding.limit())));
    LotAccount.Open counted = day.accounts().lot(judgement).open();
    if (counted.pending() > 0) {
      open.add(
          count(
              "record.day.pending", counted.pending(), "{0} limit pending", "{0} limits pending"));
    }
    if (counted.doubts() > 0) {
      open.add(toExplain(counted.doubts()));
    }
    return open.isEmpty() ? say("record.day.nothing-open", "nothing") : String.join("; ", open);
  }

  /** What the plan says of each deviation; else what comes next. */
  private String toDo(Judgement judgement) {
    if (!judgement.deviations().isEmpty()) {
      return judgement.deviations().stream()
          .map(finding -> toDo(finding.limit()))
          .distinct()
          .collect(Collectors.joining("; "));
    }
    if (!judgement.openFaults().isEmpty()) {
      return say("record.day.explain", "explain what is in doubt");
    }
    if (judgement.verdict() == Verdict.PENDING) {
      return say("record.day.go-on", "go on; enter what comes");
    }
    return judgement.lot().first(Step.RELEASE.into()).isPresent()
        ? say("record.day.nothing-to-do", "nothing")
        : say("record.day.review", "review before it leaves");
  }

  private Signatures signatures() {
    return new Signatures(
        List.of(
            new Signatures.Box(
                "closed",
                say("record.day.closed-by", "Day closed by"),
                "",
                say("record.day.closed", "All sheets and logs are in.")),
            new Signatures.Box(
                "reviewed",
                say("record.day.reviewed-by", "Reviewed by"),
                "",
                say("record.day.reviewed", "The records were read."))));
  }

  private Optional<Block> missed() {
    return table(
            "record.day.to-be-done",
            "What is to be done",
            DeviationReport.Row.of(day.judgements(), DaySheet::missed))
        .column(LOT, 6, DeviationReport.Row::lot)
        .column(LIMIT, 11, row -> ranked(row.finding().limit()))
        .verdict(7, row -> row.finding().verdict())
        .column(FOUND, 22, row -> reason(row.finding()))
        .column(PLAN_SAYS, 13, row -> planned(row.finding().limit()).orElse("–"))
        .ifAny();
  }

  private Optional<Block> doubts() {
    return table(DOUBTS, day.allFaults())
        .column(LOT, 6, f -> f.lot().isEmpty() ? say("record.day.the-day", "the day") : f.lot())
        .column(FOLLOWS, 6, this::follows)
        .column(PLACE, 12, fault -> say(fault.place()))
        .column(FAULT_FOUND, 16, fault -> say(fault.found()))
        .column(EXPECTED, 14, fault -> say(fault.expected()))
        .ifAny();
  }

  /** The deviations and the operating limits that were missed. */
  static List<Finding> missed(Judgement judgement) {
    return Checks.inOrder(judgement.findings()).stream()
        .filter(
            each ->
                judgement.deviations().contains(each) || judgement.operatingMisses().contains(each))
        .toList();
  }

  /** The day in a few lines: each lot's verdict, and under it what is wrong and what to do. */
  Document summary() {
    Blocks blocks = new Blocks();
    day.judgements().forEach(each -> blocks.add(paragraph(String.join("\n", lot(each)))));
    if (day.judgements().isEmpty()) {
      blocks.add(
          paragraph(
              "record.summary.no-lot",
              "No lot has anything filed on this day, and none is in a running step."));
    }
    day.faults().forEach(fault -> blocks.add(paragraph(told(fault))));
    return new Documents(day)
        .screen(
            day.plan().establishment().name() + ", " + day.day(),
            say("record.summary.plan", "Judged under plan version {0}", day.plan().version()),
            day.day().toString(),
            blocks);
  }

  private String told(Fault fault) {
    String told =
        say(
            "record.summary.fault",
            "{0} ({1}): {2}: found {3}, expected {4}",
            word("severity", fault.severity().word()),
            word("rule", fault.rule()),
            fault.place(),
            fault.found(),
            fault.expected());
    return fault
        .explained()
        .map(
            said ->
                say(
                    "record.summary.explained",
                    "{0}; explained by {1}: {2}",
                    told,
                    said.by(),
                    said.why()))
        .orElse(told);
  }

  private List<String> lot(Judgement judgement) {
    List<String> lines = new ArrayList<>();
    String product = judgement.lot().product().map(Product::name).orElse("");
    String verdict = say(judgement.verdict()).toUpperCase(Locale.ROOT);
    String symbol = tone(judgement.verdict()).symbol();
    lines.add(symbol + " " + joined(", ", judgement.lot().code(), product) + ": " + verdict);
    missed(judgement).forEach(finding -> lines.add("– " + line(finding)));
    long pending = day.accounts().lot(judgement).open().pending();
    if (pending > 0) {
      lines.add(
          "– "
              + count(
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

  private String line(Finding finding) {
    String what = say(finding.verdict()) + ": " + name(finding.limit());
    String reason = reason(finding);
    String why = reason.isEmpty() ? "" : ": " + reason;
    String act = planned(finding.limit()).map(text -> " → " + text).orElse("");
    return what + why + " (" + day.plan().cited(finding.limit().source()) + ")" + act;
  }
}

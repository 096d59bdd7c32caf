package org.flitchbook.record;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.flitchbook.account.Accounts.DayAccount;
import org.flitchbook.account.LotAccount;
import org.flitchbook.check.Checks;
import org.flitchbook.check.Finding;
import org.flitchbook.check.Judgement;
import org.flitchbook.check.Verdict;
import org.flitchbook.document.Block;
import org.flitchbook.document.Document;
import org.flitchbook.document.Tone;
import org.flitchbook.input.Fault;
import org.flitchbook.input.Severity;
import org.flitchbook.lot.Stay;
import org.flitchbook.plan.Limit;
import org.flitchbook.plan.Product;
import org.flitchbook.sheet.Step;

/** What is said of one day: its sheet, the report of its deviations, a few lines for a terminal. */
final class DayRecords extends Section {

  private final DayAccount account;

  DayRecords(DayJudged day) {
    super(day);
    this.account = day.accounts().day(day.judgements());
  }

  /** Every lot with its verdict, and what is to be done. */
  Document sheet(Carried carried) {
    Documents documents = new Documents(day);
    Blocks blocks =
        new Blocks()
            .add(banner())
            .add(lots())
            // Before the details, so that the boxes to sign stand under the verdicts, never alone.
            .add(documents.keepingNote(account.keepUntil()))
            .add(caution())
            .add(SigningBoxes.ofDay(day))
            .add(asked())
            .add(day.filing().days().lines().stream().map(line -> paragraph(say(line))).toList())
            .add(documents.changes())
            .add(missed())
            .add(doubts())
            .add(SigningBoxes.secondOfDay(day))
            .add(documents.evidence(carried));
    String title = say("record.day.title", "Day sheet {0}", day.day());
    return documents.record(title, "", "day", blocks);
  }

  /** A day without a deviation says so and is signed all the same. */
  Document deviations(Carried carried) {
    Documents documents = new Documents(day);
    Blocks blocks =
        new Blocks()
            .add(deviationBanner())
            .add(overview())
            .add(documents.keepingNote(day.accounts().day(day.held()).keepUntil()))
            .add(caution())
            .add(SigningBoxes.ofReport(day))
            .add(asked())
            .add(documents.changes());
    for (Judgement each : day.held()) {
      blocks.add(new Block.PageBreak()).add(new DeviationSection(day, each).full());
    }
    blocks.add(documents.evidence(carried));
    String title = say("record.report.title", "Deviation report {0}", day.day());
    return documents.record(title, "", "deviations", blocks);
  }

  private Block.Banner deviationBanner() {
    if (account.deviations() == 0) {
      return new Block.Banner(
          Tone.PASS,
          say("record.report.none", "NONE"),
          say("record.report.nothing-missed", "No critical limit was missed on this day."));
    }
    return new Block.Banner(
        Tone.FAIL,
        count("record.report.deviations", account.deviations(), "{0} DEVIATION", "{0} DEVIATIONS"),
        count(
            "record.report.held",
            account.held().size(),
            "One lot is held: {1}.",
            "{0} lots are held: {1}.",
            String.join(", ", account.held())));
  }

  /** A finding with the code of its lot. */
  private record Row(String lot, Finding finding) {
    static List<Row> of(List<Judgement> lots, Function<Judgement, List<Finding>> chosen) {
      return lots.stream()
          .flatMap(lot -> chosen.apply(lot).stream().map(each -> new Row(lot.lot().code(), each)))
          .toList();
    }
  }

  private Optional<Block> overview() {
    return table("record.report.open", "Open deviations", Row.of(day.held(), Judgement::deviations))
        .record(6, Row::lot)
        .column(LIMIT, 15, row -> name(row.finding().limit()))
        .verdict(7, row -> row.finding().verdict())
        .column(FOUND, 22, row -> say(row.finding().reasons()))
        .column(PLAN_SAYS, 14, row -> toDo(row.finding().limit()))
        .ifAny();
  }

  private Block.Banner banner() {
    Verdict worst = account.verdicts().keySet().stream().findFirst().orElse(Verdict.PENDING);
    String counts =
        account.verdicts().entrySet().stream()
            .map(each -> say("record.day.count", "{0} {1}", each.getValue(), each.getKey()))
            .collect(Collectors.joining(", "));
    String sentence =
        counts.isEmpty()
            ? say("record.day.no-lot", "No lot.")
            : say("record.day.counts", "{0}.", counts);
    String lots = count("record.day.lots", account.lots(), "{0} LOT", "{0} LOTS");
    String left =
        day.judgements().stream()
            .filter(each -> !each.left().isEmpty())
            .map(each -> each.lot().code() + " " + left(each))
            .collect(Collectors.joining());
    return new Block.Banner(tone(worst), lots, left + capital(sentence));
  }

  /** One row a lot: where it is, its verdict, what is open, and what to do. */
  private Block lots() {
    return table("record.day.lots-of-the-day", "Lots of the day", day.judgements())
        .record(0, each -> each.lot().code())
        .column("record.day.product", "Product", 16, each -> product(each.lot()))
        .column(STEP, 0, this::step)
        .verdict(0, Judgement::verdict)
        .column("record.day.open", "Open", 16, this::open)
        .column("record.day.to-do", "To do", 14, this::toDo)
        .or(paragraph("record.day.nothing-filed", "No lot has anything filed on this day."));
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
    long pending = counted.pending();
    if (pending > 0) {
      open.add(count("record.day.pending", pending, "{0} limit pending", "{0} limits pending"));
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

  private Optional<Block> missed() {
    return table(
            "record.day.to-be-done",
            "What is to be done",
            Row.of(day.judgements(), DayRecords::missed))
        .column(LOT, 6, Row::lot)
        .column(LIMIT, 11, row -> ranked(row.finding().limit()))
        .verdict(7, row -> row.finding().verdict())
        .column(FOUND, 22, row -> say(row.finding().reasons()))
        .column(PLAN_SAYS, 13, row -> planned(row.finding().limit()).orElse("–"))
        .ifAny();
  }

  private Optional<Block> doubts() {
    String theDay = say("record.day.the-day", "the day");
    return faults(
            table(DOUBTS, day.allFaults())
                .column(LOT, 6, fault -> fault.lot().isEmpty() ? theDay : fault.lot()))
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
    day.judgements().forEach(each -> blocks.add(paragraph(lot(each))));
    if (day.judgements().isEmpty()) {
      blocks.add(
          paragraph(
              "record.summary.no-lot",
              "No lot has anything filed on this day, and none is in a running step."));
    }
    day.faults().forEach(fault -> blocks.add(paragraph(line(fault))));
    return new Documents(day)
        .screen(
            day.plan().establishment().name() + ", " + day.day(),
            say("record.summary.plan", "Judged under plan version {0}", day.plan().version()),
            day.day().toString(),
            blocks);
  }

  private String line(Fault fault) {
    String line =
        say(
            "record.summary.fault",
            "{0} ({1}): {2}: found {3}, expected {4}",
            word("severity", fault.severity().word()),
            word("rule", fault.rule()),
            fault.place(),
            fault.found(),
            fault.expected());
    return fault.explained().map(it -> explained(line, it.by(), it.why())).orElse(line);
  }

  private String explained(String line, String by, String why) {
    return say("record.summary.explained", "{0}; explained by {1}: {2}", line, by, why);
  }

  private String lot(Judgement judgement) {
    List<String> lines = new ArrayList<>();
    missed(judgement).forEach(finding -> lines.add(line(finding)));
    long open = day.accounts().lot(judgement).open().pending();
    String pending =
        count("record.summary.pending", open, "{0} limit is pending", "{0} limits are pending");
    if (open > 0) {
      lines.add(pending);
    }
    judgement.faults().stream()
        .filter(fault -> !fault.is(Severity.BROKEN))
        .forEach(fault -> lines.add(line(fault)));
    String product = judgement.lot().product().map(Product::name).orElse("");
    String verdict = say(judgement.verdict()).toUpperCase(Locale.ROOT);
    String symbol = tone(judgement.verdict()).symbol();
    String head = symbol + " " + joined(", ", judgement.lot().code(), product) + ": " + verdict;
    return head + lines.stream().map(line -> "\n– " + line).collect(Collectors.joining());
  }

  private String line(Finding finding) {
    Limit limit = finding.limit();
    String what = joined(": ", say(finding.verdict()), name(limit), say(finding.reasons()));
    String act = planned(limit).map(text -> " → " + text).orElse("");
    return what + " (" + day.plan().cited(limit.source()) + ")" + act;
  }
}

package org.flitchbook.record;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.flitchbook.account.DayAccount;
import org.flitchbook.check.Finding;
import org.flitchbook.check.Judgement;
import org.flitchbook.document.Block;
import org.flitchbook.document.Block.Signatures;
import org.flitchbook.document.Document;
import org.flitchbook.document.Tone;
import org.flitchbook.reading.FileRead;

/** The report of a day's deviations; a day without one says so and is signed all the same. */
final class DeviationReport extends Section {

  private final List<Judgement> held;
  private final DayAccount account;

  DeviationReport(DayJudged day) {
    super(day);
    this.held = day.held();
    this.account = day.accounts().day(held);
  }

  Document document(List<FileRead> carried) {
    Documents documents = new Documents(day);
    Blocks blocks =
        new Blocks()
            .add(account.deviations() == 0 ? none() : deviations())
            .add(overview())
            .add(keepingNote(account.keepUntil()))
            .add(caution())
            .add(signatures())
            .add(documents.changes());
    for (Judgement each : held) {
      blocks.add(new Block.PageBreak()).add(new DeviationSection(day, each).full());
    }
    blocks.add(documents.evidence(carried));
    String title = say("record.report.title", "Deviation report {0}", day.day());
    return documents.record(title, "", "deviations", blocks);
  }

  private Block.Banner none() {
    return new Block.Banner(
        Tone.PASS,
        say("record.report.none", "NONE"),
        say("record.report.nothing-missed", "No critical limit was missed on this day."));
  }

  private Block.Banner deviations() {
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
  record Row(String lot, Finding finding) {
    static List<Row> of(List<Judgement> lots, Function<Judgement, List<Finding>> chosen) {
      return lots.stream()
          .flatMap(lot -> chosen.apply(lot).stream().map(each -> new Row(lot.lot().code(), each)))
          .toList();
    }
  }

  private Optional<Block> overview() {
    return table("record.report.open", "Open deviations", Row.of(held, Judgement::deviations))
        .record(LOT, 6, Row::lot)
        .column(LIMIT, 15, row -> name(row.finding().limit()))
        .verdict(7, row -> row.finding().verdict())
        .column(FOUND, 22, row -> reason(row.finding()))
        .column(PLAN_SAYS, 14, row -> toDo(row.finding().limit()))
        .ifAny();
  }

  private Signatures signatures() {
    return new Signatures(
        List.of(
            new Signatures.Box(
                "raised",
                say("record.report.raised-by", "Raised by"),
                "",
                say("record.report.raised", "The lots named are held.")),
            new Signatures.Box(
                "decided",
                say("record.report.decided-by", "Decided by"),
                "",
                say("record.report.decided", "Disposition of every gram is on file.")),
            new Signatures.Box(
                "closed",
                say("record.report.closed-by", "Verified and closed by"),
                "",
                say("record.report.closed", "All four parts are done."))));
  }
}

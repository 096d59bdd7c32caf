package org.flitchbook.record;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.flitchbook.check.Checks;
import org.flitchbook.check.Finding;
import org.flitchbook.check.Judgement;
import org.flitchbook.check.Verdict;
import org.flitchbook.document.Block;
import org.flitchbook.document.Document;
import org.flitchbook.document.Signatures;
import org.flitchbook.document.Text;
import org.flitchbook.input.Fault;
import org.flitchbook.reading.FileRead;
import org.flitchbook.sheet.Step;

/** The sheet of one day: every lot with its verdict, and what is to be done. */
final class DaySheet {

  private final DayJudged day;
  private final List<FileRead> carried;
  private final Phrases phrases;

  DaySheet(DayJudged day, List<FileRead> carried) {
    this.day = day;
    this.carried = carried;
    this.phrases = day.phrases();
  }

  Document document() {
    List<Block> blocks = new ArrayList<>();
    blocks.add(banner());
    blocks.add(lots());
    // Before the details, so that the boxes to sign stand under the verdicts and never alone.
    blocks.add(new Keeping(day, day.judgements().stream().map(Judgement::lot).toList()).note());
    blocks.add(
        new Block.Caution(
            phrases.say(
                "record.caution",
                "Curing salt is toxic in excess: weigh it, never spoon it. The limits are those of"
                    + " the plan named here; confirm them with the local authority or a process"
                    + " authority. This record says which limits were met, not met or not shown. It"
                    + " does not say that food is safe, and it replaces no licensed decision.")));
    blocks.add(
        new Signatures(
            List.of(
                new Signatures.Box(
                    "closed",
                    phrases.say("record.day.closed-by", "Day closed by"),
                    "",
                    phrases.say("record.day.closed", "All sheets and logs are in.")),
                new Signatures.Box(
                    "reviewed",
                    phrases.say("record.day.reviewed-by", "Reviewed by"),
                    "",
                    phrases.say("record.day.reviewed", "The records were read.")))));
    blocks.addAll(new FilingSection(day).changes());
    missed(blocks);
    faults(blocks);
    blocks.addAll(new Carried(day, carried).blocks());
    return new Frame(day)
        .document(phrases.say("record.day.title", "Day sheet {0}", day.day()), "", "day", blocks);
  }

  private Block.Banner banner() {
    Verdict worst =
        day.judgements().stream()
            .map(Judgement::verdict)
            .min(Verdict::compareTo)
            .orElse(Verdict.PENDING);
    List<String> counts =
        Stream.of(Verdict.NOT_MET, Verdict.NOT_SHOWN, Verdict.PENDING, Verdict.MET)
            .filter(verdict -> count(verdict) > 0)
            .map(
                verdict ->
                    phrases.say(
                        "record.day.count", "{0} {1}", count(verdict), phrases.verdict(verdict)))
            .toList();
    String told =
        day.judgements().isEmpty()
            ? phrases.say("record.day.no-lot", "No lot.")
            : phrases.say("record.day.counts", "{0}.", String.join(", ", counts));
    return new Block.Banner(
        Phrases.tone(worst),
        phrases.say("record.day.lots", "{0} LOTS", day.judgements().size()),
        Phrases.capital(told));
  }

  private long count(Verdict verdict) {
    return day.judgements().stream().filter(each -> each.verdict() == verdict).count();
  }

  /** One row a lot: where it is, its verdict, what is open, and what to do. */
  private Block lots() {
    Grid grid =
        phrases
            .grid("record.day.lots-of-the-day", "Lots of the day")
            .head("record.head.lot", "Lot", 0)
            .head("record.day.product", "Product", 16)
            .head("record.head.step", "Step", 0)
            .head("record.head.verdict", "Verdict", 0)
            .head("record.day.open", "Open", 16)
            .head("record.day.to-do", "To do", 14);
    for (Judgement each : day.judgements()) {
      String code = each.lot().code();
      grid.row(
          grid.leading(code, new Text.Target.File(code + ".pdf")),
          grid.cell(each.lot().product().map(p -> p.name()).orElse(phrases.notRecorded())),
          grid.cell(step(each)),
          phrases.cell(each.verdict()),
          grid.cell(open(each)),
          grid.cell(toDo(each)));
    }
    return grid.isEmpty()
        ? phrases.paragraph(
            phrases.say("record.day.nothing-filed", "No lot has anything filed on this day."))
        : grid.table();
  }

  private String open(Judgement judgement) {
    List<String> open = new ArrayList<>();
    judgement.deviations().forEach(finding -> open.add(phrases.name(finding.limit())));
    long pending =
        judgement.findings().stream().filter(f -> f.verdict() == Verdict.PENDING).count();
    if (pending > 0) {
      open.add(
          phrases.count("record.day.pending", pending, "{0} limit pending", "{0} limits pending"));
    }
    if (!judgement.openFaults().isEmpty()) {
      open.add(
          phrases.count(
              "record.evidence.open",
              judgement.openFaults().size(),
              "{0} doubt to be explained",
              "{0} doubts to be explained"));
    }
    return open.isEmpty()
        ? phrases.say("record.day.nothing-open", "nothing")
        : String.join("; ", open);
  }

  /** What the plan says of each deviation; else what comes next. */
  private String toDo(Judgement judgement) {
    if (!judgement.deviations().isEmpty()) {
      return judgement.deviations().stream()
          .map(
              finding ->
                  Phrases.planned(finding.limit())
                      .orElse(phrases.say("record.report.hold", "hold; a person decides")))
          .distinct()
          .collect(Collectors.joining("; "));
    }
    if (!judgement.openFaults().isEmpty()) {
      return phrases.say("record.day.explain", "explain what is in doubt");
    }
    if (judgement.verdict() == Verdict.PENDING) {
      return phrases.say("record.day.go-on", "go on; enter what comes");
    }
    return judgement.lot().first(Step.RELEASE.into()).isPresent()
        ? phrases.say("record.day.nothing-to-do", "nothing")
        : phrases.say("record.day.review", "review before it leaves");
  }

  private String step(Judgement judgement) {
    return judgement.lot().stays().stream()
        .reduce((earlier, later) -> later)
        .map(
            stay ->
                stay.out().isPresent()
                    ? phrases.say("record.day.after", "after {0}", phrases.step(stay.step()))
                    : phrases.say("record.day.in", "in {0}", phrases.step(stay.step())))
        .orElseGet(() -> phrases.say("record.day.before-cure", "before cure"));
  }

  private void missed(List<Block> blocks) {
    Grid grid =
        phrases
            .grid("record.day.to-be-done", "What is to be done")
            .head("record.head.lot", "Lot", 6)
            .head("record.head.limit", "Limit", 11)
            .head("record.head.verdict", "Verdict", 7)
            .head("record.head.found", "What was found", 22)
            .head("record.head.plan-says", "The plan says", 13);
    for (Judgement each : day.judgements()) {
      for (Finding finding : Checks.inOrder(each.findings())) {
        if (each.deviations().contains(finding) || each.operatingMisses().contains(finding)) {
          grid.row(
              grid.cell(each.lot().code()),
              grid.cell(phrases.ranked(finding.limit())),
              phrases.cell(finding.verdict()),
              grid.cell(phrases.say(finding.reasons())),
              grid.cell(Phrases.planned(finding.limit()).orElse("–")));
        }
      }
    }
    if (!grid.isEmpty()) {
      blocks.add(grid.table());
    }
  }

  private void faults(List<Block> blocks) {
    Grid grid =
        phrases
            .grid("record.batch.doubts", "Data in doubt")
            .head("record.head.lot", "Lot", 6)
            .head("record.head.follows", "What follows", 6)
            .head("record.head.place", "Where", 12)
            .head("record.head.fault-found", "Found", 16)
            .head("record.head.fault-expected", "Expected", 14);
    for (Fault fault : day.allFaults()) {
      grid.row(
          fault.lot().isEmpty() ? phrases.say("record.day.the-day", "the day") : fault.lot(),
          phrases.follows(fault),
          fault.place().toString(),
          phrases.say(fault.found()),
          phrases.say(fault.expected()));
    }
    if (!grid.isEmpty()) {
      blocks.add(grid.table());
    }
  }
}

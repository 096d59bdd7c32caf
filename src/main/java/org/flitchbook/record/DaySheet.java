package org.flitchbook.record;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.flitchbook.check.Checks;
import org.flitchbook.check.Finding;
import org.flitchbook.check.Judgement;
import org.flitchbook.check.Verdict;
import org.flitchbook.document.Banner;
import org.flitchbook.document.Block;
import org.flitchbook.document.Caution;
import org.flitchbook.document.Document;
import org.flitchbook.document.Paragraph;
import org.flitchbook.document.SignatureBox;
import org.flitchbook.document.Signatures;
import org.flitchbook.input.Fault;
import org.flitchbook.reading.FileRead;

/** The sheet of one day: every lot with its verdict, and what is to be done. */
final class DaySheet {

  private final DayJudged day;
  private final List<FileRead> carried;

  DaySheet(DayJudged day, List<FileRead> carried) {
    this.day = day;
    this.carried = carried;
  }

  Document document() {
    List<Block> blocks = new ArrayList<>();
    blocks.add(banner());
    blocks.add(lots());
    // Before the details, so that the boxes to sign stand under the verdicts and never alone.
    blocks.add(new Caution(PageOne.CAUTION));
    blocks.add(
        new Signatures(
            List.of(
                new SignatureBox("closed", "Day closed by", "", "All sheets and logs are in."),
                new SignatureBox("reviewed", "Reviewed by", "", "The records were read."))));
    missed(blocks);
    faults(blocks);
    blocks.addAll(new Carried(day, carried).blocks());
    return new Frame(day).document("Day sheet " + day.day(), "", "day", blocks);
  }

  private Banner banner() {
    Verdict worst =
        day.judgements().stream()
            .map(Judgement::verdict)
            .min(Verdict::compareTo)
            .orElse(Verdict.PENDING);
    List<String> counts =
        Stream.of(Verdict.NOT_MET, Verdict.NOT_SHOWN, Verdict.PENDING, Verdict.MET)
            .filter(verdict -> count(verdict) > 0)
            .map(verdict -> count(verdict) + " " + verdict.words())
            .toList();
    String told = day.judgements().isEmpty() ? "No lot." : String.join(", ", counts) + ".";
    return new Banner(
        Phrases.tone(worst), day.judgements().size() + " LOTS", Phrases.capital(told));
  }

  private long count(Verdict verdict) {
    return day.judgements().stream().filter(each -> each.verdict() == verdict).count();
  }

  private Block lots() {
    Grid grid =
        new Grid("Lots of the day")
            .head("Lot", 7)
            .head("Product", 16)
            .head("Step", 6)
            .head("Verdict", 8)
            .number("Deviations", 6)
            .number("Pending", 5)
            .number("In doubt", 5)
            .head("Record", 10);
    for (Judgement each : day.judgements()) {
      long pending = each.findings().stream().filter(f -> f.verdict() == Verdict.PENDING).count();
      grid.row(
          Grid.cell(each.lot().code()),
          Grid.cell(each.lot().product().map(p -> p.name()).orElse(Phrases.NOT_RECORDED)),
          Grid.cell(step(each)),
          Grid.cell(each.verdict().words(), Phrases.tone(each.verdict())),
          Grid.cell(String.valueOf(each.deviations().size())),
          Grid.cell(String.valueOf(pending)),
          Grid.cell(String.valueOf(each.openFaults().size())),
          Grid.cell(each.lot().code() + ".pdf"));
    }
    return grid.isEmpty()
        ? new Paragraph(Bound.of("No lot has anything filed on this day."))
        : grid.table();
  }

  private static String step(Judgement judgement) {
    return judgement.lot().stays().stream()
        .reduce((earlier, later) -> later)
        .map(stay -> (stay.out().isPresent() ? "after " : "in ") + stay.step().word())
        .orElse("before cure");
  }

  private void missed(List<Block> blocks) {
    Grid grid =
        new Grid("What is to be done")
            .head("Lot", 6)
            .head("Limit", 11)
            .head("Verdict", 7)
            .head("What was found", 22)
            .head("The plan says", 13);
    for (Judgement each : day.judgements()) {
      for (Finding finding : Checks.inOrder(each.findings())) {
        if (each.deviations().contains(finding) || each.operatingMisses().contains(finding)) {
          grid.row(
              Grid.cell(each.lot().code()),
              Grid.cell(finding.limit().name() + ", " + finding.limit().rank().word()),
              Grid.cell(finding.verdict().words(), Phrases.tone(finding.verdict())),
              Grid.cell(finding.reason()),
              Grid.cell(Phrases.planned(finding.limit()).orElse("–")));
        }
      }
    }
    if (!grid.isEmpty()) {
      blocks.add(grid.table());
    }
  }

  private void faults(List<Block> blocks) {
    Grid grid =
        new Grid("Data in doubt")
            .head("Lot", 6)
            .head("What follows", 6)
            .head("Where", 12)
            .head("Found", 16)
            .head("Expected", 14);
    for (Fault fault : day.allFaults()) {
      grid.row(
          fault.lot().isEmpty() ? "the day" : fault.lot(),
          Phrases.follows(fault.severity()),
          fault.place().toString(),
          fault.found(),
          fault.expected());
    }
    if (!grid.isEmpty()) {
      blocks.add(grid.table());
    }
  }
}

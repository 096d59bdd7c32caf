package org.flitchbook.record;

import java.util.ArrayList;
import java.util.List;
import org.flitchbook.check.Judgement;
import org.flitchbook.document.Banner;
import org.flitchbook.document.Block;
import org.flitchbook.document.Caution;
import org.flitchbook.document.Document;
import org.flitchbook.document.PageBreak;
import org.flitchbook.document.SignatureBox;
import org.flitchbook.document.Signatures;
import org.flitchbook.document.Tone;
import org.flitchbook.reading.FileRead;

/** The report of a day's deviations; a day without one says so and is signed all the same. */
final class DeviationReport {

  private final DayJudged day;
  private final List<FileRead> carried;

  DeviationReport(DayJudged day, List<FileRead> carried) {
    this.day = day;
    this.carried = carried;
  }

  Document document() {
    List<Judgement> missed = day.held();
    List<Block> blocks = new ArrayList<>();
    blocks.add(banner(missed));
    if (!missed.isEmpty()) {
      blocks.add(overview(missed));
    }
    blocks.add(new Caution(PageOne.CAUTION));
    blocks.add(signatures());
    for (Judgement each : missed) {
      blocks.add(new PageBreak());
      blocks.addAll(new DeviationSection(day, each).full());
    }
    blocks.addAll(new Carried(day, carried).blocks());
    return new Frame(day).document("Deviation report " + day.day(), "", "deviations", blocks);
  }

  private Banner banner(List<Judgement> missed) {
    int count = missed.stream().mapToInt(each -> each.deviations().size()).sum();
    return count == 0
        ? new Banner(Tone.PASS, "NONE", "No critical limit was missed on this day.")
        : new Banner(
            Tone.FAIL,
            count + (count == 1 ? " DEVIATION" : " DEVIATIONS"),
            (missed.size() == 1 ? "One lot is held: " : missed.size() + " lots are held: ")
                + String.join(", ", missed.stream().map(each -> each.lot().code()).toList())
                + ".");
  }

  private static Block overview(List<Judgement> missed) {
    Grid grid =
        new Grid("Open deviations")
            .head("Lot", 6)
            .head("Limit", 15)
            .head("Verdict", 7)
            .head("What was found", 22)
            .head("The plan says", 14);
    for (Judgement each : missed) {
      each.deviations()
          .forEach(
              finding ->
                  grid.row(
                      Grid.cell(each.lot().code()),
                      Grid.cell(finding.limit().name()),
                      Grid.cell(finding.verdict().words(), Phrases.tone(finding.verdict())),
                      Grid.cell(finding.reason()),
                      Grid.cell(
                          Phrases.planned(finding.limit()).orElse("hold; a person decides"))));
    }
    return grid.table();
  }

  private static Signatures signatures() {
    return new Signatures(
        List.of(
            new SignatureBox("raised", "Raised by", "", "The lots named are held."),
            new SignatureBox("decided", "Decided by", "", "Disposition of every gram is on file."),
            new SignatureBox("closed", "Verified and closed by", "", "All four parts are done.")));
  }
}

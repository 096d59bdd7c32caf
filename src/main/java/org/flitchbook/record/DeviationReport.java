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
import org.flitchbook.document.Target;
import org.flitchbook.document.Tone;
import org.flitchbook.reading.FileRead;

/** The report of a day's deviations; a day without one says so and is signed all the same. */
final class DeviationReport {

  private final DayJudged day;
  private final List<FileRead> carried;
  private final Phrases phrases;

  DeviationReport(DayJudged day, List<FileRead> carried) {
    this.day = day;
    this.carried = carried;
    this.phrases = day.phrases();
  }

  Document document() {
    List<Judgement> missed = day.held();
    List<Block> blocks = new ArrayList<>();
    blocks.add(banner(missed));
    if (!missed.isEmpty()) {
      blocks.add(overview(missed));
    }
    blocks.add(new Keeping(day, missed.stream().map(Judgement::lot).toList()).note());
    blocks.add(new Caution(phrases.say("record.caution")));
    blocks.add(signatures());
    blocks.addAll(new FilingSection(day).changes());
    for (Judgement each : missed) {
      blocks.add(new PageBreak());
      blocks.addAll(new DeviationSection(day, each).full());
    }
    blocks.addAll(new Carried(day, carried).blocks());
    return new Frame(day)
        .document(phrases.say("record.report.title", day.day()), "", "deviations", blocks);
  }

  private Banner banner(List<Judgement> missed) {
    int count = missed.stream().mapToInt(each -> each.deviations().size()).sum();
    return count == 0
        ? new Banner(
            Tone.PASS,
            phrases.say("record.report.none"),
            phrases.say("record.report.nothing-missed"))
        : new Banner(
            Tone.FAIL,
            phrases.count("record.report.deviations", count),
            phrases.count(
                "record.report.held",
                missed.size(),
                String.join(", ", missed.stream().map(each -> each.lot().code()).toList())));
  }

  private Block overview(List<Judgement> missed) {
    Grid grid =
        phrases
            .grid("record.report.open")
            .head("record.head.lot", 6)
            .head("record.head.limit", 15)
            .head("record.head.verdict", 7)
            .head("record.head.found", 22)
            .head("record.head.plan-says", 14);
    for (Judgement each : missed) {
      each.deviations()
          .forEach(
              finding ->
                  grid.row(
                      grid.leading(each.lot().code(), new Target.File(each.lot().code() + ".pdf")),
                      grid.cell(finding.limit().name()),
                      phrases.cell(finding.verdict()),
                      grid.cell(finding.reason()),
                      grid.cell(
                          Phrases.planned(finding.limit())
                              .orElse(phrases.say("record.report.hold")))));
    }
    return grid.table();
  }

  private Signatures signatures() {
    return new Signatures(
        List.of(
            box("raised", "record.report.raised-by", "record.report.raised"),
            box("decided", "record.report.decided-by", "record.report.decided"),
            box("closed", "record.report.closed-by", "record.report.closed")));
  }

  private SignatureBox box(String field, String role, String statement) {
    return new SignatureBox(field, phrases.say(role), "", phrases.say(statement));
  }
}

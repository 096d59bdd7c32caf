package org.flitchbook.record;

import static org.flitchbook.message.Message.say;

import java.util.ArrayList;
import java.util.List;
import org.flitchbook.check.Judgement;
import org.flitchbook.document.Block;
import org.flitchbook.document.Document;
import org.flitchbook.document.Signatures;
import org.flitchbook.document.Text;
import org.flitchbook.document.Tone;
import org.flitchbook.message.Message;
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
    blocks.add(
        new Block.Caution(
            phrases.say(
                "record.caution",
                "Curing salt is toxic in excess: weigh it, never spoon it. The limits are those of"
                    + " the plan named here; confirm them with the local authority or a process"
                    + " authority. This record says which limits were met, not met or not shown. It"
                    + " does not say that food is safe, and it replaces no licensed decision.")));
    blocks.add(signatures());
    blocks.addAll(new FilingSection(day).changes());
    for (Judgement each : missed) {
      blocks.add(new Block.PageBreak());
      blocks.addAll(new DeviationSection(day, each).full());
    }
    blocks.addAll(new Carried(day, carried).blocks());
    return new Frame(day)
        .document(
            phrases.say("record.report.title", "Deviation report {0}", day.day()),
            "",
            "deviations",
            blocks);
  }

  private Block.Banner banner(List<Judgement> missed) {
    int count = missed.stream().mapToInt(each -> each.deviations().size()).sum();
    return count == 0
        ? new Block.Banner(
            Tone.PASS,
            phrases.say("record.report.none", "NONE"),
            phrases.say(
                "record.report.nothing-missed", "No critical limit was missed on this day."))
        : new Block.Banner(
            Tone.FAIL,
            phrases.count("record.report.deviations", count, "{0} DEVIATION", "{0} DEVIATIONS"),
            phrases.count(
                "record.report.held",
                missed.size(),
                "One lot is held: {1}.",
                "{0} lots are held: {1}.",
                String.join(", ", missed.stream().map(each -> each.lot().code()).toList())));
  }

  private Block overview(List<Judgement> missed) {
    Grid grid =
        phrases
            .grid("record.report.open", "Open deviations")
            .head("record.head.lot", "Lot", 6)
            .head("record.head.limit", "Limit", 15)
            .head("record.head.verdict", "Verdict", 7)
            .head("record.head.found", "What was found", 22)
            .head("record.head.plan-says", "The plan says", 14);
    for (Judgement each : missed) {
      each.deviations()
          .forEach(
              finding ->
                  grid.row(
                      grid.leading(each.lot().code(), new Text.Target.File(each.lot().code() + ".pdf")),
                      grid.cell(phrases.name(finding.limit())),
                      phrases.cell(finding.verdict()),
                      grid.cell(phrases.say(finding.reasons())),
                      grid.cell(
                          Phrases.planned(finding.limit())
                              .orElse(
                                  phrases.say("record.report.hold", "hold; a person decides")))));
    }
    return grid.table();
  }

  private Signatures signatures() {
    return new Signatures(
        List.of(
            box(
                "raised",
                say("record.report.raised-by", "Raised by"),
                say("record.report.raised", "The lots named are held.")),
            box(
                "decided",
                say("record.report.decided-by", "Decided by"),
                say("record.report.decided", "Disposition of every gram is on file.")),
            box(
                "closed",
                say("record.report.closed-by", "Verified and closed by"),
                say("record.report.closed", "All four parts are done."))));
  }

  private Signatures.Box box(String field, Message role, Message statement) {
    return new Signatures.Box(field, phrases.say(role), "", phrases.say(statement));
  }
}

package org.flitchbook.closing;

import static org.flitchbook.message.Message.say;

import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.Function;
import org.flitchbook.archive.Bundle;
import org.flitchbook.book.Book;
import org.flitchbook.check.Judgement;
import org.flitchbook.document.Document;
import org.flitchbook.evidence.EvidenceSelection;
import org.flitchbook.evidence.RecordEvidence;
import org.flitchbook.input.SourceFile;
import org.flitchbook.job.Session;
import org.flitchbook.judging.Judging;
import org.flitchbook.pdf.Pdf;
import org.flitchbook.reading.FileRead;
import org.flitchbook.record.DayJudged;
import org.flitchbook.record.Records;

/**
 * Prints the records of a judged day. The same day and filing give the same bytes.
 *
 * @param selection picks the files that each record carries
 * @param session is told which record is being printed, and whose version of the program stands in
 *     it
 */
record Printing(Book book, EvidenceSelection selection, Session session) {

  /** The files of a revision, by their names in its folder. */
  SortedMap<String, byte[]> of(DayJudged day) {
    SortedMap<String, byte[]> files = new TreeMap<>();
    for (Judgement each : day.judgements()) {
      String code = each.lot().code();
      Carrying lot = new Carrying(code, Records.json(day, each), selection.of(each));
      print(files, day, lot, carried -> Records.batch(day, each, carried));
    }
    Carrying held =
        new Carrying("deviations", Records.deviationsJson(day), selection.of(day.held()));
    print(files, day, held, carried -> Records.deviations(day, carried));
    Carrying all = new Carrying("day", Records.json(day), selection.of(day.judgements()));
    print(files, day, all, carried -> Records.day(day, carried));
    files.put(Bundle.FILE, Bundle.of(files, book.inputs(day.day())).zip());
    return files;
  }

  /** A record by its name, what was found, and what that rests on. */
  private record Carrying(String name, Map<String, Object> json, List<SourceFile> sources) {}

  private void print(
      SortedMap<String, byte[]> files,
      DayJudged day,
      Carrying carrying,
      Function<List<FileRead>, Document> record) {
    String name = carrying.name();
    session.progress(say("closing.printing", "printing {0}", name));
    byte[] found = Judging.findings(carrying.json(), session.tool());
    SourceFile findings = SourceFile.of(RecordEvidence.FINDINGS + name + ".json", found);
    RecordEvidence evidence = new RecordEvidence(carrying.sources(), findings);
    Document document = record.apply(evidence.listed(day.files()));
    files.put(name + ".pdf", Pdf.print(document, evidence.attachments()));
    files.put(name + ".json", found);
  }
}

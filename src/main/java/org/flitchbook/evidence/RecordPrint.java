package org.flitchbook.evidence;

import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.flitchbook.check.Judgement;
import org.flitchbook.document.Document;
import org.flitchbook.input.SourceFile;
import org.flitchbook.judging.Judging;
import org.flitchbook.pdf.Pdf;
import org.flitchbook.record.Carried;
import org.flitchbook.record.DayJudged;
import org.flitchbook.record.Records;

/**
 * A record as it is printed: of one lot, of the day's deviations or of the day. The same day, files
 * and version of the program give the same bytes, so that anybody can print it again and compare.
 *
 * @param pdf its pages, with all that it carries; named by the lot's code, or by its own name
 * @param findings what was found, as JSON: the same that it carries
 */
public record RecordPrint(SourceFile pdf, SourceFile findings) {

  /** The report of the day's deviations. */
  public static final String DEVIATIONS = "deviations";

  /** The sheet of the day. */
  public static final String DAY = "day";

  /** The key under which the findings count the book's files that the record does not carry. */
  static final String LEFT = "filesLeft";

  /**
   * What a print is made from.
   *
   * @param sources what the record rests on, see {@link EvidenceSelection}
   * @param left how many further files the book has up to that day
   * @param tool the version of the program
   */
  record Content(DayJudged day, List<SourceFile> sources, long left, String tool) {

    /** In one order, however they were picked or taken out of a record. */
    Content {
      sources = sources.stream().sorted(Comparator.comparing(SourceFile::name)).toList();
    }

    RecordPrint lot(Judgement lot) {
      return print(
          lot.lot().code(), Records.json(day, lot), carried -> Records.batch(day, lot, carried));
    }

    RecordPrint deviations() {
      return print(
          DEVIATIONS, Records.deviationsJson(day), carried -> Records.deviations(day, carried));
    }

    RecordPrint sheet() {
      return print(DAY, Records.json(day), carried -> Records.day(day, carried));
    }

    private RecordPrint print(
        String name, Map<String, Object> found, Function<Carried, Document> record) {
      found.put(LEFT, left);
      byte[] json = Judging.findings(found, tool);
      SourceFile findings = SourceFile.of(RecordEvidence.FINDINGS + name + ".json", json);
      RecordEvidence evidence = new RecordEvidence(sources, findings);
      Document document = record.apply(new Carried(evidence.listed(day.files()), left));
      return new RecordPrint(
          SourceFile.of(name + ".pdf", Pdf.print(document, evidence.attachments())),
          SourceFile.of(name + ".json", json));
    }
  }
}

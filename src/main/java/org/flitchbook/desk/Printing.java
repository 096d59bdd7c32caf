package org.flitchbook.desk;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.Function;
import org.flitchbook.check.Judgement;
import org.flitchbook.document.Document;
import org.flitchbook.input.SourceFile;
import org.flitchbook.json.Json;
import org.flitchbook.pdf.Pdf;
import org.flitchbook.reading.FileRead;
import org.flitchbook.record.DayJudged;
import org.flitchbook.record.Records;

/**
 * Prints the records of a judged day. The same day and filing give the same bytes.
 *
 * @param grounds picks the files that each record carries
 * @param caller is told which record is being printed, and whose version of the program stands in
 *     it
 */
record Printing(Book book, Grounds grounds, Caller caller) {

  static final String BUNDLE = "bundle.zip";
  static final String DAY = "day.json";

  /** The files of a revision, by their names in its folder. */
  SortedMap<String, byte[]> of(DayJudged day) {
    SortedMap<String, byte[]> files = new TreeMap<>();
    for (Judgement each : day.judgements()) {
      String code = each.lot().code();
      Carrying lot = new Carrying(code, Records.json(day, each), grounds.of(each));
      print(files, day, lot, carried -> Records.batch(day, each, carried));
    }
    Carrying held = new Carrying("deviations", Records.deviationsJson(day), grounds.of(day.held()));
    print(files, day, held, carried -> Records.deviations(day, carried));
    Carrying all = new Carrying("day", Records.json(day), grounds.of(day.judgements()));
    print(files, day, all, carried -> Records.day(day, carried));
    files.put(BUNDLE, new Bundle(book, day.day()).of(files));
    return files;
  }

  /** What was found, and which version of the program found it. */
  static byte[] found(Map<String, Object> findings, String tool) {
    Map<String, Object> json = new LinkedHashMap<>(findings);
    json.put(Enclosed.TOOL, tool);
    return Json.write(json);
  }

  /** A record by its name, what was found, and what that rests on. */
  private record Carrying(String name, Map<String, Object> json, List<SourceFile> sources) {}

  private void print(
      SortedMap<String, byte[]> files,
      DayJudged day,
      Carrying carrying,
      Function<List<FileRead>, Document> record) {
    String name = carrying.name();
    caller.progress().accept("printing " + name);
    byte[] found = found(carrying.json(), caller.tool());
    SourceFile findings = SourceFile.of(Evidence.FINDINGS + name + ".json", found);
    Evidence evidence = new Evidence(carrying.sources(), findings);
    Document document = record.apply(evidence.listed(day.files()));
    files.put(name + ".pdf", Pdf.print(document, evidence.attachments()));
    files.put(name + ".json", found);
  }
}

package org.flitchbook.desk;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Consumer;
import java.util.function.Function;
import org.flitchbook.check.Judgement;
import org.flitchbook.document.Document;
import org.flitchbook.input.SourceFile;
import org.flitchbook.json.Json;
import org.flitchbook.pdf.Pdf;
import org.flitchbook.reading.FileRead;
import org.flitchbook.record.DayJudged;
import org.flitchbook.record.Records;

/** Prints the records of a judged day and puts them away. */
final class Closing {

  private final Book book;
  private final DayJudged day;
  private final Grounds grounds;
  private final Consumer<String> progress;
  private final Map<String, byte[]> files = new TreeMap<>();

  Closing(Book book, DayJudged day, Grounds grounds, Consumer<String> progress) {
    this.book = book;
    this.day = day;
    this.grounds = grounds;
    this.progress = progress;
  }

  Answer into(Path records) {
    for (Judgement each : day.judgements()) {
      String code = each.lot().code();
      Map<String, Object> json = Records.json(day, each);
      print(code, json, grounds.of(each), carried -> Records.batch(day, each, carried));
    }
    print(
        "deviations",
        Records.deviationsJson(day),
        grounds.of(day.held()),
        carried -> Records.deviations(day, carried));
    print(
        "day",
        Records.json(day),
        grounds.of(day.judgements()),
        carried -> Records.day(day, carried));
    files.put("bundle.zip", new Bundle(book, day.day()).of(files));
    Cabinet.Filed filed = new Cabinet(records).file(day.day(), files);
    return Desk.closed(day, filed.told(), filed.written());
  }

  private void print(
      String name,
      Map<String, Object> json,
      List<SourceFile> sources,
      Function<List<FileRead>, Document> record) {
    progress.accept("printing " + name);
    byte[] found = Json.write(json);
    SourceFile findings = SourceFile.of(Evidence.FINDINGS + name + ".json", found);
    Evidence evidence = new Evidence(sources, findings);
    Document document = record.apply(evidence.listed(day.files()));
    files.put(name + ".pdf", Pdf.print(document, evidence.attachments()));
    files.put(name + ".json", found);
  }
}

package org.flitchbook.desk;

import java.nio.file.Path;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Consumer;
import org.flitchbook.check.Judgement;
import org.flitchbook.document.Document;
import org.flitchbook.json.Json;
import org.flitchbook.pdf.Pdf;
import org.flitchbook.record.DayJudged;
import org.flitchbook.record.Records;

/** Prints the records of a judged day and puts them away. */
final class Closing {

  private final Book book;
  private final DayJudged day;
  private final Consumer<String> progress;

  Closing(Book book, DayJudged day, Consumer<String> progress) {
    this.book = book;
    this.day = day;
    this.progress = progress;
  }

  Answer into(Path records) {
    Map<String, byte[]> files = new TreeMap<>();
    for (Judgement each : day.judgements()) {
      String code = each.lot().code();
      print(files, code, Records.batch(day, each));
      files.put(code + ".json", Json.write(Records.json(day, each)));
    }
    print(files, "deviations", Records.deviations(day));
    files.put("deviations.json", Json.write(Records.deviationsJson(day)));
    print(files, "day", Records.day(day));
    files.put("day.json", Json.write(Records.json(day)));
    files.put("bundle.zip", new Bundle(book, day.day()).of(files));
    Cabinet.Filed filed = new Cabinet(records).file(day.day(), files);
    return Desk.closed(day, filed.told(), filed.written());
  }

  private void print(Map<String, byte[]> files, String name, Document document) {
    progress.accept("printing " + name);
    files.put(name + ".pdf", Pdf.print(document));
  }
}

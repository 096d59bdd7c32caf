package org.flitchbook.reading;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.flitchbook.input.Fault;
import org.flitchbook.input.SourceFile;
import org.flitchbook.practice.ToolPractice;

/** Days made of texts, and what was read of them as lines of text, for the tests. */
final class Days {

  static final String FOLDER = "2026-02-24/";
  static final String HEAD = "lot,time,what,item,value,unit,by,instrument,note\n";
  static final Hand NEW_YORK = new Hand(ZoneId.of("America/New_York"), '.', ToolPractice.get());
  static final Hand COMMA = new Hand(ZoneId.of("Europe/Berlin"), ',', ToolPractice.get());

  private static final LocalDate DATE = LocalDate.of(2026, 12, 31);

  private Days() {}

  static SourceFile file(String name, String text) {
    return SourceFile.of(FOLDER + name, text.getBytes(UTF_8));
  }

  static Day read(Hand hand, SourceFile... files) {
    return Readings.read(DATE, Arrays.asList(files), hand);
  }

  static Day sheet(String name, String text) {
    return read(NEW_YORK, file(name + ".csv", text));
  }

  /** One row under the heading of every sheet. */
  static Day row(String sheet, String row) {
    return sheet(sheet, HEAD + row + "\n");
  }

  /** A log of one core P1 in °F, of lot A1, with what {@code logs.json} says of its time. */
  static Day log(String time, String log) {
    return log(time, "", log);
  }

  /** The same with more keys of its entry in {@code logs.json}, each with a comma behind it. */
  static Day log(String time, String more, String log) {
    return read(NEW_YORK, file("logs.json", layout(time, more)), file("p1.csv", log));
  }

  static String layout(String time, String more) {
    return "{\"logs\": [{\"files\": \"p*.csv\", \"instrument\": \"LG-A\", "
        + more
        + "\"time\": {\"column\": \"Time\", "
        + time
        + "}, \"columns\": [{\"column\": \"P1\", \"what\": \"internal temperature\", \"unit\":"
        + " \"°F\", \"lot\": \"A1\", \"item\": \"probe 1\"}]}]}";
  }

  /** {@code severity line:column: found X, expected Y} of each fault, the folder left out. */
  static List<String> said(Day day) {
    return day.faults().stream().map(Days::said).toList();
  }

  private static String said(Fault fault) {
    return fault.severity().word() + " " + fault.toString().substring(FOLDER.length());
  }

  /** {@code line: time level} of each sample. */
  static List<String> samples(Series series) {
    Samples samples = series.samples();
    return IntStream.range(0, samples.size())
        .mapToObj(
            i ->
                samples.line(i)
                    + ": "
                    + Instant.ofEpochMilli(samples.at(i))
                    + " "
                    + org.flitchbook.measure.Level.quantity(samples.level(i), series.unit()))
        .toList();
  }
}

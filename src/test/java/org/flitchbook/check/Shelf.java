package org.flitchbook.check;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.flitchbook.doubt.Doubts;
import org.flitchbook.doubt.Rule;
import org.flitchbook.input.SourceFile;
import org.flitchbook.judging.Judging;
import org.flitchbook.lot.Lots;
import org.flitchbook.plan.Plan;
import org.flitchbook.plan.Plans;
import org.flitchbook.reading.Day;
import org.flitchbook.reading.Hand;
import org.flitchbook.reading.Readings;

/** A book as it lies in a folder, with the lots of all its days judged. */
record Shelf(Map<String, List<String>> lines, Map<String, Judgement> lots) {

  /**
   * Judges what was written up to a day.
   *
   * @param moment as {@code 2026-02-25T05:00:00Z}
   */
  static Shelf judged(Path book, String until, String moment) {
    SourceFile file = SourceFile.of("plan.json", bytes(book.resolve("plan.json")));
    var read = Plans.read(file, templates(), List.of());
    Plan plan = read.plan().orElseThrow(() -> new AssertionError(read.faults().toString()));
    Hand hand =
        new Hand(plan.establishment().zone(), plan.establishment().decimalMark(), plan.practice());
    Map<String, List<String>> lines = new TreeMap<>();
    List<Day> days = new ArrayList<>();
    for (Path day : folders(book)) {
      if (name(day).compareTo(until) <= 0) {
        days.add(Readings.read(LocalDate.parse(name(day)), files(day, lines), hand));
      }
    }
    return new Shelf(lines, judge(plan, days, Instant.parse(moment)));
  }

  private static Map<String, Judgement> judge(Plan plan, List<Day> days, Instant moment) {
    List<Rule> rules = Doubts.rules(template("templates/doubts.json")).all();
    Lots assembled = Lots.assemble(plan, days, moment);
    Map<String, Judgement> lots = new TreeMap<>();
    assembled
        .lots()
        .forEach(
            lot -> {
              Doubts.Result examined =
                  Doubts.examine(plan, rules, assembled.register(), lot, List.of(), plan.words());
              lots.put(lot.code(), Judging.judge(plan, examined, moment));
            });
    return lots;
  }

  Judgement lot(String code) {
    Judgement judged = lots.get(code);
    if (judged == null) {
      throw new AssertionError("no lot " + code);
    }
    return judged;
  }

  Finding finding(String lot, String limit) {
    return Bench.found(lot(lot), limit);
  }

  private static List<Path> folders(Path book) {
    return sorted(book).stream()
        .filter(path -> name(path).matches("\\d{4}-\\d\\d-\\d\\d"))
        .toList();
  }

  private static List<SourceFile> files(Path day, Map<String, List<String>> lines) {
    List<SourceFile> files = new ArrayList<>();
    for (Path path : sorted(day)) {
      SourceFile file = SourceFile.of(name(day) + "/" + name(path), bytes(path));
      files.add(file);
      String text = new String(file.bytes(), java.nio.charset.StandardCharsets.ISO_8859_1);
      lines.put(file.name(), text.lines().toList());
    }
    return files;
  }

  private static String name(Path path) {
    return String.valueOf(path.getFileName());
  }

  private static List<Path> sorted(Path folder) {
    try (Stream<Path> all = Files.list(folder)) {
      return all.sorted().toList();
    } catch (IOException unreadable) {
      throw new UncheckedIOException(unreadable);
    }
  }

  private static List<SourceFile> templates() {
    return Stream.of("classes.json", "practice.json", "limits/us.json", "limits/us-retail.json")
        .map(name -> template("templates/" + name))
        .toList();
  }

  private static SourceFile template(String name) {
    return SourceFile.of(name, bytes(Path.of(name)));
  }

  private static byte[] bytes(Path path) {
    try {
      return Files.readAllBytes(path);
    } catch (IOException unreadable) {
      throw new UncheckedIOException(unreadable);
    }
  }
}

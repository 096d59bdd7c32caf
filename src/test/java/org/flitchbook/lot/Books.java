package org.flitchbook.lot;

import static java.nio.charset.StandardCharsets.UTF_8;

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
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.flitchbook.input.Fault;
import org.flitchbook.input.SourceFile;
import org.flitchbook.measure.Level;
import org.flitchbook.plan.Plan;
import org.flitchbook.plan.Plans;
import org.flitchbook.reading.Day;
import org.flitchbook.reading.Hand;
import org.flitchbook.reading.Readings;
import org.flitchbook.sums.Shift;

/** Books made of texts, and the example book, put together into lots, for the tests. */
final class Books {

  static final String HEAD = "lot,time,what,item,value,unit,by,instrument,note,corrects,piece\n";
  static final Instant LATE = Instant.parse("2026-12-31T00:00:00Z");

  private static final Path EXAMPLE =
      Path.of("src", "test", "resources", "org", "flitchbook", "lot", "book");

  private static final Plan PLAN = plan("", "");

  private Books() {}

  static Plan plan() {
    return PLAN;
  }

  /** The example's plan with something replaced. */
  static Plan plan(String old, String now) {
    String text = new String(bytes(EXAMPLE.resolve("plan.json")), UTF_8);
    SourceFile file = SourceFile.of("plan.json", text.replace(old, now).getBytes(UTF_8));
    List<SourceFile> templates =
        Stream.of("classes.json", "practice.json", "limits/us.json", "limits/us-retail.json")
            .map(name -> SourceFile.of("templates/" + name, bytes(Path.of("templates", name))))
            .toList();
    var read = Plans.read(file, templates, List.of());
    return read.plan().orElseThrow(() -> new AssertionError(read.faults()));
  }

  static Lots example() {
    return of(exampleFiles());
  }

  /** The files of the example's days. */
  static List<SourceFile> exampleFiles() {
    try (Stream<Path> all = Files.walk(EXAMPLE)) {
      return all.filter(path -> path.getNameCount() == EXAMPLE.getNameCount() + 2)
          .filter(Files::isRegularFile)
          .sorted()
          .map(path -> SourceFile.of(name(path), bytes(path)))
          .toList();
    } catch (IOException unreadable) {
      throw new UncheckedIOException(unreadable);
    }
  }

  private static String name(Path path) {
    return EXAMPLE.relativize(path).toString().replace('\\', '/');
  }

  static Lots of(List<SourceFile> files) {
    Map<LocalDate, List<SourceFile>> days = new TreeMap<>();
    files.forEach(file -> add(days, file));
    return assemble(plan(), LATE, days);
  }

  /** Sheets without their heading, and other files as they are: a name, a text, a name, … */
  static Lots of(String... namesAndTexts) {
    return of(plan(), LATE, namesAndTexts);
  }

  static Lots of(Plan plan, Instant until, String... namesAndTexts) {
    Map<LocalDate, List<SourceFile>> days = new TreeMap<>();
    for (int i = 0; i < namesAndTexts.length; i += 2) {
      String name = namesAndTexts[i];
      boolean sheet = name.endsWith(".csv") && !name.contains("log");
      String text = (sheet ? HEAD : "") + namesAndTexts[i + 1];
      add(days, SourceFile.of(name, text.getBytes(UTF_8)));
    }
    return assemble(plan, until, days);
  }

  private static void add(Map<LocalDate, List<SourceFile>> days, SourceFile file) {
    LocalDate date = LocalDate.parse(file.name().substring(0, 10));
    days.computeIfAbsent(date, day -> new ArrayList<>()).add(file);
  }

  private static Lots assemble(Plan plan, Instant until, Map<LocalDate, List<SourceFile>> files) {
    Hand hand =
        new Hand(plan.establishment().zone(), plan.establishment().decimalMark(), plan.practice());
    List<Day> days = new ArrayList<>();
    files.forEach((date, each) -> days.add(Readings.read(date, each, hand)));
    return Lots.assemble(plan, days, until);
  }

  private static byte[] bytes(Path path) {
    try {
      return Files.readAllBytes(path);
    } catch (IOException unreadable) {
      throw new UncheckedIOException(unreadable);
    }
  }

  /** {@code severity file:line:column: found X, expected Y}, those of no lot first. */
  static List<String> said(Lots book) {
    Stream<Fault> ofLots = book.lots().stream().flatMap(lot -> lot.faults().stream());
    return Stream.concat(book.faults().stream(), ofLots).map(Books::said).toList();
  }

  private static String said(Fault fault) {
    return fault.severity().word() + " " + (fault.lot() + " ").stripLeading() + fault;
  }

  /** {@code time level} of each reading as written, in the track's unit; hand readings with a *. */
  static List<String> readings(Track track) {
    return IntStream.range(0, track.size()).mapToObj(i -> reading(track, i)).toList();
  }

  private static String reading(Track track, int index) {
    String time = Instant.ofEpochMilli(track.earliest(index)).toString().substring(11, 16);
    String level = shown(track, index, Shift.AS_WRITTEN);
    return time + " " + level + (track.byHand(index) ? "*" : "");
  }

  static String shown(Track track, int index, Shift shift) {
    return Level.quantity(track.level(index, shift), track.unit()).value().toString();
  }
}

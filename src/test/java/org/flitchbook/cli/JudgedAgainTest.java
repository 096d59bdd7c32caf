package org.flitchbook.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.flitchbook.SeededRun;
import org.flitchbook.practice.Practice;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.io.TempDir;

/** From what a record carries, and from nothing else, the same is found again. */
final class JudgedAgainTest {

  private static final long SEED = 7;
  private static final Path SCENARIOS = Path.of("src", "test", "scenarios");
  private static final String HEAD = "lot,time,what,item,value,unit,by,instrument,note,corrects\n";

  private static final String FRIDGE =
      """
      {"logs": [{
        "files": "fridge.csv",
        "time": {"column": "Time", "pattern": "yyyy-MM-dd'T'HH:mm", "zone": "America/New_York"},
        "instrument": "LG-A",
        "columns": [
          {"column": "F1", "what": "cooler temperature", "unit": "°F", "place": "F1"}
        ]
      }]}
      """;

  /** The scenarios of which every lot ends well. */
  private static final Set<String> WELL =
      Set.of(
          "s5a-gap-with-hand-reading",
          "s5b-gap-without",
          "s6b-probe-out-by-hand",
          "s7b-spring",
          "s8b-harmless");

  @TempDir private static Path folder;

  @TestFactory
  Stream<DynamicTest> every_record_of_the_demo() {
    return DemoDay.someRecords("Judged again", SEED).stream()
        .flatMap(pdf -> tests("demo", DemoDay.dayOf(pdf), List.of(pdf)));
  }

  @TestFactory
  Stream<DynamicTest> every_record_of_the_scenarios() {
    List<Path> books =
        Tree.walk(SCENARIOS).stream()
            .filter(file -> file.endsWith("plan.json"))
            .map(Path::getParent)
            .toList();
    return SeededRun.share("Scenarios judged again", SEED, books, 4).stream()
        .flatMap(book -> tests(book, lastDay(book)));
  }

  private static String lastDay(Path book) {
    return Tree.names(book).stream()
        .filter(n -> n.startsWith("2"))
        .reduce((a, b) -> b)
        .orElseThrow()
        .substring(0, 10);
  }

  private static Stream<DynamicTest> tests(Path book, String day) {
    Path out = folder.resolve("out of " + book.toString().replaceAll("\\W", "_"));
    int status = WELL.contains(book.getFileName().toString()) ? 0 : 1;
    return tests(book.getFileName().toString(), day, close(book, day, out, status));
  }

  private static Stream<DynamicTest> tests(String name, String day, List<Path> prints) {
    return prints.stream()
        .map(
            pdf ->
                DynamicTest.dynamicTest(
                    name + " " + day + " " + pdf.getFileName(),
                    () -> {
                      Carrier record = Carrier.of(pdf);
                      assertEquals(record.printed(), record.judgedAgain());
                    }));
  }

  private static List<Path> close(Path book, String day, Path out, int status) {
    Ran.of("close", book.resolve(day), "--out", out).expect(status);
    return prints(out.resolve(day));
  }

  private static List<Path> prints(Path folder) {
    return Tree.walk(folder).stream().filter(f -> f.toString().endsWith(".pdf")).toList();
  }

  /** An edit of the example book, and the first day that its record then carries a file of. */
  private record Reach(String told, String first, int status, Consumer<Path> edit) {}

  private static final List<Reach> REACHES =
      List.of(
          new Reach(
              "to the last checks before the lot and no further",
              "2026-02-10",
              0,
              book -> {
                move(book, "2026-02-16/instruments.csv", "2026-02-10/instruments.csv");
                Tree.edit(book.resolve("2026-02-10/instruments.csv"), "2026-02-16", "2026-02-10");
                add(
                    book,
                    "2025-12-01/instruments.csv",
                    ",2025-12-01 06:50,ice point,,32.9,°F,MA,HT-3,,");
              }),
          new Reach(
              "to a reading of its place that was filed before the lot was",
              "2026-02-16",
              1,
              book -> {
                move(book, "2026-02-16/cure.csv", "2026-02-24/cure.csv");
                move(book, "2026-02-16/instruments.csv", "2026-02-17/instruments.csv");
                add(
                    book,
                    "2026-02-16/cure.csv",
                    ",2026-02-16 15:05,cooler temperature,F1,57.8,°F,MA,HT-3,,");
              }),
          new Reach(
              "to a row of no lot that an entry of it corrects",
              "2026-02-14",
              0,
              book -> {
                add(book, "2026-02-14/cure.csv", ",2026-02-16 18:30,turned,,,,MA,,,");
                add(
                    book,
                    "2026-02-24/cure.csv",
                    "26047-B1,2026-02-16 18:30,turned,,,,MA,,,2026-02-14/cure.csv:2");
              }),
          new Reach(
              "to the correction of a place's reading in an older folder",
              "2026-02-10",
              0,
              book -> {
                add(
                    book,
                    "2026-02-24/cure.csv",
                    ",2026-02-20 12:00,cooler temperature,F1,60.0,°F,MA,HT-3,,");
                add(
                    book,
                    "2026-02-10/cure.csv",
                    ",2026-02-20 12:00,cooler"
                        + " temperature,F1,37.9,°F,MA,HT-3,,2026-02-24/cure.csv:2");
              }),
          new Reach(
              "to a row of it that can't be used",
              "2026-02-15",
              1,
              book ->
                  add(book, "2026-02-15/cure.csv", "26047-B1,2026-02-16 25:10,turned,,,,MA,,,")),
          new Reach(
              "to a log of its place that was filed before it came",
              "2026-02-15",
              1,
              book -> {
                Tree.write(book.resolve("2026-02-15/logs.json"), FRIDGE);
                Tree.write(book.resolve("2026-02-15/fridge.csv"), fridge());
              }));

  @TestFactory
  Stream<DynamicTest> a_record_reaches_back() {
    return REACHES.stream().map(reach -> DynamicTest.dynamicTest(reach.told(), () -> check(reach)));
  }

  /** Without the first of its days something else is found: no file is carried for nothing. */
  private static void check(Reach reach) {
    Path home = folder.resolve(String.valueOf(REACHES.indexOf(reach)));
    Path book = Tree.example(home);
    reach.edit().accept(book);
    Carrier record = Carrier.of(close(book, Tree.DAY, home.resolve("out"), reach.status()).get(0));
    assertEquals(reach.first(), record.days().first().toString());
    assertEquals(record.printed(), record.judgedAgain());
    assertNotEquals(record.printed(), record.withoutFirstDay().judgedAgain());
  }

  /** Edits of the example book after which a record rests on more than sheets and one plan. */
  private static final Map<String, Consumer<Path>> MORE =
      Map.of(
          "another language",
          book ->
              Tree.edit(book.resolve("plan.json"), "\"paper\"", "\"language\": \"es\", \"paper\""),
          "templates of its own",
          book -> {
            Tree.write(
                book.resolve("templates/limits/us.json"),
                Tree.text(Path.of("templates/limits/us.json")));
            Tree.edit(book.resolve("templates/limits/us.json"), "\"200 ppm\"", "\"140 ppm\"");
            Tree.write(book.resolve(Practice.FILE), Tree.text(Path.of(Practice.FILE)));
            Tree.edit(book.resolve(Practice.FILE), "\"5 min\"", "\"90 min\"");
          },
          "a former version of the plan",
          book -> {
            Tree.write(book.resolve("plans/plan-2.json"), Tree.text(book.resolve("plan.json")));
            Tree.edit(
                book.resolve("plans/plan-2.json"), "\"version\": \"3\"", "\"version\": \"2\"");
            Tree.edit(book.resolve("plan.json"), "\"2026-01-05\"", "\"2026-02-17\"");
          },
          "a failed check that reopens lots",
          book ->
              add(
                  book,
                  "2026-02-25/instruments.csv",
                  ",2026-02-25 07:00,ice point,,35.4,°F,MA,HT-3,,"));

  private static final Set<String> BAD =
      Set.of("templates of its own", "a failed check that reopens lots");

  @TestFactory
  Stream<DynamicTest> every_record_of_a_book_that_rests_on_more() {
    return MORE.entrySet().stream()
        .flatMap(
            each -> {
              Path home = folder.resolve(each.getKey());
              Path book = Tree.example(home);
              each.getValue().accept(book);
              int status = BAD.contains(each.getKey()) ? 1 : 0;
              String day = lastDay(book);
              return tests(each.getKey(), day, close(book, day, home.resolve("out"), status));
            });
  }

  private static void add(Path book, String name, String row) {
    Tree.write(book.resolve(name), HEAD + row + "\n");
  }

  /** Every half-hour from the day before the cure; it is warm at 15:00 on the lot's first day. */
  private static String fridge() {
    StringBuilder log = new StringBuilder("Time,F1\n");
    LocalDateTime time = LocalDateTime.of(2026, 2, 15, 8, 0);
    for (; time.getDayOfMonth() < 18; time = time.plusMinutes(30)) {
      boolean warm = time.getDayOfMonth() == 16 && time.getHour() == 15;
      log.append(time).append(warm ? ",58.0\n" : ",37.5\n");
    }
    return log.toString();
  }

  private static void move(Path book, String from, String to) {
    Path target = book.resolve(to);
    Tree.write(
        target,
        () -> {
          Files.createDirectories(target.getParent());
          Files.move(book.resolve(from), target);
        });
  }
}

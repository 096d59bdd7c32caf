package org.flitchbook.cli;

import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import org.flitchbook.OwnFolders;
import org.flitchbook.SeededRun;

/** The records of the demo, closed into folders for the tests that read them. */
final class DemoDay {

  static final List<String> PRINTS =
      List.of(
          "26043-L1",
          "26044-B1",
          "26045-B1",
          "26045-B2",
          "26047-B1",
          "26048-J1",
          "26055-B1",
          "day",
          "deviations");

  /** The lots that may be released once they are reviewed. */
  static final List<String> MET = List.of("26047-B1", "26048-J1");

  static final List<String> DAYS = List.of("2026-02-16", "2026-02-22", "2026-02-23", Tree.DAY);

  private static final String PAPER = "\"paper\": \"Letter\"";
  private static final String A4 = "\"paper\": \"A4\"";
  private static final String SPANISH = "\"language\": \"es\", ";

  private static final Map<String, Path> MADE = new HashMap<>();

  private DemoDay() {}

  /** The demo day as it is. What is made here is made once a Java machine, and is only read. */
  static Path records() {
    return records(Tree.DAY);
  }

  /**
   * A close of the demo day.
   *
   * @param ran what it said
   * @param before the hashes of the book's files before it
   * @param after the same after it
   */
  record Closed(Path out, Ran ran, Map<String, String> before, Map<String, String> after) {

    private static final Closed DAY = of(OwnFolders.shared("demo-day"));

    private static Closed of(Path out) {
      Map<String, String> before = Tree.hashes(Tree.DEMO);
      Ran ran = Ran.of("close", Tree.DEMO.resolve(Tree.DAY), "--out", out).expect(1);
      return new Closed(out, ran, before, Tree.hashes(Tree.DEMO));
    }
  }

  /** How the demo day was closed. */
  static Closed closed() {
    return Closed.DAY;
  }

  static Path records(String day) {
    return day.equals(Tree.DAY)
        ? Closed.DAY.out().resolve(day).resolve("r1")
        : made(day, () -> close(Tree.DEMO, day, OwnFolders.shared("demo").resolve("of " + day)));
  }

  /** Of the demo day a third, drawn by chance; in the whole run all records of all days. */
  static List<Path> someRecords(String run, long seed) {
    if (!SeededRun.isWhole()) {
      return SeededRun.share(run, seed, prints(Tree.DAY), 3);
    }
    return DAYS.stream().flatMap(day -> prints(day).stream()).toList();
  }

  /** The day in whose records a print lies. */
  static String dayOf(Path print) {
    return print.getParent().getParent().getFileName().toString();
  }

  private static List<Path> prints(String day) {
    return Tree.walk(records(day)).stream().filter(f -> f.toString().endsWith(".pdf")).toList();
  }

  static Path onA4() {
    return made("A4", () -> planned("A4", A4));
  }

  static Path inSpanish() {
    return made("es", () -> planned("es", SPANISH + PAPER));
  }

  static Path inSpanishOnA4() {
    return made("es-A4", () -> planned("es-A4", SPANISH + A4));
  }

  private static Path made(String name, Supplier<Path> maker) {
    synchronized (MADE) {
      Path made = MADE.get(name);
      return made != null ? made : MADE.merge(name, maker.get(), (old, late) -> old);
    }
  }

  private static Path planned(String name, String paper) {
    Path folder = OwnFolders.shared("demo-" + name);
    Path book = Tree.demo(folder);
    Tree.edit(book.resolve("plan.json"), PAPER, paper);
    return close(book, folder.resolve("out"));
  }

  /** Closes the demo day of an edited book and gives the folder of the revision. */
  static Path close(Path book, Path out) {
    return close(book, Tree.DAY, out);
  }

  private static Path close(Path book, String day, Path out) {
    Ran.of("close", book.resolve(day), "--out", out).expect(1);
    return out.resolve(day).resolve("r1");
  }
}

package org.flitchbook.check;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.flitchbook.cli.OneBadFactTest;

/** The part of the page of figures that tells what was found in honest books. */
final class HonestPage {

  static final String HEADING = "## Honest books\n";

  private static final String HEAD =
      HEADING
          + """

          %d whole books were made as an honest and careful maker keeps them: a week in cure, the soak, a night of drying, smoke, chill, packing, review and dispatch, of one lot or more. The meat truly meets every limit, with more room than the instruments are off; readings have noise and are rounded to the step of their instrument, and entries are written to the minute. Each book has the habit that it was made for, and some others by chance. It is judged as `check BOOK` judges it, and on one of its days drawn by chance. `HonestBooksTest` judges one of forty in each build, and all of them, with this part of the page, in `.ci/run long`.

          The other side: `OneBadFactTest` takes the good lot of the example and adds one of %d bad facts, drawn by chance: a reading, a cure, a move, a correction, a result, a row of another day, of a mistyped lot or of one piece alone, surfaces left out, more sent than there is, something found of a place, a failed check, a key of the plan or of `logs.json`, a file. None of these lots is met with exit status 0. One fact of a hundred is tried in each build, and all of them in `.ci/run long`.

          - **quiet**: exit status 0, with every lot met.
          - **with something to explain**: an `ask` or a `stop` is open.
          - **with a limit missed**: a limit is not met or not shown, or not yet shown at the end.

          | habit | books | quiet | with something to explain | with a limit missed |
          |---|---|---|---|---|
          """;

  private static final String ALARMS =
      """

      What was said of the others, and the numbers of the first books of which it was said:

      | rule, or limit and verdict | books | numbers |
      |---|---|---|
      """;

  private static final int NAMED = 8;

  private HonestPage() {}

  /** What stands from the heading of this part on. */
  static String part(String page) {
    return page.substring(page.indexOf(HEADING));
  }

  static String of(List<HonestBook> all) {
    return HEAD.formatted(all.size(), OneBadFactTest.FACTS) + rows(all);
  }

  /** Whether a part is this one but for its figures. */
  static boolean isAround(String part, int books) {
    return part.startsWith(HEAD.formatted(books, OneBadFactTest.FACTS)) && part.contains(ALARMS);
  }

  /** The rows of both tables. */
  static String rows(List<HonestBook> all) {
    Stream<String> habits =
        Arrays.stream(Habit.values()).map(habit -> row(habit.told(), all, book -> book.has(habit)));
    Stream<String> rows = Stream.concat(habits, Stream.of(row("**all**", all, book -> true)));
    return rows.collect(Collectors.joining()) + ALARMS + alarms(all);
  }

  /** The figures of each habit. */
  static Map<String, List<Integer>> habits(String part) {
    return CorpusPage.figures(part.substring(0, part.indexOf(ALARMS)));
  }

  private static String row(String name, List<HonestBook> all, Predicate<HonestBook> counted) {
    List<HonestBook> books = all.stream().filter(counted).toList();
    return Stream.of(
            books.stream(),
            books.stream().filter(HonestBook::isQuiet),
            books.stream().filter(book -> !book.asked().isEmpty()),
            books.stream().filter(book -> !book.missed().isEmpty()))
        .map(each -> String.valueOf(each.count()))
        .collect(Collectors.joining(" | ", "| " + name + " | ", " |\n"));
  }

  private static String alarms(List<HonestBook> all) {
    Map<String, List<Integer>> numbers = new TreeMap<>();
    for (HonestBook book : all) {
      Stream.concat(book.asked().stream(), book.missed().stream())
          .forEach(
              alarm ->
                  numbers.merge(
                      alarm,
                      List.of(book.number()),
                      (before, now) -> Stream.concat(before.stream(), now.stream()).toList()));
    }
    return numbers.entrySet().stream()
        .map(each -> alarm(each.getKey(), each.getValue()))
        .collect(Collectors.joining());
  }

  private static String alarm(String name, List<Integer> books) {
    String named =
        books.stream().limit(NAMED).map(String::valueOf).collect(Collectors.joining(", "));
    String more = books.size() > NAMED ? " …" : "";
    return "| " + name + " | " + books.size() + " | " + named + more + " |\n";
  }
}

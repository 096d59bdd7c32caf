package org.flitchbook.check;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.IntStream;
import org.flitchbook.Golden;
import org.flitchbook.SeededRun;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** Whole books that an honest maker kept, and which of them are asked about. */
final class HonestBooksTest {

  private static final long SEED = 20261201;
  private static final int BOOKS = 1_240;
  private static final int OF = 40;
  private static final int JUDGED = SeededRun.cases("Honest books", SEED, BOOKS, OF);
  private static final String PART = "check/honest-part.md";

  private static List<HonestBook> all = List.of();

  @BeforeAll
  static void judgeAll() {
    all = IntStream.range(0, JUDGED).mapToObj(number -> HonestBook.of(SEED, number)).toList();
  }

  @Test
  void what_was_made_truly_meets_every_limit_with_room() {
    assertEquals(
        List.of(),
        all.stream().filter(book -> !book.runs().stream().allMatch(TrueRun::isGood)).toList());
  }

  @Test
  void the_figures_are_those_that_were_found_before() {
    if (SeededRun.isWhole()) {
      String page = Golden.text(CorpusTest.PAGE);
      Golden.check(CorpusTest.PAGE, CorpusPage.part(page) + HonestPage.of(all));
    } else {
      Golden.check(PART, HonestPage.rows(all));
    }
  }

  /** Holds the page where a part alone was judged. */
  @Test
  void the_page_agrees_with_itself_and_with_a_part_of_it() {
    String text = HonestPage.part(Golden.text(CorpusTest.PAGE));
    assertTrue(HonestPage.isAround(text, BOOKS), text);
    Map<String, List<Integer>> page = HonestPage.habits(text);
    Map<String, List<Integer>> part = HonestPage.habits(HonestPage.rows(all));
    assertEquals(List.copyOf(part.keySet()), List.copyOf(page.keySet()));
    page.forEach(
        (row, figures) -> {
          for (int i = 0; i < figures.size(); i++) {
            assertTrue(part.get(row).get(i) <= figures.get(i), row);
          }
        });
    assertEquals(BOOKS, page.get("**all**").get(0));
  }

  @Test
  void each_habit_is_in_every_run() {
    Set<Habit> seen = EnumSet.noneOf(Habit.class);
    all.forEach(book -> seen.addAll(book.habits()));
    assertEquals(EnumSet.allOf(Habit.class), seen);
  }

  /** Else a quiet book would prove nothing. */
  @Test
  void no_book_is_quiet_that_has_lost_its_readings_of_the_smoke() {
    List<HonestBook> few = all.stream().filter(HonestBook::isQuiet).limit(10).toList();
    assertEquals(
        List.of(),
        few.stream()
            .map(book -> book.without(name -> name.matches(".*/(smoke|[pq]-lg-[ac])\\.csv")))
            .filter(HonestBook::isQuiet)
            .toList());
  }
}

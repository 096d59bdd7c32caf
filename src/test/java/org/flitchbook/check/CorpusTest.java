package org.flitchbook.check;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.flitchbook.Golden;
import org.flitchbook.SeededRun;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** Logs made from known true curves, most of them damaged, and what is found on them. */
final class CorpusTest {

  private static final long SEED = 20261101;
  private static final int LOTS = 3_200;
  private static final int JUDGED = SeededRun.cases("Corpus", SEED, LOTS);
  static final String PAGE = "../../../../../docs/corpus.md";
  private static final String TENTH = "check/corpus-tenth.md";

  /** A log that begins late lacks the finish too; the hour of spring makes a cooling longer. */
  private static final Set<Damage> HARMLESS = Set.of(Damage.BEGINS_LATE, Damage.SPRING);

  private static List<CorpusLot> all = List.of();

  @BeforeAll
  static void judgeAll() {
    all = IntStream.range(0, JUDGED).mapToObj(number -> CorpusLot.of(SEED, number)).toList();
  }

  @Test
  void no_limit_that_was_truly_missed_is_found_to_be_met() {
    assertEquals(List.of(), all.stream().filter(CorpusLot::isFalsePass).toList());
  }

  @Test
  void no_good_lot_with_a_sound_log_has_to_be_explained() {
    assertEquals(
        List.of(),
        all.stream()
            .filter(lot -> lot.damages().isEmpty() && lot.isGood() && !lot.found().open().isEmpty())
            .toList());
  }

  /** Else the first test would prove nothing: without the rules the same lots are found met. */
  @Test
  void without_the_rules_missed_limits_are_found_to_be_met() {
    assertEquals(SeededRun.known(11, 158), count(all, CorpusLot::wouldPass));
    List<CorpusLot> believed =
        all.stream()
            .limit(LOTS / 10)
            .filter(CorpusLot::wouldPass)
            .map(lot -> CorpusLot.believed(SEED, lot.number()))
            .toList();
    assertEquals(5, count(believed, CorpusLot::isFalsePass), "of the first tenth");
  }

  @Test
  void the_figures_are_those_that_were_found_before() {
    if (SeededRun.isWhole()) {
      Golden.check(PAGE, CorpusPage.of(all) + HonestPage.part(Golden.text(PAGE)));
    } else {
      Golden.check(TENTH, CorpusPage.rows(all));
    }
  }

  /** Holds the page where a tenth alone was judged: its sums, and that the tenth is part of it. */
  @Test
  void the_page_agrees_with_itself_and_with_a_tenth_of_it() {
    String text = CorpusPage.part(Golden.text(PAGE));
    assertTrue(CorpusPage.isAround(text, LOTS), text);
    Map<String, List<Integer>> page = CorpusPage.figures(text);
    Map<String, List<Integer>> part = CorpusPage.figures(CorpusPage.rows(all));
    assertEquals(List.copyOf(part.keySet()), List.copyOf(page.keySet()));
    page.forEach((row, figures) -> agrees(row, figures, part.get(row)));
    assertEquals(LOTS, page.get("**all**").get(0));
    assertEquals(
        HARMLESS,
        Arrays.stream(Damage.values())
            .filter(damage -> page.get(damage.told()).get(2) == 0)
            .collect(Collectors.toSet()));
  }

  /** Columns: lots, truly bad, believed, found met, truly good, and met, to explain. */
  private static void agrees(String row, List<Integer> whole, List<Integer> part) {
    assertEquals(whole.get(0), whole.get(1) + whole.get(4), row);
    assertEquals(0, whole.get(3), row);
    for (int i = 0; i < whole.size(); i++) {
      assertTrue(part.get(i) <= whole.get(i), row + ": " + part + " of " + whole);
    }
  }

  static int count(List<CorpusLot> lots, Predicate<CorpusLot> counted) {
    return Math.toIntExact(lots.stream().filter(counted).count());
  }
}

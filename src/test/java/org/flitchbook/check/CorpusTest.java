package org.flitchbook.check;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.IntStream;
import org.flitchbook.Golden;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** Logs made from known true curves, most of them damaged, and what is found on them. */
final class CorpusTest {

  private static final long SEED = 20261101;
  private static final int LOTS = 3_200;

  /** A log that begins late lacks the finish too; the hour of spring makes a cooling longer. */
  private static final Set<Damage> HARMLESS = Set.of(Damage.BEGINS_LATE, Damage.SPRING);

  private static List<CorpusLot> all = List.of();

  @BeforeAll
  static void judgeAll() {
    all =
        IntStream.range(0, LOTS).parallel().mapToObj(number -> CorpusLot.of(SEED, number)).toList();
    System.out.println(CorpusPage.of(all));
  }

  @Test
  void no_limit_that_was_truly_missed_is_found_to_be_met() {
    assertEquals(List.of(), all.stream().filter(CorpusLot::isFalsePass).toList());
  }

  @Test
  void of_good_lots_with_sound_logs_at_most_two_of_a_hundred_have_to_be_explained() {
    List<CorpusLot> sound =
        all.stream().filter(lot -> lot.damages().isEmpty() && lot.isGood()).toList();
    List<CorpusLot> asked = sound.stream().filter(lot -> !lot.found().open().isEmpty()).toList();
    assertTrue(sound.size() > 400, sound.size() + " good lots");
    assertTrue(50 * asked.size() <= sound.size(), asked.toString());
  }

  /** Else the first test would prove nothing. */
  @Test
  void bad_lots_look_good_to_whoever_believes_every_row() {
    assertTrue(count(all, CorpusLot::wouldPass) > 150);
    List<Damage> idle =
        Arrays.stream(Damage.values())
            .filter(damage -> !HARMLESS.contains(damage))
            .filter(damage -> count(all, lot -> lot.has(damage) && lot.wouldPass()) == 0)
            .toList();
    assertEquals(List.of(), idle);
  }

  @Test
  void the_page_of_figures_is_what_was_found() {
    Golden.check("../../../../../docs/corpus.md", CorpusPage.of(all));
  }

  static long count(List<CorpusLot> lots, Predicate<CorpusLot> counted) {
    return lots.stream().filter(counted).count();
  }
}

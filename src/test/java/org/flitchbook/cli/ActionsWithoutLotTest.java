package org.flitchbook.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What was found, held or closed of a place, of an instrument or of nothing at all. */
final class ActionsWithoutLotTest {

  private static final String SHEET = "2026-02-20/actions.csv|";

  @TempDir private Path folder;

  /** The lot of the example lay in F1 on that day, and in F2 four days later. */
  @ParameterizedTest(name = "{1}")
  @CsvSource(
      delimiter = '!',
      value = {
        "found in its place ! ,2026-02-20 19:00,found,F1,door open all night,,MA,,",
        "found in its place ! ,2026-02-20 19:00,held,F1,,,MA,,",
        "! ,2026-02-20 19:00,found,F2,door open all night,,MA,,",
        "! ,2026-02-20 19:00,found,F1,door open,,MA,, ; ,2026-02-20 19:30,closed,F1,,,MA,,",
        "found in its place ! ,2026-02-20 19:00,found,F1,door open,,MA,, ; ,2026-02-20"
            + " 18:30,closed,F1,,,MA,,",
        "found in its place ! ,2026-02-20 19:00,found,F1,door open,,MA,, ; ,2026-02-20"
            + " 19:30,closed,F2,,,MA,,",
        "lot ! ,2026-02-20 19:00,found,,the gutter leaks,,MA,,",
        "row without a lot ! ,2026-02-20 19:00,found,roof,the gutter leaks,,MA,,",
        "row without a lot ! ,2026-02-20 19:00,found,HT-3,dropped,,MA,,",
        "row without a lot ! ,2026-02-20 19:00,explained,gap,,,MA,,power cut",
        "! ,2026-02-20 19:00,found,HT-3,dropped,,MA,, ; ,2026-02-20 19:30,closed,HT-3,,,MA,,",
        "row not used ! 26047-B1,2026-02-20 19:00,closed,,,,MA,,",
        "row not used ! 26047-B1,2026-02-20 19:00,found,,soft spot,,MA,,",
        "! 26047-B1,2026-02-20 19:00,found,,soft spot,,MA,, ; 26047-B1,2026-02-20"
            + " 19:30,closed,,,,MA,,",
      })
  void what_was_found_of_no_lot_is_asked_about_where_it_matters(String rule, String rows)
      throws IOException {
    Path book = Tree.example(folder.resolve("book"));
    new BadFact(
            "action", List.of(rows.split(" ; ")).stream().map(row -> SHEET + row.strip()).toList())
        .fileIn(book);
    Ran ran = Ran.of("check", book.resolve(Tree.DAY));
    assertEquals(rule == null ? 0 : 1, ran.status(), ran.out());
    assertTrue(rule == null || ran.flat().contains("(" + rule + ")"), ran.out());
  }
}

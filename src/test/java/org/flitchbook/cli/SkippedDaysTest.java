package org.flitchbook.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.flitchbook.OwnFolders;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Days that were not closed in their turn, and days of a step on which nothing was written. */
final class SkippedDaysTest {

  private static final List<String> DAYS =
      List.of(
          "2026-02-16",
          "2026-02-17",
          "2026-02-18",
          "2026-02-19",
          "2026-02-20",
          "2026-02-21",
          "2026-02-22",
          "2026-02-23",
          "2026-02-24");

  private static final String NEVER = "With entries, and never closed: ";
  private static final String LATE = "Closed after a later day: ";
  private static final String OUTDATED = "close again: ";
  private static final String EMPTY = "nothing on file on ";

  @TempDir private Path folder;
  private Path book;

  @BeforeEach
  void example() {
    book = Tree.example(folder);
  }

  private Ran close(String day, Object... more) {
    List<Object> words = new ArrayList<>(List.of("close", book.resolve(day)));
    words.addAll(List.of(more));
    return Ran.of(words.toArray()).expect(0);
  }

  /** The book with days closed in their turn, which is done once a Java machine. */
  private static final class InTurn {
    static final Path ALL = Tree.example(OwnFolders.shared("closed-in-turn"));
    static final List<Ran> CLOSED = new ArrayList<>(closed(DAYS.subList(0, 7)));
    static final Path SEVEN = Tree.copy(ALL, OwnFolders.shared("closed-seven").resolve("book"));

    static {
      CLOSED.addAll(closed(DAYS.subList(7, 9)));
    }

    private static List<Ran> closed(List<String> days) {
      return days.stream().map(day -> Ran.of("close", ALL.resolve(day)).expect(0)).toList();
    }
  }

  private void closedInTurn() {
    assertEquals(DAYS.size(), InTurn.CLOSED.size());
    book = Tree.copy(InTurn.ALL, folder.resolve("closed"));
  }

  private static void says(Ran ran, String text) {
    assertTrue(ran.flat().contains(text), () -> text + " is not in\n" + ran.out());
  }

  private static void isQuiet(Ran ran) {
    for (String each : List.of(NEVER, LATE, OUTDATED, EMPTY)) {
      assertFalse(ran.flat().contains(each), ran.out());
    }
  }

  private Ran check() {
    return Ran.of("check", book).expect(0);
  }

  private Ran prove() {
    return Ran.of("prove", book).expect(0);
  }

  private JsonNode sheet(String day) {
    return Ran.json(Tree.text(book.resolve("records").resolve(day).resolve("r1/day.json")));
  }

  private String printed(String day) {
    return Pdfs.text(book.resolve("records").resolve(day).resolve("r1/day.pdf"))
        .replaceAll("\\s+", " ");
  }

  @Test
  void days_that_are_closed_in_their_turn_are_not_mentioned() {
    closedInTurn();
    InTurn.CLOSED.forEach(SkippedDaysTest::isQuiet);
    isQuiet(check());
    isQuiet(prove());
    assertFalse(printed(Tree.DAY).contains(NEVER));
  }

  @Test
  void days_that_were_never_closed_are_named() {
    close("2026-02-16");
    close("2026-02-20");
    String skipped = NEVER + "2026-02-17 to 2026-02-19, 2026-02-21 to 2026-02-23.";
    says(close(Tree.DAY), skipped);
    says(close(Tree.DAY), skipped);
    says(check(), skipped);
    says(prove(), "– " + skipped);
    assertTrue(printed(Tree.DAY).contains(skipped), printed(Tree.DAY));
    assertEquals("2026-02-17", sheet(Tree.DAY).at("/filing/days/neverClosed/0").asText());
    assertEquals(
        6, Ran.of("check", book, "--json").expect(0).json().at("/days/neverClosed").size());
  }

  @Test
  void a_book_that_was_never_closed_says_so_once() {
    says(check(), NEVER + "2026-02-16 to 2026-02-23.");
    assertFalse(
        Ran.of("close", book.resolve(Tree.DAY), "--out", folder.resolve("out"))
            .expect(0)
            .flat()
            .contains(NEVER));
  }

  @ParameterizedTest
  @CsvSource({"rack.jpg, false", "letter.pdf, false", "cure.csv, true"})
  void a_folder_of_pictures_is_no_day_to_close(String file, boolean named) throws Exception {
    closedInTurn();
    Path party = book.resolve("2026-02-14");
    Files.createDirectories(party);
    Files.writeString(party.resolve(file), "lot,time,what,item,value,unit,by,instrument,note\n");
    assertEquals(named, check().flat().contains(NEVER + "2026-02-14."));
  }

  @Test
  void a_day_that_is_closed_after_a_later_one_is_named() {
    book = Tree.copy(InTurn.SEVEN, folder.resolve("seven"));
    close(Tree.DAY);
    Ran late = close("2026-02-23");
    says(late, LATE + "2026-02-23.");
    assertFalse(late.flat().contains(NEVER), late.out());
    assertFalse(late.flat().contains(OUTDATED), late.out());
    says(check(), LATE + "2026-02-23.");
    says(prove(), "– " + LATE + "2026-02-23.");
    assertTrue(printed("2026-02-23").contains(LATE + "2026-02-23."));
    assertEquals("2026-02-23", sheet("2026-02-23").at("/filing/days/closedLate/0").asText());
    assertFalse(close(Tree.DAY).flat().contains(LATE));
  }

  /** The later day was judged from what the earlier one said then. */
  @Test
  void a_day_that_rests_on_what_an_earlier_close_changed_is_to_be_closed_again() {
    closedInTurn();
    Tree.edit(book.resolve("2026-02-20/cure.csv"), "turned,,,,IQ,,", "turned,,,,IQ,,both sides");
    String[] why = {"--as", "MA", "--reason", "what the card says"};
    Ran amended = close("2026-02-20", (Object[]) why);
    says(amended, OUTDATED + "2026-02-21 to 2026-02-24.");
    says(check(), OUTDATED + "2026-02-21 to 2026-02-24.");
    says(prove(), OUTDATED + "2026-02-21 to 2026-02-24.");
    says(close("2026-02-22", (Object[]) why), OUTDATED + "2026-02-23 to 2026-02-24.");
    close("2026-02-21", (Object[]) why);
    close("2026-02-23", (Object[]) why);
    close(Tree.DAY, (Object[]) why);
    isQuiet(check());
    isQuiet(prove());
  }

  @Test
  void a_day_of_the_cure_without_anything_on_file_is_named_and_misses_no_limit_by_itself() {
    Tree.delete(book.resolve("2026-02-19"));
    Tree.delete(book.resolve("2026-02-20"));
    String empty = EMPTY + "2026-02-19 to 2026-02-20, while it was in cure";
    Ran day = Ran.of("check", book.resolve("2026-02-21"));
    says(day, "note (day without entries): 2026-02-16/cure.csv:13: found " + empty);
    says(Ran.of("close", book.resolve("2026-02-21")), empty);
    says(Ran.of("prove", book), "– 2026-02-16/cure.csv: 26047-B1: " + empty);
    Path records = book.resolve("records/2026-02-21/r1");
    Ran.of("prove", records.resolve("day.pdf")).expect(0);
    Ran.of("prove", records.resolve("26047-B1.pdf")).expect(0);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "26047-B1,2026-02-19 06:40,turned,,,,MA,,",
        "26047-B1,2026-02-19 00:00,turned,,,,MA,,",
        "26047-B1,2026-02-19 23:59,turned,,,,MA,,",
        ",2026-02-19 18:07,cooler temperature,F1,37.9,°F,MA,HT-3,",
      })
  void one_row_of_the_lot_or_of_its_place_is_something(String row) {
    Tree.write(
        book.resolve("2026-02-19/cure.csv"),
        "lot,time,what,item,value,unit,by,instrument,note\n" + row + "\n");
    isQuiet(Ran.of("check", book.resolve("2026-02-20"), "--json"));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "26047-B1,2026-02-18 23:59,turned,,,,MA,,",
        "26047-B1,2026-02-20 00:00,turned,,,,MA,,",
        ",2026-02-19 18:07,cooler temperature,F3,37.9,°F,MA,HT-3,",
        "26099-X1,2026-02-19 18:07,turned,,,,MA,,",
      })
  void a_row_of_another_day_or_place_or_lot_is_nothing(String row) {
    Tree.write(
        book.resolve("2026-02-19/cure.csv"),
        "lot,time,what,item,value,unit,by,instrument,note\n" + row + "\n");
    says(Ran.of("check", book.resolve("2026-02-20")), EMPTY + "2026-02-19, while");
  }

  @Test
  void a_logger_in_the_fridge_has_the_day_on_file() {
    Tree.delete(book.resolve("2026-02-19"));
    StringBuilder log = new StringBuilder("Time,F1\n");
    for (int hour = 0; hour < 24; hour++) {
      log.append(String.format("2026-02-19 %02d:00:00,37.5%n", hour));
    }
    Tree.write(book.resolve("2026-02-20/fridge.csv"), log.toString());
    Tree.write(
        book.resolve("2026-02-20/logs.json"),
        "{\"logs\": [{\"files\": \"fridge.csv\", \"time\": {\"column\": \"Time\", \"pattern\":"
            + " \"yyyy-MM-dd HH:mm:ss\", \"zone\": \"America/New_York\"}, \"instrument\": \"LG-A\","
            + " \"columns\": [{\"column\": \"F1\", \"what\": \"cooler temperature\", \"unit\":"
            + " \"°F\", \"place\": \"F1\"}]}]}");
    Ran ran = Ran.of("check", book.resolve("2026-02-20"));
    assertFalse(ran.flat().contains(EMPTY), ran.out());
  }
}

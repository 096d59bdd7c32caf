package org.flitchbook.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** A good lot beside a file that nothing reads: what may hold entries is asked about. */
final class UnreadFilesTest {

  @TempDir private Path folder;

  private Path book() {
    return Tree.example(folder);
  }

  private static void put(Path book, String name) throws IOException {
    Path file = book.resolve(name);
    Files.createDirectories(file.getParent());
    Files.writeString(file, "lot,time,what,item,value,unit,by,instrument,note\n");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "2026-02-24/chill.xlsx             | chill.csv, saved as CSV",
        "2026-02-24/Chill.ODS              | chill.csv, saved as CSV",
        "2026-02-24/cure.txt               | cure.csv, saved as CSV",
        "2026-02-24/smoke.tsv              | smoke.csv, saved as CSV",
        "2026-02-20/cure                   | is no sheet",
        "2026-02-24/probe-b.csv            | a sheet's name, or an entry in logs.json",
        "2026-02-24/probe-b.log            | a sheet's name, or an entry in logs.json",
        "2026-02-24/notes.docx             | a sheet's name, or an entry in logs.json",
        "2026-02-24/evening/chill.csv      | it as 2026-02-24/chill.csv",
        "2026-02-24/evening/late/chill.csv | it as 2026-02-24/chill.csv",
        "2026-02-24/evening/notes.txt      | it as 2026-02-24/notes.txt",
        "chill.csv                         | the folder of its day, such as 2026-02-24/chill.csv",
        "fridge log.xlsx                   | the folder of its day",
        "2026-3-05/cure.csv                | it as 2026-03-05/cure.csv",
        "20260305/cure.csv                 | it as 2026-03-05/cure.csv",
        "2026-03-05 evening/chill.csv      | it as 2026-03-05/chill.csv",
        "2026_03_05/probes.csv             | it as 2026-03-05/probes.csv",
        "2026-02-31/cure.csv               | the folder of its day",
        "Oct 29/cure.csv                   | the folder of its day",
        "sheets/2026-02-24/cure.csv        | the folder of its day",
        "records/cure.csv                  | the folder of its day",
        "records/2026-02-24/cure.csv       | the folder of its day",
      })
  void a_file_that_may_hold_entries_is_asked_about(String name, String said) throws Exception {
    Path book = book();
    put(book, name);
    Ran ran = Ran.of("check", book.resolve(Tree.DAY)).expect(1);
    String text = ran.out().replaceAll("\\s+", " ");
    assertTrue(text.contains("file not read"), ran.out());
    assertTrue(text.contains(name), ran.out());
    assertTrue(text.contains(said), ran.out());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "2026-02-24/rack.jpg",
        "2026-02-24/letter of the laboratory.PDF",
        "2026-02-24/pictures/rack.HEIC",
        "2026-02-24/.DS_Store",
        "2026-02-24/.trash/chill.csv",
        "pictures/2026-02-24/rack.png",
        "README.md",
        "templates/cure.csv",
        "other book/2026-02-24/cure.csv",
      })
  void a_file_that_holds_no_rows_is_not(String name) throws Exception {
    Path book = book();
    put(book, name);
    Files.createDirectories(book.resolve("other book"));
    Files.writeString(book.resolve("other book/plan.json"), "{}");
    assertFalse(
        Ran.of("check", book.resolve(Tree.DAY)).expect(0).out().contains("file not read"), name);
  }

  /** Else the day sheet would look changed: what is asked about is carried too. */
  @Test
  void a_day_sheet_that_asks_about_such_files_proves() throws Exception {
    Path book = book();
    put(book, "chill.csv");
    put(book, "2026-02-24/evening/chill.csv");
    put(book, "2026-02-24/chill.xlsx");
    Ran.of("close", book.resolve(Tree.DAY)).expect(1);
    Path records = book.resolve("records").resolve(Tree.DAY).resolve("r1");
    for (String name : new String[] {"day", "deviations", "26047-B1"}) {
      Ran.of("prove", records.resolve(name + ".pdf")).expect(0);
    }
    Ran.of("prove", book).expect(0);
    assertEquals(
        "Nothing new",
        Ran.of("close", book.resolve(Tree.DAY))
            .expect(1)
            .out()
            .lines()
            .filter(line -> line.startsWith("Nothing new"))
            .map(line -> line.substring(0, 11))
            .findFirst()
            .orElse("something new"));
  }
}

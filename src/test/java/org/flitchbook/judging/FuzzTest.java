package org.flitchbook.judging;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import org.flitchbook.SeededRun;
import org.flitchbook.book.Book;
import org.flitchbook.book.BookFolder;
import org.flitchbook.book.PlannedBook;
import org.flitchbook.check.Judgement;
import org.flitchbook.input.Fault;
import org.flitchbook.input.SourceFile;
import org.flitchbook.job.Session;
import org.flitchbook.json.Json;
import org.flitchbook.pdf.Pdf;
import org.flitchbook.record.Carried;
import org.flitchbook.record.DayJudged;
import org.flitchbook.record.Records;
import org.junit.jupiter.api.Test;

/**
 * Whatever stands in a book's files, a person gets records or faults: no exception, no hang.
 *
 * <p>{@code -Dfuzz.seconds=600} goes on for that long, {@code -Dfuzz.seed=…} from another seed.
 */
final class FuzzTest {

  private static final Path BOOK =
      Path.of("src", "test", "resources", "org", "flitchbook", "lot", "book");
  private static final Session NOBODY =
      new Session(doing -> {}, Clock.systemUTC(), question -> Optional.empty(), "0");
  private static final LocalDate DAY = LocalDate.parse("2026-02-24");
  private static final long USUAL_SEED = 20260224;
  private static final long SEED = Long.getLong("fuzz.seed", USUAL_SEED);
  private static final int BOOKS = SeededRun.cases("Damaged books", SEED, 300);
  private static final int PRINTED = 20;
  private static final Duration HANGS = Duration.ofSeconds(60);

  private final Book whole = BookFolder.read(NOBODY, BOOK).book();
  private int judged;
  private int refused;

  @Test
  void no_book_is_so_damaged_that_nothing_is_said_of_it() {
    long until = System.nanoTime() + Long.getLong("fuzz.seconds", 0) * 1_000_000_000L;
    int books = 0;
    while (books < BOOKS || System.nanoTime() < until) {
      long each = SEED + books++;
      assertTimeoutPreemptively(
          HANGS, () -> look(new Damage(new SplittableRandom(each)).of(whole), each));
    }
    System.out.println("Damaged books: " + judged + " judged, " + refused + " refused");
    assertEquals(books, judged + refused);
    if (SEED == USUAL_SEED && books == BOOKS) {
      assertEquals(SeededRun.known(11, 98), judged);
    } else {
      assertTrue(judged > books / 10, judged + " of " + books + " could be judged");
      assertTrue(refused > books / 20, refused + " of " + books + " were refused");
    }
  }

  private void look(Book book, long seed) {
    try {
      Judged judged = Judging.day(PlannedBook.of(book), DAY, Optional.empty());
      judged.day().ifPresentOrElse(found -> print(found, seed), () -> refused(judged.faults()));
    } catch (RuntimeException | StackOverflowError | OutOfMemoryError thrown) {
      throw new AssertionError("seed " + seed + " of " + changed(book), thrown);
    }
  }

  private void refused(List<Fault> faults) {
    refused++;
    assertTrue(!faults.isEmpty(), "refused without a word");
  }

  private void print(DayJudged day, long seed) {
    judged++;
    Json.write(Records.json(day));
    Records.summary(day).toText(100);
    if (seed % PRINTED == 0) {
      Pdf.print(Records.deviations(day, new Carried(day.files(), 0)), List.of());
      for (Judgement each : day.judgements()) {
        Pdf.print(Records.batch(day, each, new Carried(day.files(), 0)), List.of());
      }
    }
  }

  private String changed(Book book) {
    List<SourceFile> old = files(whole);
    return String.join(
        ", ",
        files(book).stream().filter(file -> !old.contains(file)).map(SourceFile::name).toList());
  }

  private static List<SourceFile> files(Book book) {
    List<SourceFile> files = new ArrayList<>(List.of(book.plan()));
    book.days().values().forEach(files::addAll);
    return files;
  }
}

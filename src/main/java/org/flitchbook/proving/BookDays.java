package org.flitchbook.proving;

import static org.flitchbook.message.Message.say;
import static org.flitchbook.proving.Statement.Standing.OPEN;

import java.util.List;
import java.util.stream.Stream;
import org.flitchbook.archive.LedgerFile;
import org.flitchbook.archive.SkippedDays;
import org.flitchbook.book.Book;
import org.flitchbook.book.PlannedBook;
import org.flitchbook.input.Fault;
import org.flitchbook.judging.Judging;

/** What a book leaves open by its days: not closed in their turn, or nothing written on them. */
final class BookDays {

  private BookDays() {}

  static List<Statement> statements(PlannedBook planned) {
    Book book = planned.book();
    if (book.days().isEmpty()) {
      return List.of();
    }
    SkippedDays skipped = SkippedDays.before(book.lastDay(), book, LedgerFile.read(book.folder()));
    return Stream.concat(
            skipped.lines().stream().map(line -> new Statement(OPEN, "", line)),
            Judging.emptyDays(planned).stream().map(BookDays::empty))
        .toList();
  }

  private static Statement empty(Fault day) {
    return new Statement(
        OPEN, day.place().file(), say("proving.days.empty", "{0}: {1}.", day.lot(), day.found()));
  }
}

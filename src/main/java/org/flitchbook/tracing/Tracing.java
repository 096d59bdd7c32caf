package org.flitchbook.tracing;

import java.nio.file.Path;
import org.flitchbook.book.BookFolder;
import org.flitchbook.book.PlannedBook;
import org.flitchbook.job.ExitStatus;
import org.flitchbook.job.JobResult;
import org.flitchbook.job.Session;
import org.flitchbook.job.UsageException;
import org.flitchbook.json.Json;
import org.flitchbook.judging.Judging;
import org.flitchbook.record.DayJudged;
import org.flitchbook.record.Records;
import org.flitchbook.record.Records.Traced;

/** Follows codes through a book. */
public final class Tracing {

  private Tracing() {}

  /**
   * Follows a code through all lots of a book, as of its last day.
   *
   * @param code of a lot, an ingredient's or a supplier's lot, an instrument or a customer
   * @throws UsageException where there is no such book, or it doesn't know the code
   */
  public static JobResult trace(Session session, Path where, String code) {
    PlannedBook book = BookFolder.read(session, where);
    session.progress(Judging.PROGRESS);
    return Judging.book(book).result(day -> traced(day, code));
  }

  private static JobResult traced(DayJudged day, String code) {
    Traced traced =
        Records.trace(day, code)
            .orElseThrow(
                () ->
                    new UsageException(
                        "tracing.unknown",
                        "\"{0}\" is no lot, no ingredient's or supplier's lot, no instrument"
                            + " and no customer of {1}",
                        code,
                        day.book()));
    return JobResult.of(
        ExitStatus.WELL, Judging.printed(traced.document()), Json.write(traced.json()));
  }
}

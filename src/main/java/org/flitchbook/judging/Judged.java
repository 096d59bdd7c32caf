package org.flitchbook.judging;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.flitchbook.book.Book;
import org.flitchbook.input.Fault;
import org.flitchbook.job.JobResult;
import org.flitchbook.reading.Day;
import org.flitchbook.record.DayJudged;

/**
 * What came of judging.
 *
 * @param read the days up to the one judged
 * @param day what was found; empty where a file can't be parsed
 * @param faults which can't, and why
 */
public record Judged(Book book, List<Day> read, Optional<DayJudged> day, List<Fault> faults) {

  public Judged {
    read = List.copyOf(read);
    faults = List.copyOf(faults);
  }

  /** What a job makes of the day; the faults where there is none. */
  public JobResult result(Function<DayJudged, JobResult> job) {
    return day.map(job).orElseGet(() -> JobResult.broken(faults));
  }
}

package org.flitchbook.closing;

import static org.flitchbook.message.Message.say;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.BiFunction;
import java.util.function.Supplier;
import org.flitchbook.archive.Bundle;
import org.flitchbook.archive.LedgerFile;
import org.flitchbook.archive.RecordFolder;
import org.flitchbook.book.Book;
import org.flitchbook.book.BookFolder;
import org.flitchbook.book.PlannedBook;
import org.flitchbook.check.Judgement;
import org.flitchbook.evidence.EvidenceSelection;
import org.flitchbook.evidence.RecordPrint;
import org.flitchbook.input.Fault;
import org.flitchbook.job.ExitStatus;
import org.flitchbook.job.JobResult;
import org.flitchbook.job.Session;
import org.flitchbook.job.UsageException;
import org.flitchbook.judging.Judged;
import org.flitchbook.judging.Judging;
import org.flitchbook.message.Message;
import org.flitchbook.record.DayJudged;

/** Closes days: judges their lots and writes their records. */
public final class Closing {

  private final Session session;
  private final Request request;
  private final Path folder;

  /**
   * How a day is to be closed.
   *
   * @param out the folder to write to; empty: into the book, and its ledger
   * @param at the moment judged; empty: the later of the day's end and the last time read
   * @param by the initials of the one who closes
   * @param reason why a day that was closed is closed again
   */
  public record Request(
      Optional<Path> out, Optional<String> at, Optional<String> by, Optional<String> reason) {}

  private Closing(Session session, Path folder, Request request) {
    this.session = session;
    this.request = request;
    this.folder = folder;
  }

  /**
   * Judges a day and writes its records: into the book, and its ledger, or elsewhere.
   *
   * @throws UsageException where there is no such day, where it can't be written, or where a day
   *     that was closed has changed and nobody says why
   */
  public static JobResult close(Session session, Path where, Request request) {
    LocalDate day =
        BookFolder.dayOf(where)
            .orElseThrow(
                () ->
                    new UsageException(
                        "closing.a-book", "{0} is a book; name one of its days' folders", where));
    Closing closing = new Closing(session, BookFolder.of(where), request);
    return request.out().map(out -> closing.outside(day, out)).orElseGet(() -> closing.inBook(day));
  }

  private JobResult inBook(LocalDate day) {
    return LedgerFile.hold(
        folder,
        session,
        ledger ->
            judge(
                day,
                (print, judged) ->
                    new BookClosing(print, judged, ledger, request, session).close()));
  }

  private JobResult outside(LocalDate day, Path out) {
    if (request.by().isPresent() || request.reason().isPresent()) {
      throw new UsageException(
          "closing.outside", "--as and --reason are for the ledger, which --out leaves untouched");
    }
    refuseInside(out);
    return judge(
        day,
        (print, judged) -> {
          Map<String, byte[]> files = print.of(judged);
          return closed(session, judged, new RecordFolder(out).file(day, files), List.of());
        });
  }

  /** Records among the book's own files would be taken for its input the next time. */
  private void refuseInside(Path out) {
    if (out.toAbsolutePath().normalize().startsWith(folder)) {
      throw new UsageException(
          "closing.inside",
          "--out {0} lies in the book; leave --out away to write to the book's records, or"
              + " name a folder outside of the book",
          out);
    }
  }

  private JobResult judge(LocalDate day, BiFunction<Printing, DayJudged, JobResult> next) {
    PlannedBook book = BookFolder.read(session, folder);
    session.progress(Judging.PROGRESS);
    Judged judged = Judging.day(book, day, request.at());
    return judged.result(
        found ->
            next.apply(
                new Printing(book.book(), new EvidenceSelection(judged, found), session), found));
  }

  /**
   * What came of a close.
   *
   * @param lines what was done, on a line each
   * @param damage to records that were closed before
   */
  static JobResult closed(Session session, DayJudged day, List<Message> lines, List<Fault> damage) {
    ExitStatus status = damage.isEmpty() ? Judging.status(day) : ExitStatus.AMISS;
    String text = Judging.summary(day) + "\n" + session.lines(lines);
    return new JobResult(status, text, "", damage);
  }

  /**
   * Prints the records of a judged day. The same day and filing give the same bytes.
   *
   * @param selection picks the files that each record carries
   * @param session is told which record is being printed, and whose version of the program stands
   *     in it
   */
  record Printing(Book book, EvidenceSelection selection, Session session) {

    /** The files of a revision, by their names in its folder. */
    SortedMap<String, byte[]> of(DayJudged day) {
      SortedMap<String, byte[]> files = new TreeMap<>();
      for (Judgement each : day.judgements()) {
        print(files, each.lot().code(), () -> selection.lot(day, each, session.tool()));
      }
      print(files, RecordPrint.DEVIATIONS, () -> selection.deviations(day, session.tool()));
      print(files, RecordPrint.DAY, () -> selection.day(day, session.tool()));
      files.put(Bundle.FILE, Bundle.of(files, book.inputs(day.day())).zip());
      return files;
    }

    private void print(SortedMap<String, byte[]> files, String name, Supplier<RecordPrint> record) {
      session.progress(say("closing.printing", "printing {0}", name));
      RecordPrint printed = record.get();
      List.of(printed.pdf(), printed.findings())
          .forEach(file -> files.put(file.name(), file.bytes()));
    }
  }
}

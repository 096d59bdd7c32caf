package org.flitchbook.closing;

import static org.flitchbook.message.Message.say;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import org.flitchbook.archive.DayLedger;
import org.flitchbook.archive.LedgerFile;
import org.flitchbook.archive.RecordFolder;
import org.flitchbook.archive.RecordList;
import org.flitchbook.archive.SkippedDays;
import org.flitchbook.book.Book;
import org.flitchbook.change.Change;
import org.flitchbook.change.Changes;
import org.flitchbook.input.Fault;
import org.flitchbook.input.SourceFile;
import org.flitchbook.job.JobResult;
import org.flitchbook.job.Session;
import org.flitchbook.job.UsageException;
import org.flitchbook.ledger.Event;
import org.flitchbook.ledger.EventType;
import org.flitchbook.ledger.Head;
import org.flitchbook.ledger.LedgerLine;
import org.flitchbook.message.Message;
import org.flitchbook.record.DayJudged;
import org.flitchbook.record.DayJudged.Filing;

/**
 * Files the records of a judged day in its book: first the revision's folder, in full and in one
 * step, then its line in the ledger. What is cut off in between is settled by the next close.
 */
final class BookClosing {

  private final Closing.Printing printing;
  private final Book book;
  private final DayJudged day;
  private final LedgerFile ledger;
  private final Session session;
  private final StatedReason reasons;
  private final List<SourceFile> inputs;
  private final SortedMap<String, String> hashes;

  /**
   * @param ledger held until the close is done; its chain must be whole
   */
  BookClosing(
      Closing.Printing printing,
      DayJudged day,
      LedgerFile ledger,
      Closing.Request request,
      Session session) {
    this.printing = printing;
    this.book = printing.book();
    this.day = day;
    this.ledger = ledger;
    this.session = session;
    this.reasons = new StatedReason(day.plan(), request, session);
    this.inputs = book.inputs(day.day());
    this.hashes = hashes(inputs);
  }

  private static SortedMap<String, String> hashes(List<SourceFile> inputs) {
    try {
      return Event.composed(DayLedger.hashes(inputs));
    } catch (IllegalArgumentException twice) {
      throw new UsageException(
          twice,
          "closing.one-name",
          "two files of the book have one name: {0}",
          String.valueOf(twice.getMessage()));
    }
  }

  JobResult close() {
    List<Message> lines = new ArrayList<>(ledger.settle(day.day(), day.plan()));
    DayLedger known = ledger.day(day.day());
    List<Fault> damage = known.damage();
    Optional<Event> last = known.last().map(LedgerLine::event);
    List<Message> filed =
        last.filter(event -> isSame(event) && !isMomentNew(event)).isPresent()
            ? List.of(nothingNew(known.revision()))
            : file(last.map(event -> amending(event, known)).orElseGet(this::first));
    lines.addAll(ledger.notes());
    lines.addAll(skipped().lines());
    lines.addAll(filed);
    lines.addAll(toSignAgain());
    return Closing.closed(session, day, lines, damage);
  }

  /** Whether nothing that was written down has changed since the last close. */
  private boolean isSame(Event last) {
    return hashes.equals(last.inputs()) && session.tool().equals(last.tool());
  }

  private boolean isMomentNew(Event last) {
    return !DayLedger.judgedAt(last).equals(Optional.of(day.moment()));
  }

  /** What was signed in an earlier revision, and is not in this one. */
  private List<Message> toSignAgain() {
    List<Message> lines = new ArrayList<>();
    RecordList.of(ledger.ledger())
        .toSignAgain(day.day())
        .forEach(
            (record, boxes) ->
                boxes.forEach(
                    (box, by) ->
                        lines.add(
                            say(
                                "closing.sign-again",
                                "To be signed again: {0}, box \"{1}\", which {2} signed in an"
                                    + " earlier revision.",
                                record,
                                box,
                                by))));
    return lines;
  }

  private Filing first() {
    return filing(0, reasons.by(), reasons.reason(), List.of());
  }

  private Filing amending(Event event, DayLedger known) {
    int last = known.revision();
    List<Change> changes = changes(event, known);
    if (!isSame(event)) {
      String reason = reasons.reason(last, changes);
      return filing(last, reasons.by(last, changes), reason, changes);
    }
    String stated = reasons.reason();
    String later = day.plan().words().say("change.later", "judged as of another moment");
    return filing(last, reasons.by(), stated.isEmpty() ? later : stated, changes);
  }

  private Filing filing(int last, String by, String reason, List<Change> changes) {
    Head head = ledger.ledger().head();
    return new Filing(last + 1, head.sequence(), head.hash(), last, by, reason, changes, skipped());
  }

  /** Days skipped before this one, and later ones closed already, as the ledger has them now. */
  private SkippedDays skipped() {
    return SkippedDays.closing(day.day(), book, ledger.ledger());
  }

  /** Row by row where the last revision's bundle is there, else file by file. */
  private List<Change> changes(Event last, DayLedger known) {
    List<Change> changes =
        new ArrayList<>(
            known
                .evidence()
                .map(before -> Changes.between(before, inputs))
                .orElseGet(() -> Changes.ofHashes(last.inputs(), hashes)));
    if (!session.tool().equals(last.tool())) {
      Message tool = say("change.tool", "version of the program");
      changes.add(Changes.stated(tool, last.tool(), session.tool()));
    }
    if (isMomentNew(last)) {
      Message moment = say("change.moment", "moment judged");
      String before = DayLedger.judgedAt(last).map(this::shown).orElse("–");
      changes.add(Changes.stated(moment, before, shown(day.moment())));
    }
    return changes;
  }

  private String shown(Instant moment) {
    return moment.atZone(day.plan().establishment().zone()).toOffsetDateTime().toString();
  }

  private Message nothingNew(int revision) {
    List<Event> events = happened(revision);
    if (!events.isEmpty()) {
      ledger.append(events);
    }
    return RecordFolder.nothingNew(records().revision(day.day(), revision));
  }

  private RecordFolder records() {
    return RecordFolder.of(book.folder());
  }

  private List<Event> happened(int revision) {
    return new NewEvents(day, revision, ledger).find();
  }

  private List<Message> file(Filing filing) {
    Map<String, byte[]> files = printing.of(day.filed(filing));
    List<Message> lines = new ArrayList<>(records().file(day.day(), filing.revision(), files));
    List<Event> events = new ArrayList<>(List.of(event(filing, files)));
    events.addAll(happened(filing.revision()));
    ledger.append(events);
    lines.add(ledger.end());
    return lines;
  }

  private Event event(Filing filing, Map<String, byte[]> files) {
    List<SourceFile> records = new ArrayList<>();
    files.forEach((name, bytes) -> records.add(SourceFile.of(name, bytes)));
    EventType type = filing.isAmendment() ? EventType.AMENDED : EventType.CLOSED;
    return ledger
        .event(type)
        .on(day.day(), filing.revision())
        .by(filing.by(), filing.reason())
        .files(hashes, DayLedger.outputs(day.day(), filing.revision(), records))
        .facts(facts());
  }

  private Map<String, String> facts() {
    Map<String, String> facts = new TreeMap<>();
    facts.put(DayLedger.JUDGED_AT, day.moment().toString());
    day.judgements()
        .forEach(
            each -> facts.put(DayLedger.VERDICT_OF + each.lot().code(), each.verdict().words()));
    return facts;
  }
}

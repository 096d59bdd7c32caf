package org.flitchbook.desk;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import org.flitchbook.change.Change;
import org.flitchbook.input.Fault;
import org.flitchbook.input.SourceFile;
import org.flitchbook.ledger.Deed;
import org.flitchbook.ledger.Event;
import org.flitchbook.ledger.Head;
import org.flitchbook.record.DayJudged;
import org.flitchbook.record.Filing;

/**
 * Files the records of a judged day in its book: first the revision's folder, in full and in one
 * step, then its line in the ledger. What is cut off in between is settled by the next close.
 */
final class Closing {

  private final Printing printing;
  private final Book book;
  private final DayJudged day;
  private final LedgerFile ledger;
  private final Caller caller;
  private final Reasons reasons;
  private final List<SourceFile> inputs;
  private final SortedMap<String, String> hashes;

  /**
   * @param ledger held until the close is done; its chain must be whole
   */
  Closing(Printing printing, DayJudged day, LedgerFile ledger, Order order, Caller caller) {
    this.printing = printing;
    this.book = printing.book();
    this.day = day;
    this.ledger = ledger;
    this.caller = caller;
    this.reasons = new Reasons(day.plan(), order, caller);
    this.inputs = Bundle.inputs(book, day.day());
    this.hashes = hashes(inputs);
  }

  private static SortedMap<String, String> hashes(List<SourceFile> inputs) {
    try {
      return Event.composed(BundleRead.hashes(inputs));
    } catch (IllegalArgumentException twice) {
      throw new Misuse("two files of the book have one name: " + twice.getMessage(), twice);
    }
  }

  Answer close() {
    List<String> notes = new ArrayList<>(new Strays(book.folder(), ledger, caller).settle());
    notes.addAll(
        new UntoldSignatures(book.folder(), day.day(), ledger, day.plan(), caller).settle());
    Told told = new Told(book.folder(), day.day(), ledger.ledger());
    List<Fault> damage = told.damage();
    Optional<Amendment> amendment = told.last().map(line -> amendment(line.event(), told));
    Cabinet.Filed filed =
        amendment.filter(Amendment::isNone).isPresent()
            ? nothingNew(told.revision())
            : file(amendment.map(each -> amending(told.revision(), each)).orElseGet(this::first));
    notes.addAll(ledger.notes());
    return Desk.closed(day, notes, filed, damage);
  }

  private Amendment amendment(Event last, Told told) {
    return new Amendment(last, told.evidence(), day, inputs, hashes, caller.tool());
  }

  private Filing first() {
    return filing(0, reasons.by(), reasons.reason(), List.of());
  }

  private Filing amending(int last, Amendment amendment) {
    List<Change> changes = amendment.changes();
    if (amendment.isOfMomentOnly()) {
      String stated = reasons.reason();
      String reason =
          stated.isEmpty()
              ? day.plan().words().say("change.later", "judged as of another moment")
              : stated;
      return filing(last, reasons.by(), reason, changes);
    }
    String reason = reasons.reason(last, changes);
    return filing(last, reasons.by(last, changes), reason, changes);
  }

  private Filing filing(int last, String by, String reason, List<Change> changes) {
    Head head = ledger.ledger().head();
    return new Filing(last + 1, head.sequence(), head.hash(), last, by, reason, changes);
  }

  private Cabinet.Filed nothingNew(int revision) {
    List<Event> events = happened(revision);
    if (!events.isEmpty()) {
      ledger.append(events);
    }
    String folder = cabinet().folder(day.day()).resolve("r" + revision).toString();
    return new Cabinet.Filed("Nothing new: " + folder + " holds these very records.\n", List.of());
  }

  private Cabinet cabinet() {
    return new Cabinet(book.folder().resolve("records"));
  }

  private List<Event> happened(int revision) {
    return new Happened(day, revision, ledger.ledger(), caller).events();
  }

  private Cabinet.Filed file(Filing filing) {
    Map<String, byte[]> files = printing.of(day.filed(filing));
    Cabinet.Filed filed = cabinet().file(day.day(), filing.revision(), files);
    List<Event> events = new ArrayList<>(List.of(event(filing, files)));
    events.addAll(happened(filing.revision()));
    ledger.append(events);
    return new Cabinet.Filed(filed.told() + chained(), filed.written());
  }

  private Event event(Filing filing, Map<String, byte[]> files) {
    List<SourceFile> records = new ArrayList<>();
    files.forEach((name, bytes) -> records.add(SourceFile.of(name, bytes)));
    return Event.of(filing.isAmendment() ? Deed.AMENDED : Deed.CLOSED, caller.now(), caller.tool())
        .on(day.day(), filing.revision())
        .by(filing.by(), filing.reason())
        .files(hashes, Found.written(day.day(), filing.revision(), records))
        .facts(facts());
  }

  private Map<String, String> facts() {
    Map<String, String> facts = new TreeMap<>();
    facts.put(Told.JUDGED_AT, day.moment().toString());
    day.judgements()
        .forEach(each -> facts.put("verdict of " + each.lot().code(), each.verdict().words()));
    return facts;
  }

  private String chained() {
    Head head = ledger.ledger().head();
    return "The ledger's last line is now " + head.sequence() + ", hash " + head.hash() + "\n";
  }
}

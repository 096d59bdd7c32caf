package org.flitchbook.record;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.flitchbook.account.LotAccount.Keeping;
import org.flitchbook.change.Change;
import org.flitchbook.document.Block;
import org.flitchbook.document.Document;
import org.flitchbook.ledger.Head;
import org.flitchbook.plan.Establishment;
import org.flitchbook.qrcode.QrCode;
import org.flitchbook.reading.FileRead;
import org.flitchbook.record.DayJudged.Filing;

/** What every record has: its head and foot, what changed since the last one, its evidence. */
final class Documents extends Section {

  private static final int SHORT_HASH = 12;
  private static final int HALF_HASH = 32;

  private final Filing filing;

  Documents(DayJudged day) {
    super(day);
    this.filing = day.filing();
  }

  /**
   * A record of the day.
   *
   * @param about the product, or what the record is about
   * @param name the lot's code, or the record's own name
   */
  Document record(String title, String about, String name, Blocks blocks) {
    Establishment house = day.plan().establishment();
    String number = house.number();
    String address = house.address();
    String filed = name + (filing.isFiled() ? ", r" + filing.revision() : "");
    Document.Running running =
        new Document.Running(
            number.isEmpty()
                ? house.name() + ", " + address
                : say("record.frame.house", "{0}, est. {1}, {2}", house.name(), number, address),
            about.isEmpty() ? title : about + ", " + name,
            say(
                "record.frame.plan",
                "Plan version {0}, record {1}, plan {2}",
                day.plan().version(),
                day.day() + "/" + filed,
                day.plan().sha256().substring(0, SHORT_HASH)),
            say("record.frame.times", "Times in {0}, {1}", house.zone(), zone(day.moment())));
    return new Document(
        filing.isAmendment()
            ? say("record.filing.revision", "{0}, revision {1}", title, filing.revision())
            : title,
        about.isEmpty() ? house.name() : about,
        day.plan().words(),
        day.book() + "/" + day.day() + "/" + filed,
        day.moment(),
        Document.Paper.parse(house.paper()).orElse(Document.Paper.A4),
        running,
        witness(),
        blocks.list());
  }

  /** A document for a terminal. */
  Document screen(String title, String subject, String name, Blocks blocks) {
    return new Document(
        title,
        subject,
        day.plan().words(),
        day.book() + "/" + name,
        day.moment(),
        Document.Paper.A4,
        new Document.Running("", "", "", ""),
        Optional.empty(),
        blocks.list());
  }

  /** The changes since the revision before, with the reason; nothing in a first revision. */
  List<Block> changes() {
    if (!filing.isAmendment()) {
      return List.of();
    }
    String by =
        day.plan()
            .person(filing.by())
            .map(person -> person.name() + " (" + person.initials() + ")")
            .orElse(filing.by());
    Block inputs =
        table("record.filing.table", "Inputs that changed", filing.changes())
            .column("record.filing.where", "Where", 14, this::where)
            .column("record.filing.what", "What", 6, c -> word("changed", c.type().word()))
            .column("record.filing.before", "Before", 20, c -> c.old().map(this::say).orElse("–"))
            .column("record.filing.now", "Now", 20, c -> c.text().map(this::say).orElse("–"))
            .table();
    return new Blocks()
        .add(heading("record.filing.changes", "Changes since r{0}", filing.amends()))
        .add(paragraph("record.filing.reason", "Reason: {0}", filing.reason()))
        .add(
            by.isEmpty()
                ? List.of()
                : List.of(paragraph("record.filing.by", "Amended by {0}.", by)))
        .add(inputs)
        .list();
  }

  private String where(Change change) {
    return change.hasMoved()
        ? say("record.filing.moved", "{0} (was line {1})", change.place(), change.before().line())
        : say(change.place());
  }

  /** The last section of every record: the files that it carries, and by what they are known. */
  List<Block> evidence(Carried carried) {
    return new Blocks()
        .add(heading("record.carried.heading", "Evidence carried by this file"))
        .add(paragraph(attached(carried)))
        .add(paragraph(chained()))
        .add(files(carried.files()))
        .list();
  }

  private String attached(Carried carried) {
    String attached =
        say(
            "record.carried.attached",
            "The files below are attached to this one, byte for byte as they were read: a reader of"
                + " PDF can take them out. From them alone the same is found again.");
    String further =
        say(
            "record.carried.left",
            "Further files in the book up to this day on which nothing here rests: {0}.",
            carried.left());
    return carried.left() == 0 ? attached : attached + " " + further;
  }

  /**
   * The end of the chain that this close hangs on to, beside the title: the sheet that is signed in
   * ink is the copy of it that nobody with the folder can change.
   */
  private Optional<Document.Code> witness() {
    if (filing.line() == 0) {
      return Optional.empty();
    }
    Head head = new Head(filing.line(), filing.hash());
    return Optional.of(
        new Document.Code(
            QrCode.rows(head.forCode()),
            say(
                "record.filing.code",
                "Code that holds line {0} of the ledger with its hash {1}",
                head.sequence(),
                head.hash()),
            List.of(
                say("record.filing.head", "Ledger before this close"),
                say("record.filing.line", "line {0}", head.sequence()),
                head.shortHash())));
  }

  /** The end of the chain once more, with all digits of its hash. */
  private String chained() {
    if (!filing.isFiled()) {
      return say(
          "record.filing.outside",
          "Printed outside of the book's records: this print is not in the ledger.");
    }
    return filing.line() == 0
        ? say(
            "record.filing.first",
            "Revision r{0}. Before this close the ledger had no line.",
            filing.revision())
        : say(
            "record.filing.after",
            "Revision r{0}. Before this close the ledger's last line was line {1}, with the hash"
                + " {2}. The first digits of it, and a code that holds them all, stand beside the"
                + " title: with them prove tells later whether lines were taken out, or written"
                + " again.",
            filing.revision(),
            filing.line(),
            inHalves(filing.hash()));
  }

  private Block files(List<FileRead> carried) {
    return table("record.carried.caption", "Files carried", carried)
        .column("record.carried.file", "File", 0, FileRead::name)
        .column("record.carried.read-as", "Read as", 4, f -> word("use", f.use()))
        .number("record.carried.bytes", "Bytes", 0, f -> String.valueOf(f.bytes()))
        .number("record.carried.rows", "Rows", 0, f -> f.rows() == 0 ? "–" : f.rows() + "")
        .number("record.carried.used", "Used", 0, f -> f.rows() == 0 ? "–" : f.used() + "")
        .column("record.carried.hash", "SHA-256, in two halves", 20, f -> inHalves(f.sha256()))
        .table();
  }

  /** A line can end between the halves. */
  private static String inHalves(String hash) {
    return hash.substring(0, HALF_HASH) + " " + hash.substring(HALF_HASH);
  }

  /** {@code 2028-02-24, 2 years from the last shipment}; empty where no rule is known. */
  String keepUntil(Optional<Keeping> keeping) {
    if (keeping.isEmpty()) {
      return "";
    }
    long months = keeping.get().keep().toTotalMonths();
    String time =
        months % 12 == 0
            ? count("record.keep.years", months / 12, "{0} year", "{0} years")
            : count("record.keep.months", months, "{0} month", "{0} months");
    LocalDate until = keeping.get().until();
    return keeping.get().fromShipment()
        ? say("record.keep.from-shipment", "{0}, {1} from the last shipment", until, time)
        : say("record.keep.from-day", "{0}, {1} from the day judged", until, time);
  }

  /** The rule alone, for a record that says elsewhere until when it is kept. */
  String keepingRule(Optional<Keeping> keeping) {
    return keeping.map(known -> say("record.keep.rule", "Kept by {0}.", known.rule())).orElse("");
  }

  /** The date and its rule, for a record that has no page of facts. */
  Block.Note keepingNote(Optional<Keeping> keeping) {
    String until = orNotRecorded(keepUntil(keeping));
    return note(say("record.keep.until", "Keep until {0}.", until), keepingRule(keeping));
  }
}

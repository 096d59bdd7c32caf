package org.flitchbook.record;

import java.util.List;
import org.flitchbook.change.Change;
import org.flitchbook.document.Block;
import org.flitchbook.document.Document;
import org.flitchbook.plan.Establishment;
import org.flitchbook.plan.Person;
import org.flitchbook.reading.FileRead;

/**
 * What stands in every record: its head and foot, what changed since the last one, and its
 * evidence.
 */
final class Documents extends Section {

  private static final int SHORT_HASH = 12;

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
    String filed = name + (filing.isFiled() ? ", r" + filing.revision() : "");
    Document.Running running =
        new Document.Running(
            house(house),
            about.isEmpty() ? title : about + ", " + name,
            say(
                "record.frame.plan",
                "Plan version {0}, record {1}, plan {2}",
                day.plan().version(),
                day.day() + "/" + filed,
                day.plan().sha256().substring(0, SHORT_HASH)),
            say("record.frame.times", "Times in {0}, {1}", house.zone(), zone(day.moment())));
    return new Document(
        titled(title),
        about.isEmpty() ? house.name() : about,
        day.plan().words(),
        day.book() + "/" + day.day() + "/" + filed,
        day.moment(),
        Document.Paper.parse(house.paper()).orElse(Document.Paper.A4),
        running,
        blocks.list());
  }

  private String house(Establishment house) {
    return house.number().isEmpty()
        ? house.name() + ", " + house.address()
        : say(
            "record.frame.house",
            "{0}, est. {1}, {2}",
            house.name(),
            house.number(),
            house.address());
  }

  private String titled(String title) {
    return filing.isAmendment()
        ? say("record.filing.revision", "{0}, revision {1}", title, filing.revision())
        : title;
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
        blocks.list());
  }

  /** The changes since the revision before, with the reason; nothing in a first revision. */
  List<Block> changes() {
    Blocks blocks = new Blocks();
    if (filing.isAmendment()) {
      blocks
          .add(heading("record.filing.changes", "Changes since r{0}", filing.amends()))
          .add(paragraph(say("record.filing.reason", "Reason: {0}", filing.reason())));
      if (!filing.by().isEmpty()) {
        String by = day.plan().person(filing.by()).map(Documents::named).orElse(filing.by());
        blocks.add(paragraph(say("record.filing.by", "Amended by {0}.", by)));
      }
      blocks.add(inputs());
    }
    return blocks.list();
  }

  private static String named(Person person) {
    return person.name() + " (" + person.initials() + ")";
  }

  private Block inputs() {
    return table("record.filing.table", "Inputs that changed", filing.changes())
        .column("record.filing.where", "Where", 14, this::where)
        .column("record.filing.what", "What", 6, c -> word("changed", c.type().word()))
        .column("record.filing.before", "Before", 20, c -> c.old().map(this::say).orElse("–"))
        .column("record.filing.now", "Now", 20, c -> c.text().map(this::say).orElse("–"))
        .table();
  }

  private String where(Change change) {
    return change.hasMoved()
        ? say("record.filing.moved", "{0} (was line {1})", change.place(), change.before().line())
        : say(change.place());
  }

  /** The last section of every record: the files that it carries, and by what they are known. */
  List<Block> evidence(List<FileRead> carried) {
    return new Blocks()
        .add(heading("record.carried.heading", "Evidence carried by this file"))
        .add(paragraph(attached(carried)))
        .add(paragraph(chained()))
        .add(files(carried))
        .list();
  }

  private String attached(List<FileRead> carried) {
    List<String> names = carried.stream().map(FileRead::name).toList();
    long left = day.files().stream().filter(file -> !names.contains(file.name())).count();
    String attached =
        say(
            "record.carried.attached",
            "The files below are attached to this one, byte for byte as they were read: a reader of"
                + " PDF can take them out. From them alone the same is found again.");
    String further =
        say(
            "record.carried.left",
            "Further files in the book up to this day on which nothing here rests: {0}.",
            left);
    return left == 0 ? attached : attached + " " + further;
  }

  /** The end of the chain that this close hangs on to. */
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
                + " {2} ….",
            filing.revision(),
            filing.line(),
            filing.hash().substring(0, SHORT_HASH));
  }

  private Block files(List<FileRead> carried) {
    return table("record.carried.caption", "Files carried", carried)
        .column("record.carried.file", "File", 0, FileRead::name)
        .column("record.carried.read-as", "Read as", 4, f -> word("use", f.use()))
        .number("record.carried.bytes", "Bytes", 0, f -> String.valueOf(f.bytes()))
        .number("record.carried.rows", "Rows", 0, f -> rows(f, f.rows()))
        .number("record.carried.used", "Used", 0, f -> rows(f, f.used()))
        .column("record.carried.hash", "SHA-256, in two halves", 20, f -> inTwo(f.sha256()))
        .table();
  }

  private static String rows(FileRead file, int rows) {
    return file.rows() == 0 ? "–" : String.valueOf(rows);
  }

  /** So that a line can end in the middle of it. */
  private static String inTwo(String sha256) {
    int half = sha256.length() / 2;
    return sha256.substring(0, half) + " " + sha256.substring(half);
  }
}

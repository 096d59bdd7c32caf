package org.flitchbook.record;

import java.util.ArrayList;
import java.util.List;
import org.flitchbook.change.Change;
import org.flitchbook.document.Block;

/** What a record says of its revision: what changed since the one before, and its ledger. */
final class FilingSection {

  private static final int SHORT_HASH = 12;

  private final DayJudged day;
  private final Filing filing;
  private final Phrases phrases;

  FilingSection(DayJudged day) {
    this.day = day;
    this.filing = day.filing();
    this.phrases = day.phrases();
  }

  /** The changes since the revision before, with the reason; nothing in a first revision. */
  List<Block> changes() {
    if (!filing.isAmendment()) {
      return List.of();
    }
    List<Block> blocks = new ArrayList<>();
    blocks.add(phrases.heading("record.filing.changes", "Changes since r{0}", filing.amends()));
    blocks.add(
        phrases.paragraph(phrases.say("record.filing.reason", "Reason: {0}", filing.reason())));
    if (!filing.by().isEmpty()) {
      blocks.add(phrases.paragraph(phrases.say("record.filing.by", "Amended by {0}.", by())));
    }
    blocks.add(table());
    return blocks;
  }

  private String by() {
    return day.plan()
        .person(filing.by())
        .map(person -> person.name() + " (" + person.initials() + ")")
        .orElse(filing.by());
  }

  private Block table() {
    Grid grid =
        phrases
            .grid("record.filing.table", "Inputs that changed")
            .head("record.filing.where", "Where", 14)
            .head("record.filing.what", "What", 6)
            .head("record.filing.before", "Before", 20)
            .head("record.filing.now", "Now", 20);
    for (Change change : filing.changes()) {
      grid.row(
          where(change),
          phrases.word("changed", change.type().word()),
          change.old().map(phrases::say).orElse("–"),
          change.text().map(phrases::say).orElse("–"));
    }
    return grid.table();
  }

  private String where(Change change) {
    return change.hasMoved()
        ? phrases.say(
            "record.filing.moved", "{0} (was line {1})", change.place(), change.before().line())
        : change.name().map(phrases::say).orElse(change.place().toString());
  }

  /** The end of the chain that this close hangs on to. */
  Block ledger() {
    return phrases.paragraph(chained());
  }

  private String chained() {
    if (!filing.isFiled()) {
      return phrases.say(
          "record.filing.outside",
          "Printed outside of the book's records: this print is not in the ledger.");
    }
    return filing.line() == 0
        ? phrases.say(
            "record.filing.first",
            "Revision r{0}. Before this close the ledger had no line.",
            filing.revision())
        : phrases.say(
            "record.filing.after",
            "Revision r{0}. Before this close the ledger's last line was line {1}, with the hash"
                + " {2} ….",
            filing.revision(),
            filing.line(),
            filing.hash().substring(0, SHORT_HASH));
  }
}

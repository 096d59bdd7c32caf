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
    blocks.add(phrases.heading("record.filing.changes", filing.amends()));
    blocks.add(phrases.paragraph(phrases.say("record.filing.reason", filing.reason())));
    if (!filing.by().isEmpty()) {
      blocks.add(phrases.paragraph(phrases.say("record.filing.by", by())));
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
            .grid("record.filing.table")
            .head("record.filing.where", 14)
            .head("record.filing.what", 6)
            .head("record.filing.before", 20)
            .head("record.filing.now", 20);
    for (Change change : filing.changes()) {
      grid.row(
          where(change),
          phrases.word("changed", change.what().word()),
          change.old().isEmpty() ? "–" : change.old(),
          change.text().isEmpty() ? "–" : change.text());
    }
    return grid.table();
  }

  private String where(Change change) {
    return change.hasMoved()
        ? phrases.say("record.filing.moved", change.place(), change.before().line())
        : change.place().toString();
  }

  /** The end of the chain that this close hangs on to. */
  Block ledger() {
    return phrases.paragraph(chained());
  }

  private String chained() {
    if (!filing.isFiled()) {
      return phrases.say("record.filing.outside");
    }
    return filing.line() == 0
        ? phrases.say("record.filing.first", filing.revision())
        : phrases.say(
            "record.filing.after",
            filing.revision(),
            filing.line(),
            filing.hash().substring(0, SHORT_HASH));
  }
}

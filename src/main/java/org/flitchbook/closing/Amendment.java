package org.flitchbook.closing;

import static org.flitchbook.message.Message.say;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import org.flitchbook.archive.DayLedger;
import org.flitchbook.change.Change;
import org.flitchbook.change.Changes;
import org.flitchbook.input.SourceFile;
import org.flitchbook.ledger.Event;
import org.flitchbook.record.DayJudged;

/**
 * What is other than at the last close of a day.
 *
 * @param last its line in the ledger
 * @param evidence its inputs; empty where its bundle is gone or was changed
 * @param inputs what the day is judged from now
 * @param hashes of these, as a line of the ledger has them
 * @param tool the version of the program now
 */
record Amendment(
    Event last,
    Optional<List<SourceFile>> evidence,
    DayJudged day,
    List<SourceFile> inputs,
    SortedMap<String, String> hashes,
    String tool) {

  /** Whether the last close was made from the very same files, as of the same moment. */
  boolean isNone() {
    return isOfMomentOnly() && !isMomentNew();
  }

  /** Whether nothing that was written down has changed. */
  boolean isOfMomentOnly() {
    return hashes.equals(last.inputs()) && tool.equals(last.tool());
  }

  private boolean isMomentNew() {
    return !DayLedger.judgedAt(last).equals(Optional.of(day.moment()));
  }

  /** Row by row where the last revision's bundle is there, else file by file. */
  List<Change> changes() {
    List<Change> changes =
        new ArrayList<>(
            evidence
                .map(before -> Changes.between(before, inputs))
                .orElseGet(() -> Changes.ofHashes(last.inputs(), hashes)));
    if (!tool.equals(last.tool())) {
      changes.add(Changes.stated(say("change.tool", "version of the program"), last.tool(), tool));
    }
    if (isMomentNew()) {
      String before = DayLedger.judgedAt(last).map(this::shown).orElse("–");
      changes.add(
          Changes.stated(say("change.moment", "moment judged"), before, shown(day.moment())));
    }
    return changes;
  }

  private String shown(Instant moment) {
    return moment.atZone(day.plan().establishment().zone()).toOffsetDateTime().toString();
  }
}

package org.flitchbook.check;

import static org.flitchbook.message.Message.say;

import java.util.List;
import java.util.Optional;
import org.flitchbook.message.Listing;
import org.flitchbook.message.Word;
import org.flitchbook.plan.Kind;
import org.flitchbook.reading.Entry;
import org.flitchbook.sheet.Sheet;
import org.flitchbook.sheet.Step;
import org.flitchbook.sheet.What;

/** Judges that an entry is there, complete, and on time. */
record PresenceJudge(JudgedLot judged, Kind.Presence presence, Step step) {

  Outcome judge() {
    return Outcome.worstOfAll(pieces().stream().map(this::judge).toList())
        .beside(judged.entries(presence.what()));
  }

  /** What is done to the meat while it is cured is done to each piece; all else to the lot. */
  private List<String> pieces() {
    return presence.what().standsOn(Sheet.CURE) ? new Pieces(judged).names() : List.of("");
  }

  private Outcome judge(String piece) {
    Optional<Entry> entry = first(presence.what(), piece);
    Optional<Entry> late = presence.before().flatMap(what -> first(what, piece));
    return entry
        .map(made -> judge(made, late))
        .orElseGet(() -> late.map(this::withoutIt).orElseGet(() -> missing(piece)));
  }

  private Optional<Entry> first(What what, String piece) {
    return judged.lot().all(what).stream().filter(entry -> Pieces.isOf(entry, piece)).findFirst();
  }

  private Outcome missing(String piece) {
    return judged.without(step, JudgedLot.ofPiece(JudgedLot.noEntry(presence.what()), piece));
  }

  private Outcome withoutIt(Entry after) {
    return Outcome.notMet(
            say(
                "check.presence.too-late",
                "\"{0}\" without \"{1}\" before it",
                after.what(),
                presence.what()))
        .from(List.of(after.place()));
  }

  private Outcome judge(Entry entry, Optional<Entry> late) {
    if (late.filter(after -> !entry.time().isBefore(after.time())).isPresent()) {
      return withoutIt(late.get());
    }
    List<Word> empty =
        presence.with().stream()
            .filter(column -> isEmpty(entry, column))
            .map(column -> new Word("column", column))
            .toList();
    Outcome outcome =
        empty.isEmpty()
            ? Outcome.met()
            : Outcome.notShown(
                say("check.presence.lacks", "the entry lacks {0}", Listing.commas(empty)));
    return outcome.from(List.of(entry.place()));
  }

  private static boolean isEmpty(Entry entry, String column) {
    return switch (column) {
      case "by" -> entry.by().isEmpty();
      case "instrument" -> entry.instrument().isEmpty();
      case "value" -> entry.value().isEmpty();
      case "item" -> entry.item().isEmpty();
      default -> entry.note().isEmpty();
    };
  }
}

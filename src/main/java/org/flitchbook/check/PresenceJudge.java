package org.flitchbook.check;

import java.util.List;
import java.util.Optional;
import org.flitchbook.plan.Kind;
import org.flitchbook.reading.Entry;
import org.flitchbook.sheet.Sheet;
import org.flitchbook.sheet.Step;
import org.flitchbook.sheet.What;

/** Judges that an entry is there, complete, and on time. */
final class PresenceJudge {

  private final Case judged;
  private final Kind.Presence presence;
  private final Step step;

  PresenceJudge(Case judged, Kind.Presence presence, Step step) {
    this.judged = judged;
    this.presence = presence;
    this.step = step;
  }

  Outcome judge() {
    return Outcome.worstOfAll(pieces().stream().map(this::judge).toList());
  }

  /** What is done to the meat while it is cured is done to each piece; all else to the lot. */
  private List<String> pieces() {
    return presence.what().standsOn(Sheet.CURE) ? new Curing(judged).pieces() : List.of("");
  }

  private Outcome judge(String piece) {
    Optional<Entry> entry = first(presence.what(), piece);
    Optional<Entry> late = presence.before().flatMap(what -> first(what, piece));
    return entry
        .map(made -> judge(made, late))
        .orElseGet(() -> late.map(this::withoutIt).orElseGet(() -> missing(piece)));
  }

  /** One for no piece is for all of them; that of a lot in pieces for which none is asked, any. */
  private Optional<Entry> first(What what, String piece) {
    return judged.lot().all(what).stream()
        .filter(entry -> piece.isEmpty() || entry.piece().isEmpty() || entry.piece().equals(piece))
        .findFirst();
  }

  private Outcome missing(String piece) {
    String lacking = judged.ofPiece(judged.noEntry(presence.what()), piece);
    return judged.withoutStep(step).orElseGet(() -> judged.missing(step, lacking));
  }

  private Outcome withoutIt(Entry after) {
    return Outcome.of(
            Verdict.NOT_MET,
            judged.say(
                "check.presence.too-late",
                "\"{0}\" without \"{1}\" before it",
                judged.what(after.what()),
                judged.what(presence.what())))
        .from(List.of(after.place()));
  }

  private Outcome judge(Entry entry, Optional<Entry> late) {
    List<String> empty = presence.with().stream().filter(each -> isEmpty(entry, each)).toList();
    if (late.filter(after -> !entry.time().isBefore(after.time())).isPresent()) {
      return withoutIt(late.get());
    }
    return empty.isEmpty()
        ? told(entry)
        : Outcome.notShown(lacks(empty)).from(List.of(entry.place()));
  }

  private String lacks(List<String> columns) {
    return judged.say(
        "check.presence.lacks",
        "the entry lacks {0}",
        String.join(
            ", ", columns.stream().map(c -> judged.plan().words().word("column", c)).toList()));
  }

  private Outcome told(Entry entry) {
    return Outcome.of(Verdict.MET, "").from(List.of(entry.place()));
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

package org.flitchbook.check;

import java.util.List;
import java.util.Optional;
import org.flitchbook.plan.Kind;
import org.flitchbook.reading.Entry;
import org.flitchbook.sheet.Step;

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
    Optional<Entry> entry = judged.lot().first(presence.what());
    Optional<Entry> late = presence.before().flatMap(judged.lot()::first);
    if (entry.isEmpty()) {
      return late.map(this::withoutIt)
          .or(() -> judged.withoutStep(step))
          .orElseGet(() -> judged.missing(step, "no \"" + presence.what().word() + "\" entry"));
    }
    return judge(entry.get(), late);
  }

  private Outcome withoutIt(Entry after) {
    return Outcome.of(
            Verdict.NOT_MET,
            "\"" + after.what().word() + "\" without \"" + presence.what().word() + "\" before it")
        .from(List.of(after.place()));
  }

  private Outcome judge(Entry entry, Optional<Entry> late) {
    List<String> empty = presence.with().stream().filter(each -> isEmpty(entry, each)).toList();
    if (late.filter(after -> !entry.time().isBefore(after.time())).isPresent()) {
      return withoutIt(late.get());
    }
    return empty.isEmpty()
        ? told(entry)
        : Outcome.notShown("the entry lacks " + String.join(", ", empty))
            .from(List.of(entry.place()));
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

package org.flitchbook.record;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.flitchbook.check.PlanChoice;
import org.flitchbook.document.Block;
import org.flitchbook.lot.Lot;
import org.flitchbook.lot.Stay;
import org.flitchbook.plan.Plan;
import org.flitchbook.plan.Succession;
import org.flitchbook.reading.Entry;

/** Which version of the plan each step began under, where the plan changed while a lot was made. */
final class PlanVersions {

  private final Lot lot;
  private final Succession versions;
  private final Phrases phrases;

  PlanVersions(DayJudged day, Lot lot) {
    this.lot = lot;
    this.versions = day.versions();
    this.phrases = day.phrases();
  }

  Optional<Block> block() {
    if (versions.formerSince(begin()).isEmpty()) {
      return Optional.empty();
    }
    List<String> sentences = new ArrayList<>();
    lot.stays().forEach(stay -> sentences.add(begun(stay)));
    sentences.add(
        PlanChoice.of(lot, versions)
            .map(this::settled)
            .orElse(
                phrases.say(
                    "record.plans.stricter",
                    "Each limit was judged under every version in force while the lot was made; the"
                        + " stricter finding counts, and says by which version it was made.")));
    return Optional.of(phrases.paragraph(String.join(" ", sentences)));
  }

  private Instant begin() {
    return lot.entries().get(0).time().earliest();
  }

  private String settled(PlanChoice choice) {
    Entry entry = choice.entry();
    return phrases.say(
        "record.plans.settled",
        "{0} settled that version {1} counts: {2} ({3}).",
        entry.by(),
        choice.version(),
        entry.note(),
        entry.place());
  }

  private String begun(Stay stay) {
    Plan plan = versions.at(stay.into().time().earliest());
    return phrases.say(
        "record.plans.begun",
        "The step {0} began under plan version {1}, signed {2}.",
        phrases.step(stay.step()),
        plan.version(),
        plan.signed());
  }
}

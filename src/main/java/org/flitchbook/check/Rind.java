package org.flitchbook.check;

import static org.flitchbook.message.Message.say;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.flitchbook.input.Place;
import org.flitchbook.message.Message;
import org.flitchbook.plan.RuleSet;
import org.flitchbook.reading.Entry;
import org.flitchbook.sums.Base;

/**
 * The skin-free base of one piece: what the rind was when the piece was weighed.
 *
 * @param base empty where the entries don't tell
 * @param off the weighing of the rind, where it was taken off
 * @param lacks why there is no base, where there is none
 */
record Rind(
    Optional<Base> base, Optional<Entry> off, Optional<Message> lacks, List<Place> evidence) {

  /**
   * The base of a piece.
   *
   * @param share what the rule sets say that rind is of a weight
   */
  static Rind of(
      Optional<RuleSet.RindShare> share, Entry green, List<Entry> stated, List<Entry> weighed) {
    Optional<Entry> before =
        stated.stream()
            .filter(entry -> !green.time().isBefore(entry.time()))
            .reduce((earlier, later) -> later);
    if (before.isEmpty()) {
      return without(untold(stated), List.of());
    }
    if (before.get().value().equalsIgnoreCase("off")) {
      return of(Base.skinFree(green.amount()), Optional.empty(), List.of(before.get().place()));
    }
    return on(share, green, before.get(), weighed);
  }

  /** Whether a share was taken off for a rind that nobody weighed. */
  boolean isEstimated() {
    return off.isEmpty() && base.filter(Base::hasRind).isPresent();
  }

  private static Rind on(
      Optional<RuleSet.RindShare> share, Entry green, Entry stated, List<Entry> weighed) {
    List<Place> evidence = new ArrayList<>(List.of(stated.place()));
    if (!weighed.isEmpty()) {
      Entry rind = weighed.get(weighed.size() - 1);
      evidence.add(rind.place());
      return rind.amount().isBelow(green.amount())
          ? of(Base.lessRind(green.amount(), rind.amount()), Optional.of(rind), evidence)
          : without(
              say("check.rind.too-heavy", "the rind weighs as much as the whole piece"), evidence);
    }
    return share
        .map(known -> of(Base.lessShare(green.amount(), known.value()), Optional.empty(), evidence))
        .orElseGet(
            () ->
                without(
                    say(
                        "check.rind.not-weighed",
                        "weighed with the rind on, the rind not weighed, and no rule set gives a"
                            + " share"),
                    evidence));
  }

  private static Rind of(Base base, Optional<Entry> off, List<Place> evidence) {
    return new Rind(Optional.of(base), off, Optional.empty(), evidence);
  }

  private static Rind without(Message lacks, List<Place> evidence) {
    return new Rind(Optional.empty(), Optional.empty(), Optional.of(lacks), evidence);
  }

  private static Message untold(List<Entry> stated) {
    return stated.isEmpty()
        ? say(
            "check.rind.not-stated",
            "no \"rind\" entry says whether the green weight was taken without the rind")
        : say(
            "check.rind.stated-late",
            "\"rind {0}\" was stated after the green weight was taken",
            stated.get(0).value());
  }
}

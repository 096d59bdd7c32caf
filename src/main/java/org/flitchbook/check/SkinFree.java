package org.flitchbook.check;

import static org.flitchbook.message.Message.say;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.flitchbook.input.Place;
import org.flitchbook.message.Message;
import org.flitchbook.plan.RuleSet;
import org.flitchbook.reading.Entry;
import org.flitchbook.sums.Base;

/**
 * The skin-free base of one piece: what the rind was when the piece was weighed.
 *
 * @param base empty where the entries don't say it
 * @param off the weighing of the rind, where it was taken off
 * @param lacks why there is no base
 */
record SkinFree(
    Optional<Base> base, Optional<Entry> off, Optional<Message> lacks, List<Place> evidence) {

  /**
   * @param green the weighing of the piece
   * @param stated what was written of its rind
   * @param weighed the weighings of its rind
   * @param share what counts as rind where nobody weighed it
   */
  static SkinFree of(
      Entry green, List<Entry> stated, List<Entry> weighed, Optional<RuleSet.RindShare> share) {
    Optional<Entry> before =
        stated.stream()
            .filter(entry -> !green.time().isBefore(entry.time()))
            .reduce((earlier, later) -> later);
    if (before.isEmpty()) {
      return without(notStated(stated), List.of());
    }
    List<Place> evidence = List.of(before.get().place());
    if (before.get().value().equalsIgnoreCase("off")) {
      return of(Base.skinFree(green.amount()), evidence);
    }
    if (!weighed.isEmpty()) {
      return less(weighed.get(weighed.size() - 1), green, evidence);
    }
    return share
        .map(known -> of(Base.lessShare(green.amount(), known.value()), evidence))
        .orElseGet(() -> without(notWeighed(), evidence));
  }

  private static Message notWeighed() {
    return say(
        "check.rind.not-weighed",
        "weighed with the rind on, the rind not weighed, and no rule set gives a share");
  }

  /** Whether a share was taken off for a rind that nobody weighed. */
  boolean isEstimated() {
    return off.isEmpty() && base.filter(Base::hasRind).isPresent();
  }

  private static SkinFree less(Entry rind, Entry green, List<Place> stated) {
    List<Place> evidence = Stream.concat(stated.stream(), Stream.of(rind.place())).toList();
    if (!rind.amount().isBelow(green.amount())) {
      return without(
          say("check.rind.too-heavy", "the rind weighs as much as the whole piece"), evidence);
    }
    Base base = Base.lessRind(green.amount(), rind.amount());
    return new SkinFree(Optional.of(base), Optional.of(rind), Optional.empty(), evidence);
  }

  private static SkinFree of(Base base, List<Place> evidence) {
    return new SkinFree(Optional.of(base), Optional.empty(), Optional.empty(), evidence);
  }

  private static SkinFree without(Message reason, List<Place> evidence) {
    return new SkinFree(Optional.empty(), Optional.empty(), Optional.of(reason), evidence);
  }

  private static Message notStated(List<Entry> stated) {
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

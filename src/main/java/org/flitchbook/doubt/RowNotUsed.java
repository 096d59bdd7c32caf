package org.flitchbook.doubt;

import static org.flitchbook.message.Message.say;

import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.flitchbook.input.Place;
import org.flitchbook.json.Choice;
import org.flitchbook.message.Message;
import org.flitchbook.plan.Kind;
import org.flitchbook.reading.Entry;
import org.flitchbook.sheet.Sheet;
import org.flitchbook.sheet.Step;
import org.flitchbook.sheet.What;

/**
 * A row of the lot that no finding used, and that is not printed as a mere remark by what it is
 * about: wood, glaze, a weight on the way. Looked for once the limits are judged.
 *
 * @param coldAtMost a temperature of meat, cooler or water up to this is a remark where no limit
 *     looks at it
 */
@Choice("row not used")
record RowNotUsed(Degrees coldAtMost) implements Rule.Numbers {

  private static final Set<What> COLD =
      EnumSet.of(
          What.RECEIVED_TEMPERATURE,
          What.WATER_TEMPERATURE,
          What.COOLER_TEMPERATURE,
          What.INTERNAL_TEMPERATURE);

  /** What brings nitrite in or moves the lot; the amount of meat is asked about by other rules. */
  private static final Set<What> DECISIVE =
      EnumSet.of(What.CURING_SALT, What.ACCELERATOR, What.PICKLE, What.PUMP, What.PICK_UP);

  static {
    Step.ofWork().forEach(step -> DECISIVE.addAll(Set.of(step.into(), step.outOf())));
  }

  /**
   * @param used the rows that findings used or that something was said of
   */
  Stream<Doubt> find(Subject subject, Set<Place> used) {
    return subject
        .rows()
        .filter(entry -> !used.contains(Place.of(entry.place().file(), entry.place().line())))
        .filter(entry -> !isRemark(subject, entry))
        .map(RowNotUsed::doubt);
  }

  private boolean isRemark(Subject subject, Entry entry) {
    if (entry.sheet() == Sheet.ACTIONS) {
      return entry.is(What.EXPLAINED)
          || (entry.is(What.CLOSED) ? closesSomething(subject, entry) : isClosed(subject, entry));
    }
    return entry.sheet() != Sheet.LAB
        && !DECISIVE.contains(entry.what())
        && subject.limits().noneMatch(limit -> isWanted(limit, entry))
        && (!isOutside(subject, entry) || isBesideCore(subject, entry));
  }

  /** The air of the smoke and of the chill is compared with the core, which has limits. */
  private static boolean isBesideCore(Subject subject, Entry entry) {
    return !subject.coreTracks().isEmpty()
        && Stream.of(Step.SMOKE, Step.CHILL)
            .flatMap(step -> subject.lot().tracks(entry.what(), step).stream())
            .flatMap(track -> IntStream.range(0, track.size()).mapToObj(track::entry))
            .anyMatch(Optional.of(entry)::equals);
  }

  private boolean isOutside(Subject subject, Entry entry) {
    return (COLD.contains(entry.what()) && entry.amount().isAbove(coldAtMost.written()))
        || subject.limits().anyMatch(limit -> misses(limit, entry));
  }

  /** Whether what was acted on was closed then or afterwards. */
  private static boolean isClosed(Subject subject, Entry entry) {
    return subject.lot().all(What.CLOSED).stream()
        .anyMatch(closed -> !closed.time().isBefore(entry.time()));
  }

  private static boolean closesSomething(Subject subject, Entry closed) {
    return subject.lot().entries().stream()
        .filter(entry -> entry.sheet() == Sheet.ACTIONS && !entry.is(What.CLOSED))
        .anyMatch(entry -> !closed.time().isBefore(entry.time()));
  }

  /** Whether a limit wants it done every so often, and not when it was done. */
  private static boolean isWanted(Kind limit, Entry entry) {
    return limit instanceof Kind.Cadence cadence && entry.is(cadence.what());
  }

  /** Whether it would miss a limit on the same thing that does not look at it. */
  private static boolean misses(Kind limit, Entry entry) {
    if (limit instanceof Kind.Holding holding) {
      return entry.is(holding.what())
          && (holding.ceiling()
              ? entry.amount().isAbove(holding.limit())
              : entry.amount().isBelow(holding.limit()));
    }
    return limit instanceof Kind.Span span
        && entry.is(span.what())
        && span.stages().stream()
            .filter(Kind.Stage::falling)
            .anyMatch(stage -> entry.amount().isAbove(stage.to()));
  }

  private static Doubt doubt(Entry entry) {
    return new Doubt(
        entry.place(),
        found(entry),
        say("doubt.unused.expected", "what a limit of the plan looks at, where and when it looks"),
        say(
            "do.row-not-used",
            "Correct the word, the place, the time or the sheet, or say what it was."));
  }

  private static Message found(Entry entry) {
    Optional<String> shown = Optional.of(entry.shown()).filter(text -> !text.isEmpty());
    Message what =
        shown
            .map(text -> say("doubt.unused.of", "{0} of {1}", entry.what(), text))
            .orElse(Message.of(entry.what()));
    return entry.item().isEmpty()
        ? say("doubt.unused.found", "{0}, which no limit looks at", what)
        : say("doubt.unused.found-of", "{0} ({1}), which no limit looks at", what, entry.item());
  }
}

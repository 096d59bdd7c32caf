package org.flitchbook.plan;

import java.util.List;
import java.util.Optional;
import org.flitchbook.json.Fields;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Ratio;

/** A rule set's limit with other numbers in a plan: tighter as it likes, looser with support. */
final class Tightening {

  private Tightening() {}

  /** The kind with the numbers that the plan's entry names; the same where it names none. */
  static Kind apply(Kind kind, Fields entry) {
    if (!(kind instanceof Kind.Stated stated)) {
      return kind;
    }
    Kind.Stated changed =
        PlanFormats.BINDER.change(stated, Kind.Stated.class, entry, ChosenLimit.NUMBERS);
    if (changed instanceof Kind.Bound now && kind instanceof Kind.Bound was) {
      return now.ceiling()
          ? new Kind.Ceiling(now.figure(), now.limit(), printed(now, was))
          : new Kind.Floor(now.figure(), now.limit(), printed(now, was));
    }
    return changed;
  }

  /** The number for potassium nitrite, so that a part of it counts for as much as before. */
  private static Optional<Quantity> printed(Kind.Bound now, Kind.Bound was) {
    Optional<Ratio> counts = was.potassium().filter(ratio -> ratio.signum() > 0);
    return was.potassiumNitrite()
        .map(
            printed ->
                counts
                    .map(each -> now.limit().inBase().over(was.limit().inBase()))
                    .map(part -> new Quantity(printed.value().times(part), printed.unit()))
                    .orElse(printed));
  }

  /** Whether something passes the changed limit that the original would have caught. */
  static boolean isLooser(Kind changed, Kind original) {
    if (changed instanceof Kind.Bound now && original instanceof Kind.Bound was) {
      return isLooser(was.ceiling(), now.limit(), was.limit());
    } else if (changed instanceof Kind.Length now && original instanceof Kind.Length was) {
      return isLooser(!was.atLeast(), now.limit(), was.limit());
    } else if (changed instanceof Kind.Cadence now && original instanceof Kind.Cadence was) {
      return now.every().isAbove(was.every());
    } else if (changed instanceof Kind.Holding now && original instanceof Kind.Holding was) {
      return isLooser(was.ceiling(), now.limit(), was.limit())
          || now.every().isAbove(was.every())
          || now.allow().isAbove(was.allow());
    } else if (changed instanceof Kind.Span now && original instanceof Kind.Span was) {
      return was.stages().stream().anyMatch(stage -> !isKept(stage, now.stages()));
    } else if (changed instanceof Kind.TimeAtTemperature now
        && original instanceof Kind.TimeAtTemperature was) {
      return now.rows().stream().anyMatch(row -> !isHeldBy(row, was.rows()));
    }
    return !changed.equals(original);
  }

  private static boolean isLooser(boolean ceiling, Quantity now, Quantity was) {
    return ceiling ? now.isAbove(was) : now.isBelow(was);
  }

  /** An original stage must still be there, with no more time. */
  private static boolean isKept(Kind.Stage stage, List<Kind.Stage> now) {
    return now.stream()
        .anyMatch(
            each ->
                each.from().compareTo(stage.from()) == 0
                    && each.to().compareTo(stage.to()) == 0
                    && !each.atMost().isAbove(stage.atMost()));
  }

  /** A row is as strict as some original row that is no hotter and asks no more time. */
  private static boolean isHeldBy(Kind.Hold row, List<Kind.Hold> originals) {
    return originals.stream()
        .anyMatch(was -> !was.atLeast().isAbove(row.atLeast()) && !was.time().isAbove(row.time()));
  }
}

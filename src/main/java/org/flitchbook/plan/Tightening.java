package org.flitchbook.plan;

import java.util.List;
import java.util.Optional;
import org.flitchbook.json.Fields;
import org.flitchbook.measure.Dimension;
import org.flitchbook.measure.Quantity;

/** A rule set's limit with other numbers in a plan: tighter as it likes, looser with support. */
final class Tightening {

  private Tightening() {}

  /** The kind with the numbers that the plan's entry names; the same where it names none. */
  static Kind apply(Kind kind, Fields entry) {
    if (kind instanceof Kind.Bound bound) {
      return number(entry, key(bound.ceiling()), bound.figure().dimension())
          .<Kind>map(bound::with)
          .orElse(kind);
    }
    if (kind instanceof Kind.Length length) {
      return number(entry, key(!length.atLeast()), Dimension.TIME)
          .<Kind>map(time -> new Kind.Length(length.from(), length.to(), length.atLeast(), time))
          .orElse(kind);
    }
    if (kind instanceof Kind.Cadence cadence) {
      return number(entry, "every", Dimension.TIME)
          .<Kind>map(every -> new Kind.Cadence(cadence.what(), every))
          .orElse(kind);
    }
    return applyToTable(kind, entry);
  }

  private static Kind applyToTable(Kind kind, Fields entry) {
    if (kind instanceof Kind.Holding holding) {
      Dimension dimension = holding.limit().dimension();
      return new Kind.Holding(
          holding.what(),
          holding.ceiling(),
          level(entry, key(holding.ceiling()), dimension).orElse(holding.limit()),
          number(entry, "every", Dimension.TIME).orElse(holding.every()),
          number(entry, "allow", Dimension.TIME).orElse(holding.allow()));
    }
    if (kind instanceof Kind.Span span && entry.has("stages")) {
      return new Kind.Span(span.what(), KindReader.stages(entry), span.warmDrying());
    }
    if (kind instanceof Kind.TimeAtTemperature table && entry.has("rows")) {
      return new Kind.TimeAtTemperature(table.what(), KindReader.rows(entry), table.integral());
    }
    return kind;
  }

  private static String key(boolean atMost) {
    return atMost ? "atMost" : "atLeast";
  }

  private static Optional<Quantity> level(Fields entry, String key, Dimension dimension) {
    return entry.has(key) ? Quantities.level(entry, key, dimension) : Optional.empty();
  }

  private static Optional<Quantity> number(Fields entry, String key, Dimension dimension) {
    return Quantities.optional(entry, key, dimension);
  }

  /** Whether something passes the changed limit that the original would have caught. */
  static boolean isLooser(Kind changed, Kind original) {
    if (changed instanceof Kind.Bound now && original instanceof Kind.Bound was) {
      return was.ceiling() ? now.limit().isAbove(was.limit()) : now.limit().isBelow(was.limit());
    }
    if (changed instanceof Kind.Length now && original instanceof Kind.Length was) {
      return was.atLeast() ? now.limit().isBelow(was.limit()) : now.limit().isAbove(was.limit());
    }
    if (changed instanceof Kind.Cadence now && original instanceof Kind.Cadence was) {
      return now.every().isAbove(was.every());
    }
    if (changed instanceof Kind.Holding now && original instanceof Kind.Holding was) {
      return isLooser(now, was);
    }
    if (changed instanceof Kind.Span now && original instanceof Kind.Span was) {
      return isLooser(now.stages(), was.stages());
    }
    if (changed instanceof Kind.TimeAtTemperature now
        && original instanceof Kind.TimeAtTemperature was) {
      return now.rows().stream().anyMatch(row -> !isHeldBy(row, was.rows()));
    }
    return !changed.equals(original);
  }

  private static boolean isLooser(Kind.Holding now, Kind.Holding was) {
    return (was.ceiling() ? now.limit().isAbove(was.limit()) : now.limit().isBelow(was.limit()))
        || now.every().isAbove(was.every())
        || now.allow().isAbove(was.allow());
  }

  /** Each original stage must still be there, with no more time. */
  private static boolean isLooser(List<Kind.Stage> now, List<Kind.Stage> was) {
    return was.stream()
        .anyMatch(
            stage ->
                now.stream()
                    .noneMatch(
                        each ->
                            each.from().compareTo(stage.from()) == 0
                                && each.to().compareTo(stage.to()) == 0
                                && !each.atMost().isAbove(stage.atMost())));
  }

  /** A row is as strict as some original row that is no hotter and asks no more time. */
  private static boolean isHeldBy(Kind.Hold row, List<Kind.Hold> originals) {
    return originals.stream()
        .anyMatch(was -> !was.atLeast().isAbove(row.atLeast()) && !was.time().isAbove(row.time()));
  }
}

package org.flitchbook.plan;

import java.util.Comparator;
import java.util.List;
import org.flitchbook.json.Choice;
import org.flitchbook.json.Key;
import org.flitchbook.measure.Dimension;
import org.flitchbook.measure.Quantity;
import org.flitchbook.sheet.Step;
import org.flitchbook.sheet.What;

/**
 * Which limits can cover a hazard, whatever they say that they cover: {@code coverage} of {@code
 * templates/classes.json}.
 *
 * @param by a limit that fits one of these covers it
 * @param because one sentence: what covers the hazard, as {@code plan check} says it
 */
record Coverage(String covers, @Key(least = 1) List<Way> by, String because, String source) {

  /** Whether such a limit controls the hazard, at the step where it arises. */
  boolean isBy(Limit limit) {
    return by.stream()
        .anyMatch(way -> way.steps().contains(limit.step()) && way.fits(limit.kind()));
  }

  /** Whether it would, if it were for another step. */
  boolean isByKind(Kind kind) {
    return by.stream().anyMatch(way -> way.fits(kind));
  }

  /** One kind of limit, with what it judges and how loose it may be. */
  @Choice("kind")
  sealed interface Way permits AtMost, Kept, Passed, Heated, Shown, Timed {

    List<Step> steps();

    boolean fits(Kind kind);
  }

  /**
   * A figure is not above so much.
   *
   * @param atMost the loosest ceiling that still controls anything
   */
  @Choice("ceiling")
  record AtMost(
      @Key(name = "quantity", least = 1) List<Figure> figures,
      @Key(least = 1) List<Step> steps,
      @Key(dimension = Dimension.SHARE) Quantity atMost)
      implements Way {

    @Override
    public boolean fits(Kind kind) {
      return kind instanceof Kind.Ceiling ceiling
          && figures.contains(ceiling.figure())
          && !ceiling.limit().isAbove(atMost);
    }
  }

  /**
   * A temperature is kept at or below a level.
   *
   * @param atMost the warmest level that still controls anything
   */
  @Choice("holding")
  record Kept(
      @Key(format = "temperature", least = 1) List<What> what,
      @Key(least = 1) List<Step> steps,
      @Key(dimension = Dimension.TEMPERATURE) Quantity atMost)
      implements Way {

    @Override
    public boolean fits(Kind kind) {
      return kind instanceof Kind.Holding holding
          && holding.ceiling()
          && what.contains(holding.what())
          && !holding.limit().isAbove(atMost);
    }
  }

  /**
   * The time in a band, which the stages together cross without a hole; falling where {@code from}
   * is the higher.
   */
  @Choice("span")
  record Passed(
      @Key(format = "temperature", least = 1) List<What> what,
      @Key(least = 1) List<Step> steps,
      @Key(dimension = Dimension.TEMPERATURE) Quantity from,
      @Key(dimension = Dimension.TEMPERATURE) Quantity to)
      implements Way {

    @Override
    public boolean fits(Kind kind) {
      return kind instanceof Kind.Span span
          && what.contains(span.what())
          && span.stages().stream().allMatch(stage -> stage.falling() == from.isAbove(to))
          && onward().compare(reached(span.stages()), to) >= 0;
    }

    /** The later level of a fall is the lower one. */
    private Comparator<Quantity> onward() {
      Comparator<Quantity> rising = Comparator.naturalOrder();
      return from.isAbove(to) ? rising.reversed() : rising;
    }

    /** How far the stages go from the beginning of the band on. */
    private Quantity reached(List<Kind.Stage> stages) {
      Quantity level = from;
      for (Kind.Stage stage : stages.stream().sorted(byBeginning()).toList()) {
        boolean isWithoutHole = onward().compare(stage.from(), level) <= 0;
        if (isWithoutHole && onward().compare(stage.to(), level) > 0) {
          level = stage.to();
        }
      }
      return level;
    }

    private Comparator<Kind.Stage> byBeginning() {
      return Comparator.comparing(Kind.Stage::from, onward());
    }
  }

  /**
   * A temperature held for a time.
   *
   * @param atLeast no row is colder
   */
  @Choice("time-at-temperature")
  record Heated(
      @Key(format = "temperature", least = 1) List<What> what,
      @Key(least = 1) List<Step> steps,
      @Key(dimension = Dimension.TEMPERATURE) Quantity atLeast)
      implements Way {

    @Override
    public boolean fits(Kind kind) {
      return kind instanceof Kind.TimeAtTemperature held
          && what.contains(held.what())
          && held.rows().stream().noneMatch(row -> row.atLeast().isBelow(atLeast));
    }
  }

  /** A condition for a part of the step, each option of one of these. */
  @Choice("share")
  record Shown(@Key(least = 1) List<What> what, @Key(least = 1) List<Step> steps) implements Way {

    @Override
    public boolean fits(Kind kind) {
      return kind instanceof Kind.Share share
          && share.options().stream().allMatch(option -> what.contains(option.what()));
    }
  }

  /** No more than a time between two events. */
  @Choice("duration")
  record Timed(What from, What to, @Key(least = 1) List<Step> steps) implements Way {

    @Override
    public boolean fits(Kind kind) {
      return kind instanceof Kind.Length length
          && !length.atLeast()
          && length.from() == from
          && length.to() == to;
    }
  }
}

package org.flitchbook.plan;

import static org.flitchbook.message.Message.say;

import java.util.List;
import java.util.Optional;
import org.flitchbook.json.Checked;
import org.flitchbook.json.Choice;
import org.flitchbook.json.Fields;
import org.flitchbook.json.Key;
import org.flitchbook.measure.Dimension;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Ratio;
import org.flitchbook.message.Message;
import org.flitchbook.sheet.Step;
import org.flitchbook.sheet.What;

/**
 * The closed set of ways in which a limit can judge, each with its numbers as the source prints
 * them. How each is judged stands in the package {@code check}, one file a kind.
 */
public sealed interface Kind {

  /** The word in the data files. */
  default String word() {
    return getClass().getAnnotation(Choice.class).value()[0];
  }

  /** A kind that a file can state, its components under their keys. */
  @Choice("kind")
  sealed interface Stated extends Kind
      permits Bound, TimeAtTemperature, Span, Holding, Length, Cadence, Share, Presence {}

  /** A computed figure, at most or at least so much. */
  sealed interface Bound extends Stated permits Ceiling, Floor {

    Figure figure();

    Quantity limit();

    /** What the source prints for potassium nitrite beside its number for sodium nitrite. */
    Optional<Quantity> potassiumNitrite();

    default boolean ceiling() {
      return this instanceof Ceiling;
    }

    /**
     * How much sodium nitrite a part of potassium nitrite counts for; empty where the source prints
     * no number for it and their molar masses tell.
     */
    default Optional<Ratio> potassium() {
      return potassiumNitrite()
          .filter(printed -> figure() == Figure.INGOING_NITRITE && printed.value().signum() > 0)
          .map(printed -> limit().inBase().over(printed.inBase()));
    }
  }

  @Choice("ceiling")
  record Ceiling(
      @Key(name = "quantity") Figure figure,
      @Key(name = "atMost", of = "figure") Quantity limit,
      @Key(dimension = Dimension.SHARE) Optional<Quantity> potassiumNitrite)
      implements Bound {}

  @Choice("floor")
  record Floor(
      @Key(name = "quantity") Figure figure,
      @Key(name = "atLeast", of = "figure") Quantity limit,
      @Key(dimension = Dimension.SHARE) Optional<Quantity> potassiumNitrite)
      implements Bound {}

  /** One unbroken run at or above a row's temperature for the row's time; any row serves. */
  @Choice("time-at-temperature")
  record TimeAtTemperature(
      @Key(format = "temperature") What what,
      @Key(least = 1) List<Hold> rows,
      Optional<Integral> integral)
      implements Stated {}

  /**
   * The heat added up, as support beside a table and never in its place: D at a reference
   * temperature and z, such that no row of the table is made kinder, and the logs it is shown up
   * to.
   */
  record Integral(
      @Key(dimension = Dimension.TEMPERATURE) Quantity reference,
      @Key(dimension = Dimension.TIME) Quantity d,
      @Key(dimension = Dimension.TEMPERATURE) Quantity z,
      Quantity logs) {}

  /** A row of a lethality table. */
  record Hold(
      @Key(dimension = Dimension.TEMPERATURE) Quantity atLeast,
      @Key(name = "for", dimension = Dimension.TIME) Quantity time) {}

  /**
   * The time inside a band, in stages one behind the other.
   *
   * @param warmDrying the warm hours of the drying that count in each rising stage
   */
  @Choice("span")
  record Span(
      @Key(format = "temperature") What what,
      @Key(inline = true) Band band,
      @Key(name = "addWarmDrying") Optional<WarmDrying> warmDrying)
      implements Stated, Checked {

    public List<Stage> stages() {
      return band.stages();
    }

    @Override
    public void check(Fields limit) {
      if (warmDrying.isPresent() && stages().stream().allMatch(Stage::falling)) {
        limit.fault(
            "addWarmDrying",
            say("plan.drying-in-a-fall", "it in a fall"),
            say("plan.drying-in-a-rise", "it where the temperature rises"));
      }
    }
  }

  /** One stage, or several. */
  sealed interface Band permits One, Several {
    List<Stage> stages();
  }

  /** Its numbers stand beside those of the limit. */
  record One(@Key(inline = true) Stage stage) implements Band {
    @Override
    public List<Stage> stages() {
      return List.of(stage);
    }
  }

  record Several(@Key(least = 1) List<Stage> stages) implements Band {}

  /**
   * The time in drying above a level, as far as it is longer than {@code beyond}.
   *
   * @param note what this rests on, where that is not the limit's source
   */
  record WarmDrying(
      @Key(dimension = Dimension.TEMPERATURE) Quantity above,
      @Key(dimension = Dimension.TIME) Quantity beyond,
      String note) {}

  /** From one temperature to another within a time; falling where {@code from} is the higher. */
  record Stage(
      @Key(dimension = Dimension.TEMPERATURE) Quantity from,
      @Key(dimension = Dimension.TEMPERATURE) Quantity to,
      @Key(dimension = Dimension.TIME) Quantity atMost)
      implements Checked {

    public boolean falling() {
      return from.isAbove(to);
    }

    @Override
    public void check(Fields stage) {
      if (from.compareTo(to) == 0) {
        stage.fault(
            "to",
            Message.of(to),
            say("plan.another-temperature", "another temperature than \"from\""));
      }
    }
  }

  /**
   * Held at or below ({@code ceiling}) or at or above a level, read at least every so often.
   *
   * @param allow the time that it may be outside in all; 0 s where none is allowed
   */
  @Choice("holding")
  record Holding(
      @Key(format = "logged") What what,
      @Key(name = "atMost", or = "atLeast") boolean ceiling,
      @Key(name = "atMost", or = "atLeast", of = "what") Quantity limit,
      @Key(dimension = Dimension.TIME) Quantity every,
      @Key(dimension = Dimension.TIME, otherwise = "0 s") Quantity allow)
      implements Stated {}

  /** The time between two events, at least or at most so long. */
  @Choice("duration")
  record Length(
      What from,
      What to,
      @Key(name = "atLeast", or = "atMost") boolean atLeast,
      @Key(name = "atLeast", or = "atMost", dimension = Dimension.TIME) Quantity limit)
      implements Stated {}

  /** An entry at least every so often while the step runs. */
  @Choice("cadence")
  record Cadence(What what, @Key(dimension = Dimension.TIME) Quantity every) implements Stated {}

  /** A part of the cooking time under a condition; any option serves. */
  @Choice("share")
  record Share(@Key(least = 1) List<Option> options) implements Stated {}

  /**
   * One way to show humidity.
   *
   * @param condition that must hold for the share
   * @param share of the cooking time, or {@code atLeast} if that is longer
   * @param cooking the least cooking time, where the option has one
   * @param endpoint the least temperature of the lethal pair, where the option has one
   */
  record Option(
      String name,
      @Key(name = "while") Condition condition,
      @Key(dimension = Dimension.SHARE) Quantity share,
      @Key(dimension = Dimension.TIME) Optional<Quantity> atLeast,
      @Key(dimension = Dimension.TIME) Optional<Quantity> cooking,
      @Key(dimension = Dimension.TEMPERATURE) Optional<Quantity> endpoint) {

    public What what() {
      return condition.what();
    }

    /** Whether the condition is an entry that says on. */
    public boolean on() {
      return condition instanceof On;
    }

    /** The least level, where the condition is one. */
    public Optional<Quantity> level() {
      return condition instanceof Above above ? Optional.of(above.level()) : Optional.empty();
    }
  }

  /** What is measured to be so, or entered as being on. */
  sealed interface Condition permits Above, On {
    What what();
  }

  record Above(
      @Key(format = "condition") What what, @Key(name = "atLeast", of = "what") Quantity level)
      implements Condition {}

  record On(@Key(format = "switch") What what, @Key(format = "on") String is)
      implements Condition {}

  /**
   * An entry that must be there and complete.
   *
   * @param before the event before which it must have been made
   * @param with the columns that must be filled
   */
  @Choice("entry")
  record Presence(
      What what, Optional<What> before, @Key(optional = true, format = "column") List<String> with)
      implements Stated {}

  /** Every planned step is on record; implied by a product, never read from data. */
  @Choice("sequence")
  record Sequence(List<Step> steps) implements Kind {}

  /** The longest time between two steps; implied by a product, never read from data. */
  @Choice("between")
  record Between(Quantity atMost) implements Kind {}

  /** A control that the plan says is not needed; implied by a product, never read from data. */
  @Choice("exemption")
  record Exempted(String name) implements Kind {}

  /** A hazard control that a class asks for; implied by a class, never read from data. */
  @Choice("covered")
  record Covered(String covers) implements Kind {}
}

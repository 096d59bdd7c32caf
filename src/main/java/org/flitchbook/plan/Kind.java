package org.flitchbook.plan;

import java.util.List;
import java.util.Optional;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Ratio;
import org.flitchbook.sheet.Step;
import org.flitchbook.sheet.What;

/**
 * The closed set of ways in which a limit can judge, each with its numbers as the source prints
 * them. How each is judged stands in the package {@code check}, one file a kind.
 */
public sealed interface Kind {

  /** The word in the data files. */
  String word();

  /**
   * A computed figure, at most ({@code ceiling}) or at least ({@code floor}) so much.
   *
   * @param potassium how much sodium nitrite a part of potassium nitrite counts for, where the
   *     source prints a number for each; empty where their molar masses tell
   */
  record Bound(Figure figure, boolean ceiling, Quantity limit, Optional<Ratio> potassium)
      implements Kind {

    Bound with(Quantity number) {
      return new Bound(figure, ceiling, number, potassium);
    }

    @Override
    public String word() {
      return ceiling ? "ceiling" : "floor";
    }
  }

  /** One unbroken run at or above a row's temperature for the row's time; any row serves. */
  record TimeAtTemperature(What what, List<Hold> rows, Optional<Integral> integral)
      implements Kind {
    public TimeAtTemperature {
      rows = List.copyOf(rows);
    }

    @Override
    public String word() {
      return "time-at-temperature";
    }
  }

  /**
   * The heat added up, as support beside a table and never in its place: D at a reference
   * temperature and z, such that no row of the table is made kinder, and the logs it is shown up
   * to.
   */
  record Integral(Quantity reference, Quantity d, Quantity z, Quantity logs) {}

  /** A row of a lethality table. */
  record Hold(Quantity atLeast, Quantity time) {}

  /**
   * The time inside a band, in stages one behind the other.
   *
   * @param warmDrying the warm hours of the drying that count in each rising stage
   */
  record Span(What what, List<Stage> stages, Optional<WarmDrying> warmDrying) implements Kind {
    public Span {
      stages = List.copyOf(stages);
    }

    @Override
    public String word() {
      return "span";
    }
  }

  /**
   * The time in drying above a level, as far as it is longer than {@code beyond}.
   *
   * @param note what this rests on, where that is not the limit's source
   */
  record WarmDrying(Quantity above, Quantity beyond, String note) {}

  /** From one temperature to another within a time; falling where {@code from} is the higher. */
  record Stage(Quantity from, Quantity to, Quantity atMost) {
    public boolean falling() {
      return from.isAbove(to);
    }
  }

  /**
   * Held at or below ({@code ceiling}) or at or above a level, read at least every so often.
   *
   * @param allow the time that it may be outside in all; 0 s where none is allowed
   */
  record Holding(What what, boolean ceiling, Quantity limit, Quantity every, Quantity allow)
      implements Kind {
    @Override
    public String word() {
      return "holding";
    }
  }

  /** The time between two events, at least or at most so long. */
  record Length(What from, What to, boolean atLeast, Quantity limit) implements Kind {
    @Override
    public String word() {
      return "duration";
    }
  }

  /** An entry at least every so often while the step runs. */
  record Cadence(What what, Quantity every) implements Kind {
    @Override
    public String word() {
      return "cadence";
    }
  }

  /** A part of the cooking time under a condition; any option serves. */
  record Share(List<Option> options) implements Kind {
    public Share {
      options = List.copyOf(options);
    }

    @Override
    public String word() {
      return "share";
    }
  }

  /**
   * One way to show humidity.
   *
   * @param on the condition is an on/off entry; else a level of at least {@code level}
   * @param share of the cooking time, or {@code atLeast} if that is longer
   * @param cooking the least cooking time, where the option has one
   * @param endpoint the least temperature of the lethal pair, where the option has one
   */
  record Option(
      String name,
      What what,
      boolean on,
      Optional<Quantity> level,
      Quantity share,
      Optional<Quantity> atLeast,
      Optional<Quantity> cooking,
      Optional<Quantity> endpoint) {}

  /**
   * An entry that must be there and complete.
   *
   * @param before the event before which it must have been made
   * @param with the columns that must be filled
   */
  record Presence(What what, Optional<What> before, List<String> with) implements Kind {
    public Presence {
      with = List.copyOf(with);
    }

    @Override
    public String word() {
      return "entry";
    }
  }

  /** Every planned step is on record; implied by a product, never read from data. */
  record Sequence(List<Step> steps) implements Kind {
    public Sequence {
      steps = List.copyOf(steps);
    }

    @Override
    public String word() {
      return "sequence";
    }
  }

  /** The longest time between two steps; implied by a product, never read from data. */
  record Between(Quantity atMost) implements Kind {
    @Override
    public String word() {
      return "between";
    }
  }

  /** A control that the plan says is not needed; implied by a product, never read from data. */
  record Exempted(String name) implements Kind {
    @Override
    public String word() {
      return "exemption";
    }
  }

  /** A hazard control that a class asks for; implied by a class, never read from data. */
  record Covered(String covers) implements Kind {
    @Override
    public String word() {
      return "covered";
    }
  }
}

package org.flitchbook.practice;

import static org.flitchbook.message.Message.say;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import org.flitchbook.input.SourceFile;
import org.flitchbook.json.Binder;
import org.flitchbook.json.Key;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Ratio;

/**
 * The numbers of {@code templates/practice.json}, which says of each why it is so and where it is
 * from. None is a limit or belongs to a rule for dirty data; each decides a verdict, a doubt or a
 * remark all the same.
 *
 * @param daysAhead so many days after that of its folder a log's reading may be
 * @param daysApart so many days before and after that of its folder a row of a sheet may be; empty
 *     where records of earlier versions don't know it
 * @param nearMiss a time with less than this share of its limit to spare is a near miss
 * @param airBeside a reading of the air counts beside one of the core that is no further off
 * @param handover when two probes of a core are one curve; empty where they never are, as before
 *     there was such a number
 * @param leapEdge at the ends of a leap, a step of less than this share of it hardly belongs to it
 */
public record Practice(
    Gap gap,
    SteadyClock steadyClock,
    SetBack setBack,
    int daysAhead,
    Optional<Integer> daysApart,
    Ratio nearMiss,
    Duration airBeside,
    Ratio leapEdge,
    Optional<Handover> handover,
    Teaspoon teaspoon,
    CureShares cureShares,
    DayCure dayCure) {

  /** Where it stands among the templates. */
  public static final String FILE = "templates/practice.json";

  /**
   * When two readings of a log lie too far apart to know what was between them: by more than so
   * many intervals and by more than that time.
   *
   * @param intervals more than 0
   * @param fewReadings of fewer nobody can tell what interval is usual, so that any two further
   *     apart than the time have a gap
   */
  public record Gap(
      @Key(format = "count") int intervals, Duration time, @Key(format = "count") int fewReadings) {

    /** The longest time between two readings that is no gap, in ms. */
    public long longestStep(long interval) {
      return Math.max(intervals * interval, time.toMillis());
    }

    /** The longest interval of which so many are no gap yet, in ms. */
    public long shortInterval() {
      return time.toMillis() / intervals;
    }
  }

  /**
   * When the rows of a log are steady enough to tell the two hours of an autumn clock change apart.
   *
   * @param fewestSteps so many steps forward show what is usual, fewer don't
   * @param jitter a usual step is off by no more than this, or than the share of the usual step,
   *     whichever is longer
   */
  public record SteadyClock(
      @Key(name = "steps", format = "count") int fewestSteps, Duration jitter, Ratio share) {

    /** By how much a usual step may be off, in ms. */
    public long tolerance(long usual) {
      long part = Ratio.of(usual).times(share).floor().longValueExact();
      return Math.max(jitter.toMillis(), part);
    }
  }

  /** What a clock that goes back by so much may have been: only what is proposed depends on it. */
  public record SetBack(
      Duration hourFrom, Duration hourTo, Duration halfDayFrom, Duration halfDayTo) {

    /** Between the two, neither included. */
    public boolean isHour(long millis) {
      return millis > hourFrom.toMillis() && millis < hourTo.toMillis();
    }

    /** Between the two, neither included. */
    public boolean isHalfDay(long millis) {
      return millis > halfDayFrom.toMillis() && millis < halfDayTo.toMillis();
    }
  }

  /**
   * When a probe that is put into a piece goes on for one that is taken out.
   *
   * @param within so long after the last reading of the one, or before it, the other reads first
   * @param slope how the core changes where they meet is taken from so long before and after
   */
  public record Handover(Duration within, Duration slope) {}

  /** What a level teaspoon of the same curing salt was said or found to weigh. */
  public record Teaspoon(@Key(format = "mass") Quantity from, @Key(format = "mass") Quantity to) {}

  /** What the shares of an ingredient may come to together, where its label states them all. */
  public record CureShares(
      @Key(format = "share") Quantity least, @Key(format = "share") Quantity most) {

    /** Both ends included. */
    public boolean includes(Quantity share) {
      return !share.isBelow(least) && !share.isAbove(most);
    }
  }

  /** How much nitrite a cure for a day's use usually holds, sodium or potassium nitrite. */
  public record DayCure(@Key(format = "share") Quantity from, @Key(format = "share") Quantity to) {

    /** Both ends included. */
    public boolean includes(Quantity share) {
      return !share.isBelow(from) && !share.isAbove(to);
    }
  }

  /** Takes it out of the templates, the book's own in place of the tool's. */
  public static Binder.Bound<Practice> read(List<SourceFile> templates) {
    return PracticeFile.BINDER
        .read(
            templates,
            FILE,
            PracticeFile.class,
            say("practice.missing.found", "no such file"),
            say("practice.missing.expected", "the numbers of common practice"))
        .map(PracticeFile::practice);
  }
}

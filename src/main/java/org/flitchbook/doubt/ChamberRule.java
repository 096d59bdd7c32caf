package org.flitchbook.doubt;

import static org.flitchbook.message.Message.say;

import java.time.Duration;
import java.util.LongSummaryStatistics;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.flitchbook.json.Choice;
import org.flitchbook.lot.Track;
import org.flitchbook.measure.Level;
import org.flitchbook.message.Message;
import org.flitchbook.reading.Entry;
import org.flitchbook.sheet.Step;
import org.flitchbook.sheet.What;
import org.flitchbook.sums.Shift;

/** A reading of the smoker's air by hand, beside what else was read of it around that time. */
sealed interface ChamberRule extends Finder
    permits ChamberRule.HandAndLog, ChamberRule.WetBulbWarmer {

  @Override
  default Stream<Doubt> find(Subject subject) {
    return subject.rows().filter(this::isAbout).flatMap(entry -> look(subject, entry).stream());
  }

  private Optional<Doubt> look(Subject subject, Entry entry) {
    LongSummaryStatistics read =
        subject.lot().tracks(What.CHAMBER_TEMPERATURE, Step.SMOKE).stream()
            .flatMapToLong(track -> around(track, entry))
            .summaryStatistics();
    return read.getCount() == 0
        ? Optional.empty()
        : beyond(Level.of(entry.amount()), read).map(beside -> doubt(subject, entry, beside));
  }

  private LongStream around(Track track, Entry entry) {
    long time = entry.time().earliest().toEpochMilli();
    return IntStream.range(0, track.size())
        .filter(i -> Math.abs(track.earliest(i) - time) <= near().toMillis())
        .filter(i -> isComparedWith(track, i) && track.location(i).equals(entry.item()))
        .mapToLong(i -> track.level(i, Shift.AS_WRITTEN));
  }

  private Doubt doubt(Subject subject, Entry entry, long beside) {
    Message found =
        say(
            "doubt.chamber.found",
            "{0} of {1}, beside {2} of {3}",
            entry.what(),
            entry.shown(),
            What.CHAMBER_TEMPERATURE,
            subject.shown(beside));
    return new Doubt(entry.place().column("value"), found, expected(), remedy());
  }

  /** Readings so near in time are compared. */
  Duration near();

  /** Whether the rule looks at an entry. */
  boolean isAbout(Entry entry);

  /** Whether it compares it with a reading of the chamber. */
  boolean isComparedWith(Track chamber, int index);

  /**
   * The level of the chamber that one by hand is too far from.
   *
   * @return empty where it is not
   */
  Optional<Long> beyond(long level, LongSummaryStatistics read);

  /** What could have been. */
  Message expected();

  /** What to do. */
  Message remedy();

  /**
   * The chamber by hand, far from all that its log read around that time.
   *
   * @param above the two are further apart than this
   * @param near readings so near in time are compared; an open lid is over by then
   */
  @Choice("chamber by hand and log disagree")
  record HandAndLog(Degrees above, Duration near) implements ChamberRule {

    @Override
    public boolean isAbout(Entry entry) {
      return entry.is(What.CHAMBER_TEMPERATURE);
    }

    @Override
    public boolean isComparedWith(Track chamber, int index) {
      return !chamber.byHand(index);
    }

    @Override
    public Optional<Long> beyond(long level, LongSummaryStatistics read) {
      long nearest = Math.max(read.getMin(), Math.min(level, read.getMax()));
      return Optional.of(nearest).filter(log -> Math.abs(level - log) > above.difference());
    }

    @Override
    public Message expected() {
      return say("doubt.chamber.apart", "at most {0} apart", above);
    }

    @Override
    public Message remedy() {
      return say(
          "do.chamber-by-hand-and-log-disagree",
          "Find out which of the two is wrong: the place, the unit or the instrument.");
    }
  }

  /**
   * A wet bulb warmer than the air around it, which it can only be cooler than.
   *
   * @param above it is warmer by more than this
   * @param near readings so near in time are compared
   */
  @Choice("wet bulb warmer than its air")
  record WetBulbWarmer(Degrees above, Duration near) implements ChamberRule {

    @Override
    public boolean isAbout(Entry entry) {
      return entry.is(What.WET_BULB_TEMPERATURE);
    }

    @Override
    public boolean isComparedWith(Track chamber, int index) {
      return true;
    }

    @Override
    public Optional<Long> beyond(long level, LongSummaryStatistics read) {
      return Optional.of(read.getMax()).filter(air -> level - air > above.difference());
    }

    @Override
    public Message expected() {
      return say("doubt.chamber.wet", "a wet bulb no warmer than the air");
    }

    @Override
    public Message remedy() {
      return say(
          "do.wet-bulb-warmer-than-its-air",
          "Look at the wick and at which of the two sensors was read.");
    }
  }
}

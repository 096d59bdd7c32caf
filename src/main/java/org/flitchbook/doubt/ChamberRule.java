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

/** The smoker's air beside another reading of it. */
sealed interface ChamberRule extends Finder
    permits ChamberRule.HandAndLog, ChamberRule.WetBulbWarmer {

  /** What was read of the chamber in a place around a time, all instruments together. */
  private static LongSummaryStatistics around(
      Subject subject, String place, long time, Duration near, boolean logged) {
    return subject.lot().tracks(What.CHAMBER_TEMPERATURE, Step.SMOKE).stream()
        .flatMapToLong(track -> levels(track, place, time, near.toMillis(), logged))
        .summaryStatistics();
  }

  private static LongStream levels(
      Track track, String place, long time, long near, boolean logged) {
    return IntStream.range(0, track.size())
        .filter(i -> Math.abs(track.earliest(i) - time) <= near)
        .filter(i -> !(logged && track.byHand(i)) && track.location(i).equals(place))
        .mapToLong(i -> track.level(i, Shift.AS_WRITTEN));
  }

  private static Doubt doubt(
      Subject subject, Entry entry, Message expected, long beside, Message remedy) {
    return new Doubt(
        entry.place().column("value"),
        say(
            "doubt.chamber.found",
            "{0} of {1}, beside {2} of {3}",
            entry.what(),
            entry.shown(),
            What.CHAMBER_TEMPERATURE,
            Level.quantity(beside, subject.plan().establishment().temperature())),
        expected,
        remedy);
  }

  /**
   * The chamber by hand, far from all that its log read around that time.
   *
   * @param above the two are further apart than this
   * @param near readings so near in time are compared; an open lid is over by then
   */
  @Choice("chamber by hand and log disagree")
  record HandAndLog(Degrees above, Duration near) implements ChamberRule {

    @Override
    public Stream<Doubt> find(Subject subject) {
      return subject
          .rows()
          .filter(entry -> entry.is(What.CHAMBER_TEMPERATURE))
          .flatMap(entry -> find(subject, entry).stream());
    }

    private Optional<Doubt> find(Subject subject, Entry entry) {
      long level = Level.of(entry.amount());
      LongSummaryStatistics logged =
          around(subject, entry.item(), entry.time().earliest().toEpochMilli(), near, true);
      long nearest = Math.max(logged.getMin(), Math.min(level, logged.getMax()));
      return logged.getCount() > 0 && Math.abs(level - nearest) > above.difference()
          ? Optional.of(doubt(subject, entry, expected(), nearest, remedy()))
          : Optional.empty();
    }

    private Message expected() {
      return say("doubt.chamber.apart", "at most {0} apart", above);
    }

    private static Message remedy() {
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
    public Stream<Doubt> find(Subject subject) {
      return subject
          .rows()
          .filter(entry -> entry.is(What.WET_BULB_TEMPERATURE))
          .flatMap(entry -> find(subject, entry).stream());
    }

    private Optional<Doubt> find(Subject subject, Entry entry) {
      long level = Level.of(entry.amount());
      LongSummaryStatistics read =
          around(subject, entry.item(), entry.time().earliest().toEpochMilli(), near, false);
      return read.getCount() > 0 && level - read.getMax() > above.difference()
          ? Optional.of(doubt(subject, entry, expected(), read.getMax(), remedy()))
          : Optional.empty();
    }

    private static Message expected() {
      return say("doubt.chamber.wet", "a wet bulb no warmer than the air");
    }

    private static Message remedy() {
      return say(
          "do.wet-bulb-warmer-than-its-air",
          "Look at the wick and at which of the two sensors was read.");
    }
  }
}

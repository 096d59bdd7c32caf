package org.flitchbook.doubt;

import static org.flitchbook.message.Message.say;

import java.time.Duration;
import java.util.OptionalInt;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.flitchbook.json.Choice;
import org.flitchbook.json.Key;
import org.flitchbook.lot.Lot;
import org.flitchbook.measure.Dimension;
import org.flitchbook.measure.Level;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Unit;
import org.flitchbook.reading.Entry;
import org.flitchbook.sheet.Step;

/** Readings by hand, held to the physics that the readings of a log are held to. */
sealed interface HandRule extends Finder
    permits HandRule.Impossible, HandRule.OtherUnit, HandRule.Leaping {

  /**
   * A core, an air or a humidity that nothing in the house can have.
   *
   * @param coreBelow no core is below this from the smoke to the end of the chill
   * @param coreAbove no core is above this
   * @param airAbove no air of a smoker is above this, dry bulb or wet
   * @param humidityAbove no air is more humid than this
   */
  @Choice("impossible hand reading")
  record Impossible(
      Degrees coreBelow,
      Degrees coreAbove,
      Degrees airAbove,
      @Key(dimension = Dimension.SHARE) Quantity humidityAbove)
      implements HandRule {

    @Override
    public Stream<Doubt> find(Subject subject) {
      return HandReading.read(
              subject.lot().tracks().stream()
                  .filter(each -> each.step() != Step.RELEASE)
                  .map(Lot.StepTrack::track))
          .filter(this::isImpossible)
          .map(this::doubt);
    }

    private boolean isImpossible(Entry entry) {
      long level = Level.of(entry.amount());
      return switch (entry.what()) {
        case INTERNAL_TEMPERATURE -> level < coreBelow.level() || level > coreAbove.level();
        case CHAMBER_TEMPERATURE, WET_BULB_TEMPERATURE -> level > airAbove.level();
        case HUMIDITY -> entry.amount().isAbove(humidityAbove);
        default -> false;
      };
    }

    private Doubt doubt(Entry entry) {
      return new Doubt(
          entry.place().column("value"),
          say("doubt.hand.found", "{0}: {1} by hand", entry.what(), entry.shown()),
          switch (entry.what()) {
            case INTERNAL_TEMPERATURE ->
                say("doubt.impossible.core", "a core from {0} to {1}", coreBelow, coreAbove);
            case HUMIDITY -> say("words.at-most", "at most {0}", humidityAbove.asWritten());
            default -> say("doubt.impossible.air", "an air of at most {0}", airAbove);
          },
          say("do.impossible-hand-reading", "Correct the number or its unit with a new row."));
    }
  }

  /**
   * A core that is written in the other unit: in °C too warm for cold meat that was just loaded; or
   * a number that lies where the readings around it are only once it is read in the other unit.
   *
   * @param warm no core in °C is above this, at most {@code atLoad} after the lot went in
   * @param apart as written it is further than this from what was read before and after it
   * @param rate where nothing was read after it, it changed by more than this in each minute
   */
  @Choice("hand reading in the other unit")
  record OtherUnit(Degrees warm, Duration atLoad, Degrees apart, Degrees rate) implements HandRule {

    @Override
    public Stream<Doubt> find(Subject subject) {
      return HandReading.inDoubt(
              subject, each -> isWarmAtLoad(subject, each) || (each.stands() && fits(each)))
          .map(HandReading::entry)
          .map(OtherUnit::doubt);
    }

    private boolean isWarmAtLoad(Subject subject, HandReading reading) {
      return reading.entry().amount().unit() == Unit.CELSIUS
          && reading.level() > warm.level()
          && subject
              .into(Step.SMOKE)
              .filter(loaded -> reading.at() - loaded <= atLoad.toMillis())
              .isPresent();
    }

    private boolean fits(HandReading reading) {
      OptionalInt before = reading.before();
      OptionalInt after = reading.after();
      boolean isBetween =
          before.isPresent()
              && after.isPresent()
              && isBetween(reading, before.getAsInt(), after.getAsInt());
      return isBetween || (before.isPresent() && isNearer(reading, before.getAsInt()));
    }

    /** In the other unit it lies between the two, and as written well outside of them. */
    private boolean isBetween(HandReading reading, int before, int after) {
      long low = Math.min(reading.level(before), reading.level(after));
      long high = Math.max(reading.level(before), reading.level(after));
      long other = Level.of(inOther(reading.entry()));
      boolean isOutside =
          reading.level() < low - apart.difference() || reading.level() > high + apart.difference();
      return isOutside && other >= low && other <= high;
    }

    /** As written it came faster than a core can, and in the other unit not half as far. */
    private boolean isNearer(HandReading reading, int before) {
      long rise = Math.abs(reading.level() - reading.level(before));
      long other = Math.abs(Level.of(inOther(reading.entry())) - reading.level(before));
      return rise > rate.difference() * reading.minutesTo(before)
          && rise > apart.difference()
          && 2 * other < rise;
    }

    private static Quantity inOther(Entry entry) {
      Unit written = entry.amount().unit();
      return new Quantity(
          entry.amount().value(), written == Unit.CELSIUS ? Unit.FAHRENHEIT : Unit.CELSIUS);
    }

    private static Doubt doubt(Entry entry) {
      return new Doubt(
          entry.place().column("unit"),
          say("doubt.hand.found", "{0}: {1} by hand", entry.what(), entry.shown()),
          say(
              "doubt.hand.other-unit",
              "a core near those read before and after it; {0} would be",
              inOther(entry).shown()),
          say(
              "do.hand-reading-in-the-other-unit",
              "Look at the unit that the thermometer shows, and correct the row."));
    }
  }

  /**
   * A core that changes from one reading by hand to the next, or from the log into its gap, faster
   * than meat can; or that is well warmer than before while it chills. Another piece or another
   * place of it, where both are written, is another core.
   *
   * @param step it may change by this at once, since the thermometer finds no spot twice
   * @param rate and by this in each minute
   * @param after so long after the chill began it rises by no more than the step
   */
  @Choice("hand reading leaps")
  record Leaping(Degrees step, Degrees rate, Duration after) implements HandRule {

    @Override
    public Stream<Doubt> find(Subject subject) {
      return HandReading.inDoubt(
              subject, each -> each.stands() && leap(subject, each).findFirst().isPresent())
          .map(each -> doubt(subject, each, leap(subject, each).findFirst().getAsInt()));
    }

    /** From what it leaps, or to what: to another by hand it is that one which leaps. */
    private IntStream leap(Subject subject, HandReading reading) {
      IntStream after = reading.after().stream().filter(i -> !reading.core().byHand(i));
      return IntStream.concat(reading.before().stream(), after)
          .filter(other -> isLeap(subject, reading, other));
    }

    private boolean isLeap(Subject subject, HandReading reading, int other) {
      long apart = reading.level() - reading.level(other);
      return Math.abs(apart) > step.difference()
          && (Math.abs(apart) > rate.difference() * reading.minutesTo(other)
              || isWarmer(subject, reading, other, apart));
    }

    private boolean isWarmer(Subject subject, HandReading reading, int other, long apart) {
      boolean rises = other < reading.index() == apart > 0;
      return rises
          && subject
              .into(Step.CHILL)
              .map(into -> into + after.toMillis())
              .filter(from -> reading.core().earliest(Math.min(other, reading.index())) >= from)
              .isPresent();
    }

    private Doubt doubt(Subject subject, HandReading reading, int other) {
      int first = Math.min(other, reading.index());
      int last = Math.max(other, reading.index());
      return new Doubt(
          reading.entry().place().column("value"),
          say(
              "doubt.hand.leaps",
              "{0} by hand: from {1} to {2}",
              reading.entry().what(),
              subject.said(reading.core(), first),
              subject.said(reading.core(), last)),
          say("doubt.moved.expected", "a core that changes by less than {0} a minute", rate),
          say(
              "do.hand-reading-leaps",
              "Correct the row that is wrong; or name the piece and the place that each reading is"
                  + " of."));
    }
  }
}

package org.flitchbook.doubt;

import static org.flitchbook.message.Message.say;

import java.util.stream.Stream;
import org.flitchbook.json.Choice;
import org.flitchbook.json.Key;
import org.flitchbook.measure.Dimension;
import org.flitchbook.measure.Level;
import org.flitchbook.measure.Quantity;
import org.flitchbook.message.Message;
import org.flitchbook.sheet.What;

/** Levels of a log that can't have been; they are left out. */
sealed interface ImpossibleRule extends ExcludingRule
    permits ImpossibleRule.CoreOrSmoker, ImpossibleRule.OfPlace {

  @Override
  default Stream<Doubt> find(Subject subject) {
    return subject.logs().stream().flatMap(this::find);
  }

  private Stream<Doubt> find(ProbeLog log) {
    What what = log.track().what();
    return log.runsOutside(least(what), most(what))
        .map(run -> log.noReading(run, found(log, run), expected(what), remedy()));
  }

  private static Message found(ProbeLog log, Run run) {
    return run.size() > 1
        ? log.said(run)
        : say("doubt.reading", "{0}: {1}", log.probe(), log.said(run.first()));
  }

  /** As a level; nothing below it can have been. */
  long least(What what);

  /** As a level; nothing above it can have been. */
  long most(What what);

  /** What can have been. */
  Message expected(What what);

  /** What to do. */
  Message remedy();

  /**
   * A core or the air of a smoker that can't have been so cold or hot.
   *
   * @param coreBelow no core is below this
   * @param coreAbove no core is above this
   * @param airAbove no air of a smoker is above this
   */
  @Choice("impossible value")
  record CoreOrSmoker(Degrees coreBelow, Degrees coreAbove, Degrees airAbove)
      implements ImpossibleRule {

    @Override
    public long least(What what) {
      return what == What.INTERNAL_TEMPERATURE ? coreBelow.level() : Long.MIN_VALUE;
    }

    @Override
    public long most(What what) {
      return switch (what) {
        case INTERNAL_TEMPERATURE -> coreAbove.level();
        case CHAMBER_TEMPERATURE -> airAbove.level();
        default -> Long.MAX_VALUE;
      };
    }

    @Override
    public Message expected(What what) {
      return what == What.INTERNAL_TEMPERATURE
          ? say("doubt.impossible.core", "a core from {0} to {1}", coreBelow, coreAbove)
          : say("doubt.impossible.air", "an air of at most {0}", airAbove);
    }

    @Override
    public Message remedy() {
      return say(
          "do.impossible-value", "Say where the probe was, and name other evidence for the core.");
    }
  }

  /**
   * The air of a place, its water or its humidity, that can't have been so low or high. A fridge is
   * never too warm to be believed.
   *
   * @param airBelow no air of a fridge, a freezer or a smoker is below this, dry bulb or wet
   * @param wetBulbAbove no wet bulb is above this
   * @param waterBelow no water that something lies in is below this
   * @param humidityAbove no sensor reads moist air as more humid than this; none reads below 0
   */
  @Choice("impossible air or water")
  record OfPlace(
      Degrees airBelow,
      Degrees wetBulbAbove,
      Degrees waterBelow,
      @Key(dimension = Dimension.SHARE) Quantity humidityAbove)
      implements ImpossibleRule {

    @Override
    public long least(What what) {
      return switch (what) {
        case INTERNAL_TEMPERATURE -> Long.MIN_VALUE;
        case WATER_TEMPERATURE -> waterBelow.level();
        case HUMIDITY -> 0;
        default -> airBelow.level();
      };
    }

    @Override
    public long most(What what) {
      return switch (what) {
        case WET_BULB_TEMPERATURE -> wetBulbAbove.level();
        case HUMIDITY -> Level.of(humidityAbove);
        default -> Long.MAX_VALUE;
      };
    }

    @Override
    public Message expected(What what) {
      return switch (what) {
        case WATER_TEMPERATURE ->
            say("doubt.impossible.water", "water of at least {0}", waterBelow);
        case HUMIDITY -> say("doubt.impossible.humidity", "0 to {0}", humidityAbove.asWritten());
        case WET_BULB_TEMPERATURE ->
            say("doubt.impossible.wet-bulb", "a wet bulb from {0} to {1}", airBelow, wetBulbAbove);
        default -> say("doubt.impossible.cold-air", "an air of at least {0}", airBelow);
      };
    }

    @Override
    public Message remedy() {
      return say(
          "do.impossible-air-or-water",
          "Look at the sensor and its plug, and name other readings of the place.");
    }
  }
}

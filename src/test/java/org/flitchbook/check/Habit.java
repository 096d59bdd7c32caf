package org.flitchbook.check;

import java.util.EnumSet;
import java.util.Set;
import java.util.SplittableRandom;

/** A way of working that is honest, and that a rule for dirty data may take for a fault. */
enum Habit {
  TEN_SECONDS("a log every 10 seconds", Group.LOG),
  FIVE_MINUTES("a log every 5 minutes", Group.LOG),
  CELSIUS("a log in °C", Group.LOG),
  WHOLE_DEGREES("a log in whole degrees", Group.LOG),
  TO_THE_MINUTE("a log without seconds", Group.LOG),
  AIR_MOVES_ALONG("the probe in the air goes from the smoker into the fridge", Group.LOG),
  LATE_START("the log begins 15 to 25 minutes after the load", Group.LOG),
  PROBE_DRAWN("the probe is drawn before the log is stopped", Group.LOG),
  BATTERY("a gap of 6 to 14 minutes in the log", Group.LOG),
  TWO_LOGGERS("one logger in the smoker, another one in the fridge", Group.LOG),
  ONE_PROBE_FOR_TWO("one probe for two lots", Group.LOG),
  HAND_ONLY("readings by hand only", Group.HAND),
  COLD_SMOKE("two to three hours of cold smoke, then heat", Group.ANY),
  BASTED("the smoker is opened to baste", Group.ANY),
  TWO_LOTS("two lots of one day in one smoker", Group.ANY),
  TWO_SMOKERS("two smokers", Group.ANY),
  PIECES("several pieces, each with its own probe", Group.ANY),
  OVERNIGHT("smoked in the evening, chilled overnight", Group.NIGHT),
  AUTUMN("the night on which the clock goes back", Group.NIGHT),
  SPRING("the night on which the clock goes forward", Group.NIGHT),
  SECOND_RUN("a second run in the same smoker", Group.ANY),
  MOVED("moved to the other fridge during the cure", Group.ANY),
  ROUNDS("every fridge is read each day, whatever lies in it", Group.ANY),
  FRIDGE_LOG("a log of the curing fridge", Group.ANY),
  SLICED_NEXT_DAY("sliced and packed on the next day", Group.ANY),
  POUNDS("pounds and ounces", Group.ANY),
  RIND_ON("weighed with the rind on, and the rind by itself", Group.ANY),
  GLAZED("glazed", Group.ANY),
  LATE_ENTRIES("late entries with a reason", Group.ANY),
  CORRECTED("an entry corrected with a reason", Group.ANY),
  NIGHT_IN_ITS_DAY(
      "what was written after midnight lies in the folder of the day before", Group.ANY);

  private enum Group {
    LOG,
    HAND,
    NIGHT,
    ANY
  }

  private final String told;
  private final Group group;

  Habit(String told, Group group) {
    this.told = told;
    this.group = group;
  }

  /** As a row of the table calls it. */
  String told() {
    return told;
  }

  /** One that is given, and each other that goes with it by a chance of one in eight. */
  static Set<Habit> some(int given, SplittableRandom random) {
    EnumSet<Habit> some = EnumSet.of(values()[given % values().length]);
    for (Habit each : values()) {
      if (random.nextInt(8) == 0 && some.stream().allMatch(each::goesWith)) {
        some.add(each);
      }
    }
    return some;
  }

  private boolean goesWith(Habit other) {
    boolean logged = group == Group.LOG || other.group == Group.LOG;
    boolean byHand = group == Group.HAND || other.group == Group.HAND;
    boolean bothNight = group == Group.NIGHT && other.group == Group.NIGHT;
    return !(logged && byHand) && !bothNight && !excludes(other) && !other.excludes(this);
  }

  /** What can't be at once, such as two intervals of one log. */
  private boolean excludes(Habit other) {
    return switch (this) {
      case TEN_SECONDS -> other == FIVE_MINUTES || other == TO_THE_MINUTE;
      case ONE_PROBE_FOR_TWO -> Set.of(TWO_LOTS, TWO_SMOKERS, PIECES, TWO_LOGGERS).contains(other);
      case TWO_SMOKERS -> other == TWO_LOTS || other == TWO_LOGGERS;
      case HAND_ONLY -> other == PIECES;
      case SECOND_RUN -> other.group == Group.NIGHT || other == TWO_SMOKERS || other == TWO_LOGGERS;
      case WHOLE_DEGREES -> other == CELSIUS || other == TWO_SMOKERS || other == SECOND_RUN;
      case FRIDGE_LOG -> other == MOVED;
      default -> false;
    };
  }
}

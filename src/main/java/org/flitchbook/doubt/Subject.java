package org.flitchbook.doubt;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import org.flitchbook.lot.Lot;
import org.flitchbook.lot.Register;
import org.flitchbook.measure.Level;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Unit;
import org.flitchbook.plan.Plan;
import org.flitchbook.sheet.What;

/** The lot that is looked at, with the plan and the checks of its instruments. */
record Subject(Plan plan, Register register, Lot lot) {

  /** A fixed wording in the language of the plan. */
  String say(String key, Object... values) {
    return plan.words().say(key, values);
  }

  String what(What what) {
    return plan.words().word("what", what.word());
  }

  /** A time of day in the plan's zone, as a maker reads it off the wall. */
  String clock(long millis) {
    ZoneId zone = plan.establishment().zone();
    return Instant.ofEpochMilli(millis).atZone(zone).toLocalTime().toString();
  }

  /** As people say it: {@code 45 min}, {@code 6 h}, {@code 7 d}; cut, not rounded. */
  static String length(Duration length) {
    if (length.toDays() >= 2) {
      return length.toDays() + " d";
    }
    return length.toHours() >= 2 ? length.toHours() + " h" : length.toMinutes() + " min";
  }

  /** The unit in which the establishment reads temperatures. */
  Unit temperature() {
    return plan.establishment().temperature();
  }

  String shown(long level) {
    return Level.quantity(level, temperature()).shown();
  }

  String difference(long levels) {
    Quantity difference = Level.difference(levels, temperature());
    return new Quantity(difference.value(), temperature()).shown();
  }
}

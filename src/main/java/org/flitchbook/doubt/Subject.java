package org.flitchbook.doubt;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import org.flitchbook.input.Fault;
import org.flitchbook.input.Stretch;
import org.flitchbook.lot.Lot;
import org.flitchbook.lot.Register;
import org.flitchbook.lot.Track;
import org.flitchbook.measure.Level;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Unit;
import org.flitchbook.plan.Plan;
import org.flitchbook.sheet.Step;
import org.flitchbook.sheet.What;
import org.flitchbook.sums.Shift;

/** The lot that is looked at, with the plan, the rules and the checks of its instruments. */
record Subject(Plan plan, List<Rule> rules, Register register, Lot lot) {

  Optional<Rule> rule(String name) {
    return rules.stream().filter(rule -> rule.name().equals(name)).findFirst();
  }

  /** The same with a lot of which some readings were left out. */
  Subject of(Lot other) {
    return new Subject(plan, rules, register, other);
  }

  /** A fixed wording in the language of the plan. */
  String say(String id, String english, Object... values) {
    return plan.words().say(id, english, values);
  }

  String probe(Track track) {
    return plan.words().word("probe", track.called());
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

  /** The readings of the core, the logs' and those by hand. */
  List<Track> coreTracks() {
    return lot.tracks(What.INTERNAL_TEMPERATURE, Step.SMOKE);
  }

  /** The probes of the core whose readings were logged. */
  List<Log> cores() {
    return coreTracks().stream().filter(track -> track.interval() > 0).map(Log::new).toList();
  }

  /** When the lot went into a step, as written; empty where nobody wrote it. */
  OptionalLong into(Step step) {
    return lot.stay(step).stream()
        .mapToLong(stay -> stay.into().time().earliest().toEpochMilli())
        .findFirst();
  }

  /** When a step ended, at the latest; empty while it runs. */
  OptionalLong endOf(Step step) {
    return lot.end(step).stream().mapToLong(end -> end.latest().toEpochMilli()).findFirst();
  }

  /** A fault about a time in which a log was silent; hand readings alone have no such time. */
  Fault silence(Fault fault, Track track, long from, long until) {
    return track.interval() == 0
        ? fault
        : fault.over(
            new Stretch(
                track.origin(),
                Instant.ofEpochMilli(from),
                Instant.ofEpochMilli(Math.max(from, until)),
                Stretch.Standing.SILENCE));
  }

  /** {@code 139.3 °F at 13:00}. */
  String told(Log log, int index) {
    return say("doubt.value-at", "{0} at {1}", shown(log.level(index)), clock(log.at(index)));
  }

  String told(Track track, int index) {
    return say(
        "doubt.value-at",
        "{0} at {1}",
        shown(track.level(index, Shift.AS_WRITTEN)),
        clock(track.earliest(index)));
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

package org.flitchbook.doubt;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.flitchbook.lot.Stay;
import org.flitchbook.measure.Dimension;
import org.flitchbook.reading.Entry;
import org.flitchbook.reading.Moment;
import org.flitchbook.reading.Series;
import org.flitchbook.sheet.Step;

/**
 * An event that somebody wrote down, and where a log shows it. Meat does not answer at once, so it
 * says only between which bounds the log's clock is off.
 *
 * @param told what the log shows and what was written, with both times
 * @param least how far the log's clock is ahead at the least, in milliseconds; below 0 it is behind
 * @param most how far it is ahead at the most
 */
record Anchor(String told, long least, long most) {

  /** What a rule about clocks must state. */
  static final Map<String, Dimension> NUMBERS =
      Map.of(
          "above", Dimension.TIME,
          "rise", Dimension.TEMPERATURE,
          "lag", Dimension.TIME,
          "fall", Dimension.TEMPERATURE,
          "carryOver", Dimension.TIME,
          "drop", Dimension.TEMPERATURE,
          "within", Dimension.TIME,
          "around", Dimension.TIME);

  /** The bounds that all anchors of a log leave; least is above most where they leave none. */
  static Optional<Anchor> joined(List<Anchor> anchors) {
    return anchors.stream()
        .reduce(
            (a, b) ->
                new Anchor(
                    a.told() + "; " + b.told(),
                    Math.max(a.least(), b.least()),
                    Math.min(a.most(), b.most())));
  }

  /**
   * The core rises some time after it went in, and begins to fall when it comes out, or somewhat
   * later: the outside goes on heating the inside.
   */
  static List<Anchor> of(Rule rule, Subject subject, Series series) {
    Optional<Moment> into = time(subject, Step.SMOKE, true);
    Optional<Moment> out = time(subject, Step.SMOKE, false);
    Heating heating = Heating.of(rule, subject, series);
    List<Anchor> anchors = new ArrayList<>();
    if (into.isPresent() && heating.rises()) {
      anchors.add(rising(rule, subject, series, heating, into.get()));
    }
    if (out.isPresent() && heating.falls()) {
      anchors.add(falling(rule, subject, series, heating, out.get()));
    }
    return anchors;
  }

  private static Optional<Moment> time(Subject subject, Step step, boolean into) {
    Optional<Stay> stay = subject.lot().stay(step);
    return into ? stay.map(Stay::into).map(Entry::time) : stay.flatMap(Stay::out).map(Entry::time);
  }

  private static Anchor rising(
      Rule rule, Subject subject, Series series, Heating heating, Moment into) {
    long cold = heating.cold();
    return new Anchor(
        subject.say(
            "doubt.clock.rises",
            "the core rises from {0} on, into smoke was written for {1}",
            subject.clock(cold),
            written(subject, into)),
        cold - rule.millis("lag") - into.latest().toEpochMilli(),
        cold + series.precisionMillis() - into.earliest().toEpochMilli());
  }

  private static Anchor falling(
      Rule rule, Subject subject, Series series, Heating heating, Moment out) {
    long hot = heating.hot();
    return new Anchor(
        subject.say(
            "doubt.clock.falls",
            "it falls from {0} on, out of smoke was written for {1}",
            subject.clock(hot),
            written(subject, out)),
        heating.peak() - rule.millis("carryOver") - out.latest().toEpochMilli(),
        hot + series.precisionMillis() - out.earliest().toEpochMilli());
  }

  private static String written(Subject subject, Moment moment) {
    return subject.clock(moment.written().toEpochMilli());
  }

  /** {@code 27 min behind to 79 min behind}, from the less to the more. */
  String shown(Subject subject) {
    boolean behind = most < 0;
    String less = Subject.length(Duration.ofMillis(behind ? -most : least));
    String more = Subject.length(Duration.ofMillis(behind ? -least : most));
    return behind
        ? subject.say("doubt.clock.behind", "{0} to {1} behind", less, more)
        : subject.say("doubt.clock.ahead", "{0} to {1} ahead", less, more);
  }
}

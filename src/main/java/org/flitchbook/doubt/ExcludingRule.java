package org.flitchbook.doubt;

import static org.flitchbook.input.Stretch.Standing.PROBE_OUT;
import static org.flitchbook.message.Message.say;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.IntPredicate;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.flitchbook.json.Choice;
import org.flitchbook.measure.Dimension;
import org.flitchbook.measure.Level;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Unit;
import org.flitchbook.message.Message;
import org.flitchbook.sheet.Step;

/**
 * Rules that leave readings out, so that each looks at the lot without what the ones before found.
 */
sealed interface ExcludingRule extends Finder
    permits ExcludingRule.UnitMistaken,
        ExcludingRule.ErrorValue,
        ImpossibleRule,
        ExcludingRule.ProbeNotIn,
        ExcludingRule.ProbePulled {

  /**
   * A log said to be in °F that begins as cold meat does in °C, or one said to be in °C that begins
   * or ends as meat does in °F.
   *
   * @param coldFrom the coldest at which a log in °F begins so
   * @param coldTo the warmest
   * @param warm a log in °C begins so above this, at most {@code atLoad} after the lot went in
   * @param hot no core in °C is above this
   */
  @Choice("unit mistaken")
  record UnitMistaken(Degrees coldFrom, Degrees coldTo, Degrees warm, Degrees hot, Duration atLoad)
      implements ExcludingRule {

    @Override
    public Stream<Doubt> find(Subject subject, ProbeLog core) {
      boolean isAtLoad =
          subject
              .into(Step.SMOKE)
              .filter(loaded -> core.size() > 0 && core.at(0) - loaded <= atLoad.toMillis())
              .isPresent();
      IntPredicate isMistaken =
          core.track().unit() == Unit.FAHRENHEIT
              ? i -> i == 0 && core.level(0) >= coldFrom.level() && core.level(0) <= coldTo.level()
              : i -> core.level(i) > (i == 0 && isAtLoad ? warm : hot).level();
      return IntStream.range(0, core.size())
          .filter(isMistaken)
          .limit(1)
          .mapToObj(i -> doubt(core, i));
    }

    private static Doubt doubt(ProbeLog core, int index) {
      return new Doubt(
          core.place(index),
          say(
              "doubt.unit.found",
              "{0}: {1}, read as {2}",
              core.probe(),
              core.said(index),
              core.track().unit()),
          say("doubt.unit.expected", "a core as meat has it"),
          say("do.unit-mistaken", "Look at the logger's unit, and write it into logs.json."));
    }
  }

  /**
   * A number that a logger writes for want of a reading: some always, some only where they stand
   * alone, since a smoker's air may well be at 185 °F.
   *
   * @param always these are no reading anywhere, converted into the log's unit or as bare numbers
   * @param alone these are none where both neighbours are more than {@code apart} from them
   */
  @Choice("error value")
  record ErrorValue(List<Degrees> always, List<Degrees> alone, Degrees apart)
      implements ExcludingRule {

    @Override
    public Stream<Doubt> find(Subject subject) {
      return subject.logs().stream()
          .filter(log -> log.track().unit().dimension() == Dimension.TEMPERATURE)
          .flatMap(this::find);
    }

    private Stream<Doubt> find(ProbeLog log) {
      Set<Long> errors = levels(log.track().unit());
      return log.flatRuns()
          .filter(run -> errors.contains(log.level(run.first())) || isAloneError(log, run))
          .map(run -> doubt(log, run));
    }

    /** Those that are always errors, as they are written and as bare numbers in the log's unit. */
    private Set<Long> levels(Unit unit) {
      return always.stream()
          .flatMap(
              error ->
                  Stream.of(error.level(), Level.of(new Quantity(error.written().value(), unit))))
          .collect(Collectors.toSet());
    }

    private boolean isAloneError(ProbeLog log, Run run) {
      long level = log.level(run.first());
      return alone.stream().anyMatch(error -> error.level() == level) && standsAlone(log, run);
    }

    private boolean standsAlone(ProbeLog log, Run run) {
      boolean before = run.first() == 0 || isApart(log, run.first() - 1, run.first());
      boolean after = run.last() == log.last() || isApart(log, run.last(), run.last() + 1);
      return before && after && run.size() < log.size();
    }

    private boolean isApart(ProbeLog log, int from, int to) {
      return Math.abs(log.rise(from, to)) > apart.difference();
    }

    private Doubt doubt(ProbeLog log, Run run) {
      Message found =
          say(
              "doubt.error.found",
              "{0} of {1} at {2}",
              Level.quantity(log.level(run.first()), log.track().unit()),
              log.probe(),
              log.clock(run.first()));
      return log.noReading(
          run,
          run.size() > 1
              ? say("doubt.error.several", "{0} ({1} readings)", found, run.size())
              : found,
          say("doubt.error.expected", "a reading; this is what a logger writes for want of one"),
          say("do.error-value", "Look at the probe's plug."));
    }
  }

  /**
   * Readings of a warm room before the probe went into cold meat, and of whatever it lay in once it
   * was drawn, just before the log ends.
   *
   * @param atLoad how long after the lot went in the probe may follow
   * @param atEnd how long before the end of the log it may be drawn
   */
  @Choice("probe not in the meat")
  record ProbeNotIn(Duration atLoad, Duration atEnd) implements ExcludingRule {

    @Override
    public Stream<Doubt> find(Subject subject, ProbeLog core) {
      List<Leaps.Leap> leaps = subject.leaps(core);
      Optional<Run> beforeIn =
          subject.into(Step.SMOKE).flatMap(loaded -> beforeIn(core, leaps, loaded));
      return Stream.of(beforeIn, onceOut(core, leaps))
          .flatMap(Optional::stream)
          .map(run -> doubt(core, run));
    }

    private Optional<Run> beforeIn(ProbeLog core, List<Leaps.Leap> leaps, long loaded) {
      return leaps.stream()
          .filter(leap -> !leap.isUp() && core.at(leap.after()) - loaded <= atLoad.toMillis())
          .reduce((first, second) -> second)
          .map(leap -> new Run(0, leap.after() - 1));
    }

    private Optional<Run> onceOut(ProbeLog core, List<Leaps.Leap> leaps) {
      return leaps.stream()
          .map(leap -> new Run(leap.before() + 1, core.last()))
          .filter(run -> core.between(run) <= atEnd.toMillis())
          .findFirst();
    }

    private static Doubt doubt(ProbeLog core, Run run) {
      return core.doubt(
          run,
          PROBE_OUT,
          core.said(run),
          say("doubt.not-in.expected", "readings of the meat"),
          say(
              "do.probe-not-in-the-meat",
              "Put the probe in before the load, and leave it in to the end."));
    }
  }

  /**
   * A probe that leaps away and soon back to where it was: what it read meanwhile is of something
   * else. Near the end of the smoke, where the finish is read, that must be explained.
   *
   * @param within how soon it is back
   * @param back how far from where it was it may be then
   * @param finish how long before the end of the smoke the finish is read
   */
  @Choice({"probe pulled and put back", ProbePulled.AT_FINISH})
  record ProbePulled(String rule, Duration within, Degrees back, Duration finish)
      implements ExcludingRule {

    static final String AT_FINISH = "probe pulled at the finish";

    @Override
    public Stream<Doubt> find(Subject subject, ProbeLog core) {
      List<Doubt> doubts = new ArrayList<>();
      List<Leaps.Leap> leaps = subject.leaps(core);
      for (int i = 0; i + 1 < leaps.size(); i++) {
        if (isBack(core, leaps.get(i), leaps.get(i + 1))
            && rule.equals(AT_FINISH) == isAtFinish(subject, core.at(leaps.get(i).before()))) {
          doubts.add(doubt(core, leaps.get(i), leaps.get(i + 1)));
          i++;
        }
      }
      return doubts.stream();
    }

    private boolean isBack(ProbeLog core, Leaps.Leap away, Leaps.Leap again) {
      long apart = Math.abs(core.rise(away.before(), again.after()));
      return away.isUp() != again.isUp()
          && core.between(away.before(), again.after()) <= within.toMillis()
          && apart <= back.difference()
          && 2 * apart <= Math.abs(away.rise());
    }

    private boolean isAtFinish(Subject subject, long pulled) {
      return subject
          .endOf(Step.SMOKE)
          .filter(out -> pulled < out && pulled >= out - finish.toMillis())
          .isPresent();
    }

    private Doubt doubt(ProbeLog core, Leaps.Leap away, Leaps.Leap again) {
      int first = away.before() + 1;
      Run run = new Run(first, Math.max(first, again.after() - 1));
      return core.doubt(
          run,
          PROBE_OUT,
          say(
              "doubt.pulled.found",
              "{0}: away from {1} and back to {2}",
              core.probe(),
              core.said(away.before()),
              core.said(again.after())),
          say("doubt.pulled.expected", "a probe that stays where it is"),
          rule.equals(AT_FINISH)
              ? say(
                  "do.probe-pulled-at-the-finish",
                  "Say why the probe was out at the finish, and name the hand check.")
              : say(
                  "do.probe-pulled-and-put-back",
                  "Leave the probe where it is, and check by hand beside it."));
    }
  }
}

package org.flitchbook.doubt;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalLong;
import java.util.stream.Stream;
import org.flitchbook.input.Fault;
import org.flitchbook.input.Stretch;
import org.flitchbook.measure.Dimension;
import org.flitchbook.sheet.Step;

/** A core that stays exactly as it is while the air around it is far from it. */
final class Stuck implements Finder {

  @Override
  public String name() {
    return "stuck";
  }

  @Override
  public Map<String, Dimension> numbers() {
    return Map.of(
        "fine", Dimension.TEMPERATURE,
        "fineFor", Dimension.TIME,
        "coarseFor", Dimension.TIME,
        "from", Dimension.TEMPERATURE,
        "to", Dimension.TEMPERATURE,
        "airApart", Dimension.TEMPERATURE,
        "leapFor", Dimension.TIME,
        "leap", Dimension.TEMPERATURE);
  }

  @Override
  public List<Fault> find(Rule rule, Subject subject) {
    List<Fault> faults = new ArrayList<>();
    List<Air> airs =
        Stream.of(Step.SMOKE, Step.CHILL).map(step -> Air.of(subject.lot(), step)).toList();
    for (Log core : subject.cores()) {
      List<Leaps.Leap> told = Leaps.of(subject, core);
      long most = rule.millis(isFine(rule, core) ? "fineFor" : "coarseFor");
      for (int i = 0; i < core.size(); i++) {
        int first = i;
        while (i < core.last() && core.level(i + 1) == core.level(first)) {
          i++;
        }
        if (isLong(rule, core, told, new int[] {first, i}, most)
            && isMoving(rule, core, first, airs)) {
          faults.add(fault(rule, subject, core, first, i));
        }
      }
    }
    return faults;
  }

  /** A shorter time is enough where it then makes up for it, and no leap tells that already. */
  private static boolean isLong(Rule rule, Log core, List<Leaps.Leap> told, int[] run, long most) {
    int last = run[1];
    boolean leaps =
        last < core.last()
            && Math.abs(core.rise(last, last + 1)) > rule.difference("leap")
            && told.stream().noneMatch(leap -> leap.before() <= last && leap.after() > last);
    return core.between(run[0], last) >= (leaps ? rule.millis("leapFor") : most);
  }

  /** Whether the log shows small steps. */
  private static boolean isFine(Rule rule, Log core) {
    long fine = rule.difference("fine");
    for (int i = 0; i < core.last(); i++) {
      long step = Math.abs(core.rise(i, i + 1));
      if (step > 0 && step <= fine) {
        return true;
      }
    }
    return false;
  }

  /** Whether the core must be changing; where no air was read, it is. */
  private static boolean isMoving(Rule rule, Log core, int index, List<Air> airs) {
    long level = core.level(index);
    boolean inRange = level >= rule.level("from") && level <= rule.level("to");
    return inRange
        && airs.stream()
            .map(air -> air.near(core.at(index), level))
            .flatMapToLong(OptionalLong::stream)
            .allMatch(air -> Math.abs(air - level) >= rule.difference("airApart"));
  }

  private static Fault fault(Rule rule, Subject subject, Log core, int first, int last) {
    return rule.fault(
            subject,
            core.place(first),
            subject.say(
                "doubt.stuck.found",
                "{0} at {1} and still at {2}",
                subject.probe(core.track()),
                subject.told(core, first),
                subject.clock(core.at(last))),
            subject.say("doubt.stuck.expected", "a core that changes"))
        .over(core.stretch(Math.min(first + 1, last), last, Stretch.Standing.IN_DOUBT));
  }
}

package org.flitchbook.doubt;

import static org.flitchbook.input.Stretch.Standing.PROBE_OUT;
import static org.flitchbook.message.Message.say;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;
import java.util.stream.Stream;
import org.flitchbook.json.Choice;
import org.flitchbook.sheet.Step;

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
    implements Finder.OfCore {

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
    OptionalLong out = subject.endOf(Step.SMOKE);
    return out.isPresent()
        && pulled < out.getAsLong()
        && pulled >= out.getAsLong() - finish.toMillis();
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

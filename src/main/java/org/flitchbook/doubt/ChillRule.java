package org.flitchbook.doubt;

import static org.flitchbook.message.Message.say;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.flitchbook.input.Stretch;
import org.flitchbook.json.Choice;
import org.flitchbook.json.Key;
import org.flitchbook.lot.Track;
import org.flitchbook.measure.Dimension;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Ratio;
import org.flitchbook.message.Message;
import org.flitchbook.sheet.Step;
import org.flitchbook.sums.Shift;

/** A core that chills as its cooler's air can't have chilled it, by logs and by hand. */
sealed interface ChillRule extends Finder
    permits ChillRule.ColderThanAirWas, ChillRule.FallsBesideWarmerAir, ChillRule.FasterThanAir {

  @Override
  default Stream<Doubt> find(Subject subject) {
    CoolerAir air = CoolerAir.of(subject);
    return subject.into(Step.CHILL).stream()
        .filter(start -> air.isRead())
        .flatMap(
            start ->
                subject.coreTracks().stream()
                    .flatMap(
                        core ->
                            notAsked(subject, core, find(subject, core, chilled(core, start), air))
                                .limit(1)));
  }

  /** What is found in the readings of one core, by their indices in order of time. */
  Stream<Doubt> find(Subject subject, Track core, int[] chilled, CoolerAir air);

  /** Those of readings about which no other rule asks. */
  private static Stream<Doubt> notAsked(Subject subject, Track core, Stream<Doubt> found) {
    List<Doubt> doubts = found.toList();
    List<Stretch> asked = doubts.isEmpty() ? List.of() : asked(subject, core).toList();
    return doubts.stream()
        .filter(
            doubt ->
                doubt.stretch().stream().noneMatch(own -> asked.stream().anyMatch(own::meets)));
  }

  private static Stream<Stretch> asked(Subject subject, Track core) {
    ProbeLog log = new ProbeLog(subject, core);
    return Stream.of(
            ChangeRule.ProbeMoved.class, CoreAirRule.CoreLikeAir.class, CoreAirRule.WrongSide.class)
        .flatMap(subject::rules)
        .flatMap(rule -> ((Finder) rule.numbers()).find(subject, log))
        .flatMap(other -> other.stretch().stream());
  }

  /** Those of the log; where none was kept, those by hand. */
  private static int[] chilled(Track core, long start) {
    return IntStream.range(0, core.size())
        .filter(i -> core.earliest(i) >= start)
        .filter(i -> core.interval() == 0 || !core.byHand(i))
        .toArray();
  }

  private static Doubt about(Track core, int first, int last, Doubt doubt) {
    return core.interval() == 0
        ? doubt
        : doubt.over(core, core.earliest(first), core.earliest(last), Stretch.Standing.IN_DOUBT);
  }

  /**
   * A core colder than the coldest air that was read since the chill began.
   *
   * @param below it may be so much colder, for a wet surface and between two readings of the air
   * @param keptFor a log's for less than this may be more
   * @param near only where the air was read within this time of the core
   */
  @Choice("core colder than its air was")
  record ColderThanAirWas(Degrees below, Duration keptFor, Duration near) implements ChillRule {

    @Override
    public Stream<Doubt> find(Subject subject, Track core, int[] chilled, CoolerAir air) {
      int[] cold = Arrays.stream(chilled).filter(i -> isColder(core, i, air)).toArray();
      return cold.length == 0 || isShort(core, cold)
          ? Stream.empty()
          : Stream.of(doubt(subject, core, cold, air));
    }

    private boolean isColder(Track core, int index, CoolerAir air) {
      long at = core.earliest(index);
      return air.isReadNear(at, near)
          && core.level(index, Shift.UP) < air.lowest(at + near.toMillis()) - below.difference();
    }

    private boolean isShort(Track core, int[] cold) {
      long time = core.earliest(cold[cold.length - 1]) - core.earliest(cold[0]);
      return core.interval() > 0 && time < keptFor.toMillis();
    }

    private Doubt doubt(Subject subject, Track core, int[] cold, CoolerAir air) {
      int last = cold[cold.length - 1];
      long coldest = air.lowest(core.earliest(last) + near.toMillis());
      Message found =
          say(
              "doubt.colder.found",
              "{0} {1}, and at the coldest {2} in its cooler since it went in",
              Subject.probe(core),
              subject.said(core, last),
              subject.shown(coldest));
      return about(
          core,
          cold[0],
          last,
          new Doubt(
              core.place(cold[0]),
              found,
              say(
                  "doubt.colder.expected",
                  "a core at most {0} colder than its air ever was",
                  below),
              say(
                  "do.core-colder-than-its-air-was",
                  "Read the core and the cooler again with another thermometer, and say which was"
                      + " wrong.")));
    }
  }

  /**
   * A core that falls while all that is read of its air is warmer than it.
   *
   * @param warmer each reading of the air by more than this
   * @param fall the core falls by more than this meanwhile
   * @param apart readings of the air further apart than this show nothing of the time between
   */
  @Choice("core falls beside warmer air")
  record FallsBesideWarmerAir(Degrees warmer, Degrees fall, Duration apart) implements ChillRule {

    @Override
    public Stream<Doubt> find(Subject subject, Track core, int[] chilled, CoolerAir air) {
      List<Doubt> doubts = new ArrayList<>();
      int first = -1;
      int next = 0;
      long before = 0;
      for (Map.Entry<Long, Long> each : air.read().entrySet()) {
        while (next < chilled.length && core.earliest(chilled[next]) <= each.getKey()) {
          next++;
        }
        int now = next == 0 ? -1 : chilled[next - 1];
        boolean warm = now >= 0 && isWarmer(core, now, each.getValue());
        boolean goesOn = first >= 0 && each.getKey() - before <= apart.toMillis();
        first = warm ? (goesOn ? first : now) : -1;
        before = each.getKey();
        if (warm && isFall(core, first, now)) {
          doubts.add(doubt(subject, core, first, now, each.getValue()));
        }
      }
      return doubts.stream();
    }

    private boolean isWarmer(Track core, int index, long air) {
      return air - core.level(index, Shift.UP) > warmer.difference();
    }

    private boolean isFall(Track core, int first, int last) {
      return core.level(first, Shift.DOWN) - core.level(last, Shift.UP) > fall.difference();
    }

    private Doubt doubt(Subject subject, Track core, int first, int last, long air) {
      return about(
          core,
          first,
          last,
          new Doubt(
              core.place(first),
              say(
                  "doubt.falls.found",
                  "{0} from {1} to {2}, beside air of {3}",
                  Subject.probe(core),
                  subject.said(core, first),
                  subject.said(core, last),
                  subject.shown(air)),
              say("doubt.falls.expected", "a core that falls only beside colder air"),
              say(
                  "do.core-falls-beside-warmer-air",
                  "Find out whether the probe sat in this lot and in this cooler, and read both"
                      + " again.")));
    }
  }

  /**
   * A core that comes nearer to the coldest air that was read than cold air can bring it.
   *
   * @param share it comes by more than this share of the way
   * @param within in this time or less
   * @param far from a distance of at least this
   */
  @Choice("chill faster than its air allows")
  record FasterThanAir(
      @Key(dimension = Dimension.SHARE) Quantity share, Duration within, Degrees far)
      implements ChillRule {

    @Override
    public Stream<Doubt> find(Subject subject, Track core, int[] chilled, CoolerAir air) {
      return IntStream.range(0, chilled.length)
          .mapToObj(i -> new Run(chilled[i], last(core, chilled, i)))
          .filter(run -> isTooFast(core, run.first(), run.last(), air))
          .map(run -> doubt(subject, core, run.first(), run.last(), air));
    }

    /** The last reading that was certainly made within the time. */
    private int last(Track core, int[] chilled, int from) {
      return IntStream.range(from, chilled.length)
          .map(i -> chilled[i])
          .takeWhile(last -> last == chilled[from] || isWithin(core, chilled[from], last))
          .reduce(chilled[from], (before, last) -> last);
    }

    private boolean isWithin(Track core, int first, int last) {
      return core.latest(last) - core.earliest(first) <= within.toMillis();
    }

    private boolean isTooFast(Track core, int first, int last, CoolerAir air) {
      long coldest = air.lowest(core.earliest(last));
      long distance = core.level(first, Shift.DOWN) - coldest;
      long fall = core.level(first, Shift.DOWN) - core.level(last, Shift.UP);
      return last > first
          && coldest != CoolerAir.NONE
          && distance >= far.difference()
          && Subject.percent(Ratio.of(fall, distance)).isAbove(share);
    }

    private Doubt doubt(Subject subject, Track core, int first, int last, CoolerAir air) {
      Message found =
          say(
              "doubt.faster.found",
              "{0} from {1} to {2}, beside air of {3} at the coldest",
              Subject.probe(core),
              subject.said(core, first),
              subject.said(core, last),
              subject.shown(air.lowest(core.earliest(last))));
      return about(
          core,
          first,
          last,
          new Doubt(
              core.place(first),
              found,
              say(
                  "doubt.faster.expected",
                  "at most {0} of the way to the air within {1}",
                  share.asWritten(),
                  Subject.length(within)),
              say(
                  "do.chill-faster-than-its-air-allows",
                  "Say how it was chilled and where the probe was, and name other evidence for the"
                      + " core.")));
    }
  }
}

package org.flitchbook.doubt;

import static org.flitchbook.message.Message.say;

import java.time.Duration;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.flitchbook.json.Choice;
import org.flitchbook.lot.Lot;
import org.flitchbook.lot.Track;
import org.flitchbook.measure.Level;
import org.flitchbook.measure.Ratio;
import org.flitchbook.message.Message;
import org.flitchbook.plan.Kind;
import org.flitchbook.reading.Entry;
import org.flitchbook.sheet.Step;
import org.flitchbook.sheet.What;
import org.flitchbook.sums.BandTime;
import org.flitchbook.sums.Curve;
import org.flitchbook.sums.Shift;

/** Rules that look at what is left once people have said which readings are wrong. */
sealed interface FinalRule extends Finder
    permits FinalRule.Gap,
        FinalRule.GapOverCrossing,
        FinalRule.LogBeginsLate,
        FinalRule.LogEndsEarly,
        FinalRule.HandDisagrees {

  /** A stretch of a log without a reading: each of a core's, the longest of a place's. */
  @Choice("gap")
  record Gap() implements FinalRule {

    @Override
    public Stream<Doubt> find(Subject subject) {
      Stream<Doubt> ofCores =
          subject.coreCurves().stream()
              .flatMap(track -> track.gaps().stream().map(gap -> doubt(subject, track, gap, 1)));
      Stream<Doubt> ofPlaces =
          subject.lot().tracks().stream()
              .map(Lot.StepTrack::track)
              .filter(track -> track.what().isOfPlace())
              .flatMap(track -> longest(subject, track).stream());
      return Stream.concat(ofCores, ofPlaces);
    }

    private static Optional<Doubt> longest(Subject subject, Track track) {
      List<Curve.Gap> gaps = track.gaps();
      return gaps.stream()
          .max(Comparator.comparing(gap -> track.earliest(gap.to()) - track.earliest(gap.from())))
          .map(gap -> doubt(subject, track, gap, gaps.size()));
    }

    /**
     * What is said of a gap.
     *
     * @param of it is the longest of so many
     */
    private static Doubt doubt(Subject subject, Track track, Curve.Gap gap, int of) {
      long from = track.earliest(gap.from());
      long to = track.earliest(gap.to());
      Message minutes = say("doubt.gap.minutes", "{0} min", (to - from) / 60_000);
      Message length =
          of == 1 ? minutes : say("doubt.gap.longest", "{0}, the longest of {1}", minutes, of);
      return new Doubt(
          track.place(gap.to()),
          say(
              "doubt.gap.found",
              "no reading of {0} from {1} to {2} ({3})",
              Subject.probe(track),
              subject.clock(from),
              subject.clock(to),
              gap.byHand() == 0
                  ? length
                  : say("doubt.gap.by-hand", "{0}, {1} by hand in it", length, gap.byHand())),
          say("doubt.gap.expected", "a reading every {0} s", track.interval() / 1000),
          say(
              "do.gap",
              "Bridge a gap with a hand reading while it lasts; afterwards it can only be"
                  + " printed."));
    }
  }

  /**
   * A gap of the log over a crossing, where the latest time that the readings allow misses the
   * limit. Where it meets the limit, or a hand reading closes the gap so that it does, the gap is a
   * note.
   *
   * @param above a gap of this length or less is not looked at
   */
  @Choice("gap over a crossing")
  record GapOverCrossing(Duration above) implements FinalRule {

    @Override
    public Stream<Doubt> find(Subject subject) {
      return subject.coreCurves().stream().flatMap(track -> find(subject, track));
    }

    private Stream<Doubt> find(Subject subject, Track track) {
      return track.gaps().stream()
          .filter(gap -> track.earliest(gap.to()) - track.earliest(gap.from()) > above.toMillis())
          .flatMap(
              gap ->
                  subject.stages().stream()
                      .filter(stage -> isOpen(track, gap, stage))
                      .limit(1)
                      .map(stage -> doubt(subject, track, gap, stage)));
    }

    /** Whether a clock that begins or ends in the gap is too long at its worst. */
    private static boolean isOpen(Track track, Curve.Gap gap, Kind.Stage stage) {
      long most = stage.atMost().inBase().times(Ratio.of(1000)).floor().longValueExact();
      return Stream.of(Shift.values())
          .map(shift -> clock(track, shift, stage))
          .filter(time -> time.state() == BandTime.State.DONE && time.longest() > most)
          .flatMapToInt(time -> IntStream.of(time.start(), time.end() - 1))
          .anyMatch(before -> before >= gap.from() && before < gap.to());
    }

    private static BandTime clock(Track track, Shift shift, Kind.Stage stage) {
      long from = Level.of(stage.from());
      long to = Level.of(stage.to());
      return stage.falling()
          ? BandTime.falling(track, shift, from, to)
          : BandTime.rising(track, shift, from, to);
    }

    private Doubt doubt(Subject subject, Track track, Curve.Gap gap, Kind.Stage stage) {
      return new Doubt(
              track.place(gap.to()),
              say(
                  "doubt.crossing.found",
                  "no reading of {0} from {1} to {2}",
                  Subject.probe(track),
                  subject.said(track, gap.from()),
                  subject.said(track, gap.to())),
              say(
                  "doubt.crossing.expected",
                  "readings where it passes {0} and {1}, at most {2} apart",
                  stage.from().asWritten(),
                  stage.to().asWritten(),
                  stage.atMost().asWritten()),
              say(
                  "do.gap-over-a-crossing",
                  "Write the hand readings that were taken meanwhile; without them the limit is not"
                      + " shown."))
          .silent(track, track.earliest(gap.from()), track.earliest(gap.to()));
    }
  }

  /**
   * The first reading of a core comes late, and lies inside a band that is clocked. In the smoke it
   * rises, so that only the bands through which it rises count there; once it was out, all do.
   *
   * @param after how late it may come behind the beginning of the smoke, or of the chill without
   *     one
   */
  @Choice("log begins late")
  record LogBeginsLate(Duration after) implements FinalRule {

    @Override
    public Stream<Doubt> find(Subject subject) {
      return subject.into(Step.SMOKE).or(() -> subject.into(Step.CHILL)).stream()
          .flatMap(
              into ->
                  subject.coreCurves().stream()
                      .filter(track -> track.earliest(0) - into > after.toMillis())
                      .filter(track -> counting(subject, track).anyMatch(isAround(track)))
                      .map(track -> doubt(subject, track, into)));
    }

    private static Stream<Kind.Stage> counting(Subject subject, Track track) {
      boolean rises =
          subject.into(Step.SMOKE).isPresent()
              && subject.endOf(Step.SMOKE).filter(out -> out < track.earliest(0)).isEmpty();
      return subject.stages().stream().filter(stage -> !(rises && stage.falling()));
    }

    private static Predicate<Kind.Stage> isAround(Track track) {
      long first = track.level(0, Shift.AS_WRITTEN);
      return stage ->
          first > Math.min(Level.of(stage.from()), Level.of(stage.to()))
              && first < Math.max(Level.of(stage.from()), Level.of(stage.to()));
    }

    private static Doubt doubt(Subject subject, Track track, long into) {
      return new Doubt(
              track.place(0),
              say(
                  "doubt.begins.found",
                  "the log of {0} begins at {1} with {2}",
                  Subject.probe(track),
                  subject.clock(track.earliest(0)),
                  subject.shown(track, 0)),
              say("doubt.begins.expected", "readings from {0} on", subject.clock(into)),
              say("do.log-begins-late", "Write the hand readings that were taken before."))
          .silent(track, into, track.earliest(0));
    }
  }

  /** The last reading of a core is still above where the cooling should end. */
  @Choice("log ends early")
  record LogEndsEarly() implements FinalRule {

    @Override
    public Stream<Doubt> find(Subject subject) {
      return subject.coolingBounds().stream()
          .min(Comparator.naturalOrder())
          .filter(lowest -> subject.endOf(Step.CHILL).isPresent())
          .stream()
          .flatMap(lowest -> find(subject, lowest));
    }

    private static Stream<Doubt> find(Subject subject, long lowest) {
      return subject.coreCurves().stream()
          .filter(track -> track.level(track.size() - 1, Shift.AS_WRITTEN) > lowest)
          .map(track -> doubt(subject, track, lowest));
    }

    private static Doubt doubt(Subject subject, Track track, long lowest) {
      int last = track.size() - 1;
      return new Doubt(
              track.place(last),
              say(
                  "doubt.ends.found",
                  "the log of {0} ends at {1}, {2}",
                  Subject.probe(track),
                  subject.shown(track, last),
                  subject.clock(track.earliest(last))),
              say("doubt.ends.expected", "readings down to {0}", subject.shown(lowest)),
              say("do.log-ends-early", "Write the hand readings that were taken later."))
          .silent(track, track.earliest(last), subject.endOf(Step.CHILL).orElseThrow());
    }
  }

  /**
   * A reading by hand that is far from every log of the core at that time; where it names a probe,
   * from that one. Another lot than that in which the probe sat may be ahead of it, not behind.
   *
   * @param above it may be so far from the log
   * @param near how far apart in time the two may be
   */
  @Choice("hand and log disagree")
  record HandDisagrees(Degrees above, Duration near) implements FinalRule {

    private record Logged(ProbeLog core, int index, long apart) {}

    @Override
    public Stream<Doubt> find(Subject subject) {
      List<ProbeLog> cores = subject.cores();
      return subject.lot().all(What.INTERNAL_TEMPERATURE).stream()
          .flatMap(entry -> find(subject, cores, entry).stream());
    }

    private Optional<Doubt> find(Subject subject, List<ProbeLog> cores, Entry entry) {
      List<ProbeLog> named =
          cores.stream().filter(core -> core.track().called().equals(entry.item())).toList();
      return (named.isEmpty() ? cores : named)
          .stream()
              .flatMap(core -> near(entry, core))
              .filter(each -> !isAhead(subject, entry, each))
              .min(Comparator.comparing(Logged::apart))
              .filter(nearest -> nearest.apart() > above.difference())
              .map(nearest -> doubt(entry, nearest));
    }

    /** Of a piece of another lot than the probe's: hotter in the smoke, or colder in the chill. */
    private static boolean isAhead(Subject subject, Entry entry, Logged beside) {
      boolean elsewhere =
          !beside.core().track().piece().passages().isEmpty()
              && beside.core().track().piece().passages().stream()
                  .noneMatch(passage -> passage.lot().equals(entry.lot()));
      long log = beside.core().level(beside.index());
      boolean hotter = Level.of(entry.amount()) > log;
      boolean chilled =
          subject
              .into(Step.CHILL)
              .filter(chill -> entry.time().earliest().toEpochMilli() >= chill)
              .isPresent();
      return elsewhere && hotter != chilled;
    }

    /** The log's readings near it in time, which may have been any within its minute. */
    private Stream<Logged> near(Entry entry, ProbeLog core) {
      long level = Level.of(entry.amount());
      long from = entry.time().earliest().toEpochMilli() - near.toMillis();
      long until = entry.time().latest().toEpochMilli() + near.toMillis();
      return IntStream.range(core.atOrAfter(from), core.atOrBefore(until) + 1)
          .mapToObj(i -> new Logged(core, i, Math.abs(core.level(i) - level)));
    }

    private Doubt doubt(Entry entry, Logged nearest) {
      return new Doubt(
          nearest.core().place(nearest.index()),
          say(
              "doubt.by-hand.found",
              "{0}: {1}, and by hand {2} ({3})",
              nearest.core().probe(),
              nearest.core().said(nearest.index()),
              entry.shown(),
              entry.place()),
          say("doubt.by-hand.expected", "at most {0} between hand and log", above),
          say(
              "do.hand-and-log-disagree",
              "Read again with another thermometer, and check both instruments."));
    }
  }
}

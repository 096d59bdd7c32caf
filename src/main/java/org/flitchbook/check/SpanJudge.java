package org.flitchbook.check;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import org.flitchbook.input.Place;
import org.flitchbook.lot.Track;
import org.flitchbook.measure.Level;
import org.flitchbook.measure.Ratio;
import org.flitchbook.measure.Unit;
import org.flitchbook.plan.Kind;
import org.flitchbook.sheet.Step;
import org.flitchbook.sums.BandTime;
import org.flitchbook.sums.Shift;

/**
 * Judges the time inside a band: each probe alone, the curve shifted by its uncertainty both ways,
 * crossings at their worse end. Where only the curve as written passes, the limit is not shown.
 */
final class SpanJudge {

  private final Case judged;
  private final Kind.Span span;
  private final Step step;
  private final Optional<WarmDrying> drying;

  SpanJudge(Case judged, Kind.Span span, Step step) {
    this.judged = judged;
    this.span = span;
    this.step = step;
    this.drying = span.warmDrying().map(rule -> new WarmDrying(judged, rule));
  }

  Outcome judge() {
    List<Track> tracks = judged.lot().tracks(span.what(), step);
    if (tracks.isEmpty()) {
      return judged
          .withoutStep(step)
          .orElseGet(() -> judged.missing(step, "no " + span.what().word() + " on record"));
    }
    List<Clocked> stages = span.stages().stream().map(stage -> worstProbe(stage, tracks)).toList();
    Clocked first = stages.stream().min(Comparator.naturalOrder()).orElseThrow();
    return Outcome.of(first.part().verdict(), reasons(stages))
        .parts(stages.stream().map(Clocked::part).toList())
        .measured(first.part().measured(), formula(stages))
        .from(
            stages.stream().flatMap(each -> each.evidence().stream()).distinct().toList(),
            rests(tracks));
  }

  private List<Place> rests(List<Track> tracks) {
    List<Place> rests = new ArrayList<>(tracks.stream().map(Track::origin).toList());
    drying.ifPresent(warm -> rests.addAll(warm.origins()));
    return rests;
  }

  private static String reasons(List<Clocked> stages) {
    return String.join(
        "; ", stages.stream().map(each -> each.part().reason()).filter(r -> !r.isEmpty()).toList());
  }

  private static String formula(List<Clocked> stages) {
    return String.join("; ", stages.stream().map(Clocked::formula).toList());
  }

  /** One stage with its worst probe; the least in order is the worst. */
  private record Clocked(Part part, String formula, List<Place> evidence)
      implements Comparable<Clocked> {

    @Override
    public int compareTo(Clocked other) {
      return Comparator.comparing((Clocked each) -> each.part().verdict())
          .thenComparing(Clocked::left)
          .compare(this, other);
    }

    private Ratio left() {
      return part()
          .measured()
          .map(measured -> measured.margin().value())
          .orElse(Ratio.of(Long.MAX_VALUE));
    }
  }

  private Clocked worstProbe(Kind.Stage stage, List<Track> tracks) {
    return tracks.stream()
        .flatMap(track -> track.ways().stream())
        .map(track -> new Probe(stage, track).clocked())
        .min(Comparator.naturalOrder())
        .orElseThrow();
  }

  /** One probe in one stage. */
  private final class Probe {

    private final Kind.Stage stage;
    private final Track track;
    private final long most;
    private final long least;
    private final BandTime written;
    private final BandTime up;
    private final BandTime down;

    Probe(Kind.Stage stage, Track track) {
      this.stage = stage;
      this.track = track;
      this.most = stage.falling() ? 0 : drying.map(WarmDrying::most).orElse(0L);
      this.least = stage.falling() ? 0 : drying.map(WarmDrying::least).orElse(0L);
      this.written = clock(Shift.AS_WRITTEN);
      this.up = clock(Shift.UP);
      this.down = clock(Shift.DOWN);
    }

    private BandTime clock(Shift shift) {
      long from = Level.of(stage.from());
      long to = Level.of(stage.to());
      BandTime inBand =
          stage.falling()
              ? BandTime.falling(track, shift, from, to)
              : BandTime.rising(track, shift, from, to);
      return inBand.plus(most, least);
    }

    private long limit() {
      return stage.atMost().inBase().times(Ratio.of(1000)).floor().longValueExact();
    }

    private boolean meets(BandTime time) {
      return time.state() == BandTime.State.DONE && time.longest() <= limit();
    }

    /** The shifted curve that counts: the one that takes longer, running before done. */
    private BandTime worse() {
      if (up.state() != down.state()) {
        return up.state() == BandTime.State.RUNNING ? up : down;
      }
      return up.longest() >= down.longest() ? up : down;
    }

    Clocked clocked() {
      if (meets(up) && meets(down) && meets(written)) {
        return told(Verdict.MET, "");
      }
      return switch (written.state()) {
        case DONE -> crossed();
        case RUNNING -> running();
        case BEFORE -> before();
        case BEGINS_INSIDE ->
            none(
                Verdict.NOT_SHOWN,
                "the readings of "
                    + track.called()
                    + " begin at "
                    + level(0)
                    + ", inside the band, and no reading by hand shows its beginning");
      };
    }

    /** As written both crossings were seen, yet the worst case misses. */
    private Clocked crossed() {
      long kindest = written.interpolated().orElse(written.longest());
      if (written.gap()) {
        kindest = Math.min(kindest, written.shortest());
      }
      if (kindest > limit()) {
        return told(Verdict.NOT_MET, took(kindest) + ", of at most " + stage.atMost());
      }
      return told(Verdict.NOT_SHOWN, why(kindest));
    }

    private String why(long kindest) {
      if (written.longest() - most + least <= limit() && most > least) {
        return "the readings of the drying allow from "
            + minutes(least)
            + " to "
            + minutes(most)
            + " that count in it";
      }
      return written.gap()
          ? "a crossing lies in a gap of the log: anything from "
              + minutes(written.shortest())
              + " to "
              + minutes(worse().longest())
              + " is possible"
          : "only the curve as written meets it ("
              + minutes(kindest)
              + "); with the instrument's error against the lot it does not";
    }

    private Clocked running() {
      long seen = written.shortest();
      if (seen > limit()) {
        return told(Verdict.NOT_MET, took(seen) + " so far, of at most " + stage.atMost());
      }
      if (judged.coreIsOver()) {
        return told(
            Verdict.NOT_SHOWN,
            "the readings of "
                + track.called()
                + " end at "
                + level(track.size() - 1)
                + " and never show "
                + stage.to());
      }
      long running = judged.moment().toEpochMilli() - track.latest(written.start()) + most;
      return running > limit()
          ? told(Verdict.NOT_SHOWN, "its time has run out and no reading shows " + stage.to())
          : told(Verdict.PENDING, "still between " + stage.from() + " and " + stage.to());
    }

    private Clocked before() {
      if (!judged.coreIsOver()) {
        return none(Verdict.PENDING, track.called() + " has not entered the band yet");
      }
      String enters = stage.falling() ? " never fall below " : " never rise above ";
      return none(Verdict.NOT_SHOWN, "the readings of " + track.called() + enters + stage.from());
    }

    private String took(long millis) {
      return track.called() + ": at least " + minutes(millis) + band() + (least > 0 ? added() : "");
    }

    private String band() {
      return " from " + stage.from() + " to " + stage.to();
    }

    private String added() {
      return stage.falling() ? "" : drying.map(WarmDrying::told).orElse("");
    }

    private Clocked told(Verdict verdict, String reason) {
      boolean done = written.state() == BandTime.State.DONE;
      BandTime shown = done ? worse() : written;
      long value = done ? shown.longest() : written.shortest();
      Measured measured =
          Measured.of(
                  span.what().word() + band(), Case.time(value, Unit.MINUTE), true, stage.atMost())
              .interpolated(written.interpolated().map(ms -> Case.time(ms, Unit.MINUTE)));
      Part part =
          new Part(
              stage.from(),
              stage.to(),
              verdict,
              Optional.of(measured),
              track.called(),
              Optional.of(Instant.ofEpochMilli(track.earliest(shown.start()))),
              Optional.of(Instant.ofEpochMilli(track.latest(shown.end()))),
              reason);
      return new Clocked(part, formula(shown, value), evidence(shown));
    }

    private Clocked none(Verdict verdict, String reason) {
      Part part =
          new Part(
              stage.from(),
              stage.to(),
              verdict,
              Optional.empty(),
              track.called(),
              Optional.empty(),
              Optional.empty(),
              reason);
      List<Place> seen =
          track.size() == 0 ? List.of() : List.of(track.place(0), track.place(track.size() - 1));
      return new Clocked(part, "", seen);
    }

    private String formula(BandTime shown, long value) {
      Unit unit = judged.plan().establishment().temperature();
      return track.called()
          + band()
          + ": from "
          + clock(track.earliest(shown.start()))
          + " ("
          + level(shown.start())
          + ") to "
          + clock(track.latest(shown.end()))
          + " ("
          + level(shown.end())
          + "), ± "
          + Shown.spread(track, shown.start(), Shift.UP, unit).shown()
          + added()
          + ": "
          + minutes(value);
    }

    private String clock(long millis) {
      return Instant.ofEpochMilli(millis)
          .atZone(judged.plan().establishment().zone())
          .toLocalTime()
          .toString();
    }

    private String level(int index) {
      Unit unit = judged.plan().establishment().temperature();
      return Level.quantity(track.level(index, Shift.AS_WRITTEN), unit).shown();
    }

    private String minutes(long millis) {
      return Case.time(millis, Unit.MINUTE).shown();
    }

    /** The readings on both sides of each crossing. */
    private List<Place> evidence(BandTime shown) {
      TreeSet<Integer> indices = new TreeSet<>();
      indices.add(shown.start());
      indices.add(Math.min(shown.start() + 1, track.size() - 1));
      indices.add(Math.max(shown.end() - 1, 0));
      indices.add(shown.end());
      return new ArrayList<>(indices.stream().map(track::place).toList());
    }
  }
}

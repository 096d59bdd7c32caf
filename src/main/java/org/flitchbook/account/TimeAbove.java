package org.flitchbook.account;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.BinaryOperator;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.flitchbook.input.Place;
import org.flitchbook.lot.Lot;
import org.flitchbook.lot.Stay;
import org.flitchbook.lot.Track;
import org.flitchbook.measure.Level;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Ratio;
import org.flitchbook.measure.Unit;
import org.flitchbook.plan.Kind;
import org.flitchbook.plan.Limit;
import org.flitchbook.plan.Plan;
import org.flitchbook.reading.Entry;
import org.flitchbook.reading.Moment;
import org.flitchbook.sheet.Step;
import org.flitchbook.sheet.What;
import org.flitchbook.sums.Exposure;
import org.flitchbook.sums.Shift;

/**
 * How long a lot was in the warm in all, which no limit of a single step adds up. The levels are
 * those of the product's own limits; the longer time counts.
 *
 * @param watched the steps in their order
 * @param betweenSteps the longest times from the end of a step to the beginning of the next that no
 *     probe in the meat saw, in min; all of it counts as warm
 * @param total one for each band
 * @param missing the hazard controls of which the product has no limit that gives a band
 */
public record TimeAbove(
    List<Band> bands,
    List<Watched> watched,
    Quantity betweenSteps,
    List<Inside> total,
    List<String> missing) {

  /** Temperatures between which the time is added up; without the second all above the first. */
  public record Band(Quantity from, Optional<Quantity> to) {}

  /** What was watched through a step, or several that share their probes; it may count in all. */
  public record Watched(List<Step> steps, What what, boolean counts, List<Probe> probes) {}

  /** The times of one probe, one for each band, and the place of its readings. */
  public record Probe(String probe, List<Inside> times, Place place) {}

  /** The time inside a band; as {@link Exposure}, in min. */
  public record Inside(
      Quantity longest, Quantity unseen, boolean beginsInside, boolean stillInside) {

    private static Inside of(Exposure time) {
      return new Inside(
          minutes(time.longest()), minutes(time.unseen()), time.beginsInside(), time.running());
    }

    private static Inside outside(Quantity counted) {
      return new Inside(counted, minutes(0), false, false);
    }

    private Inside plus(Inside other) {
      return new Inside(
          new Quantity(longest.value().plus(other.longest.value()), Unit.MINUTE),
          new Quantity(unseen.value().plus(other.unseen.value()), Unit.MINUTE),
          beginsInside || other.beginsInside,
          stillInside || other.stillInside);
    }
  }

  static Quantity minutes(long millis) {
    return new Quantity(Ratio.of(millis, 60_000), Unit.MINUTE);
  }

  /** Adds it up by the levels of the product's own limits. */
  record WarmTime(Lot lot, Plan plan) {

    private static final String COLD = "cold holding";
    private static final String COME_UP = "come-up";

    TimeAbove timeAbove() {
      Optional<Band> cold = cold();
      Optional<Band> comeUp = comeUp();
      List<Band> bands = Stream.of(cold, comeUp).flatMap(Optional::stream).toList();
      List<Watched> watched = watched(bands);
      Quantity pauses =
          minutes(
              lot.product().stream()
                  .flatMap(product -> product.steps().stream())
                  .mapToLong(this::pauseAfter)
                  .sum());
      return new TimeAbove(
          bands,
          watched,
          pauses,
          IntStream.range(0, bands.size()).mapToObj(i -> total(watched, i, pauses)).toList(),
          Stream.of(cold.isEmpty() ? COLD : "", comeUp.isEmpty() ? COME_UP : "")
              .filter(covers -> !covers.isEmpty())
              .toList());
    }

    /** Above the strictest level of cold holding. */
    private Optional<Band> cold() {
      return kinds(COLD, Kind.Holding.class)
          .filter(Kind.Holding::ceiling)
          .map(Kind.Holding::limit)
          .min(Comparator.naturalOrder())
          .map(level -> new Band(level, Optional.empty()));
    }

    /** Inside the first stage of the come-up. */
    private Optional<Band> comeUp() {
      return kinds(COME_UP, Kind.Span.class)
          .flatMap(span -> span.stages().stream().limit(1))
          .filter(stage -> !stage.falling())
          .findFirst()
          .map(stage -> new Band(stage.from(), Optional.of(stage.to())));
    }

    private <K extends Kind> Stream<K> kinds(String covers, Class<K> kind) {
      return lot.product().stream()
          .flatMap(product -> product.limits().stream())
          .filter(limit -> limit.covers().equals(covers))
          .map(Limit::kind)
          .filter(kind::isInstance)
          .map(kind::cast);
    }

    private Inside total(List<Watched> watched, int band, Quantity pauses) {
      return watched.stream()
          .filter(Watched::counts)
          .map(each -> inTotal(each, band))
          .reduce(Inside.outside(pauses), Inside::plus);
    }

    /** What goes on after a step with air or water is counted by what comes next. */
    private Inside inTotal(Watched watched, int band) {
      boolean core = watched.what() == What.INTERNAL_TEMPERATURE;
      // In places one after the other the times add up; else the worst probe counts.
      boolean inTurn = !core && lot.stay(watched.steps().get(0)).orElseThrow().visits().size() > 1;
      BinaryOperator<Inside> worst = BinaryOperator.maxBy(Comparator.comparing(Inside::longest));
      Inside time =
          watched.probes().stream()
              .map(probe -> probe.times().get(band))
              .reduce(inTurn ? Inside::plus : worst)
              .orElse(Inside.outside(minutes(0)));
      boolean still = core && time.stillInside();
      return new Inside(time.longest(), time.unseen(), time.beginsInside(), still);
    }

    /** The cooler's air says nothing of a hot piece, so that it never counts for the chill. */
    private List<Watched> watched(List<Band> bands) {
      List<Watched> all = new ArrayList<>();
      air(Step.CURE, What.COOLER_TEMPERATURE, true, bands).ifPresent(all::add);
      air(Step.SOAK, What.WATER_TEMPERATURE, true, bands).ifPresent(all::add);
      air(Step.DRY, What.COOLER_TEMPERATURE, true, bands).ifPresent(all::add);
      List<Step> heat = List.of(Step.SMOKE, Step.CHILL);
      if (!cores().isEmpty() || heat.stream().anyMatch(step -> lot.stay(step).isPresent())) {
        all.add(new Watched(heat, What.INTERNAL_TEMPERATURE, true, probes(cores(), bands)));
      }
      air(Step.CHILL, What.COOLER_TEMPERATURE, false, bands).ifPresent(all::add);
      return all;
    }

    private List<Track> cores() {
      return lot.curves(What.INTERNAL_TEMPERATURE, Step.SMOKE, plan.practice());
    }

    private Optional<Watched> air(Step step, What what, boolean counts, List<Band> bands) {
      List<Probe> probes = probes(lot.tracks(what, step), bands);
      return lot.stay(step).map(in -> new Watched(List.of(step), what, counts, probes));
    }

    private static List<Probe> probes(List<Track> tracks, List<Band> bands) {
      return tracks.stream()
          .map(
              track ->
                  new Probe(
                      track.name(),
                      bands.stream().map(band -> longest(track, band)).toList(),
                      track.origin()))
          .toList();
    }

    /** Of all ways to read the track, with its error up and down, the one that took longest. */
    private static Inside longest(Track track, Band band) {
      long bottom = Level.of(band.from());
      long top = band.to().map(Level::of).orElse(Long.MAX_VALUE);
      return track.ways().stream()
          .flatMap(
              way ->
                  Stream.of(Shift.UP, Shift.DOWN)
                      .map(shift -> Exposure.between(way, shift, bottom, top)))
          .max(Comparator.comparing(Exposure::longest).thenComparing(Exposure::unseen))
          .map(Inside::of)
          .orElseThrow();
    }

    /** The longest time to the beginning of the next step, in ms. */
    private long pauseAfter(Step step) {
      Optional<Moment> out = lot.stay(step).flatMap(Stay::out).map(Entry::time);
      Optional<Moment> into =
          lot.laterThan(step)
              .filter(next -> next.step() != Step.RELEASE)
              .map(next -> next.into().time());
      return out.isPresent() && into.isPresent() && !isSeen(out.get(), into.get())
          ? Math.max(0, out.get().longestTo(into.get()).toMillis())
          : 0;
    }

    /** Whether a probe in the meat was read before and after it, so that its own row counts it. */
    private boolean isSeen(Moment out, Moment into) {
      return cores().stream()
          .anyMatch(
              core ->
                  core.earliest(0) <= out.latest().toEpochMilli()
                      && core.latest(core.size() - 1) >= into.earliest().toEpochMilli());
    }
  }
}

package org.flitchbook.account;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.flitchbook.account.TimeAbove.Band;
import org.flitchbook.account.TimeAbove.Inside;
import org.flitchbook.lot.Lot;
import org.flitchbook.lot.Stay;
import org.flitchbook.lot.Track;
import org.flitchbook.measure.Level;
import org.flitchbook.plan.Kind;
import org.flitchbook.plan.Limit;
import org.flitchbook.plan.Product;
import org.flitchbook.reading.Entry;
import org.flitchbook.reading.Moment;
import org.flitchbook.sheet.Step;
import org.flitchbook.sheet.What;
import org.flitchbook.sums.Exposure;
import org.flitchbook.sums.Shift;

/** Adds up how long a lot was in the warm, by the levels of its product's own limits. */
final class WarmTime {

  private static final String COLD = "cold holding";
  private static final String COME_UP = "come-up";
  private static final Exposure NONE = new Exposure(0, 0, false, false);

  private final Lot lot;
  private final Optional<Band> cold;
  private final Optional<Band> comeUp;
  private final List<Track> cores;

  WarmTime(Lot lot) {
    this.lot = lot;
    this.cold = lot.product().flatMap(WarmTime::cold);
    this.comeUp = lot.product().flatMap(WarmTime::comeUp);
    this.cores = lot.tracks(What.INTERNAL_TEMPERATURE, Step.SMOKE);
  }

  TimeAbove timeAbove() {
    List<Band> bands = Stream.of(cold, comeUp).flatMap(Optional::stream).toList();
    List<Watch> watched = watched();
    long pauses = pauses();
    return new TimeAbove(
        bands,
        watched.stream().map(each -> each.of(bands)).toList(),
        TimeAbove.minutes(pauses),
        bands.stream().map(band -> Inside.of(total(watched, band, pauses))).toList(),
        Stream.of(cold.isEmpty() ? COLD : "", comeUp.isEmpty() ? COME_UP : "")
            .filter(covers -> !covers.isEmpty())
            .toList());
  }

  /** Above the strictest level of cold holding. */
  private static Optional<Band> cold(Product product) {
    return kinds(product, COLD, Kind.Holding.class)
        .filter(Kind.Holding::ceiling)
        .map(Kind.Holding::limit)
        .min(Comparator.naturalOrder())
        .map(level -> new Band(level, Optional.empty()));
  }

  /** Inside the first stage of the come-up. */
  private static Optional<Band> comeUp(Product product) {
    return kinds(product, COME_UP, Kind.Span.class)
        .flatMap(span -> span.stages().stream().limit(1))
        .filter(stage -> !stage.falling())
        .findFirst()
        .map(stage -> new Band(stage.from(), Optional.of(stage.to())));
  }

  private static <K extends Kind> Stream<K> kinds(Product product, String covers, Class<K> kind) {
    return product.limits().stream()
        .filter(limit -> limit.covers().equals(covers))
        .map(Limit::kind)
        .filter(kind::isInstance)
        .map(kind::cast);
  }

  /**
   * What is watched through a step.
   *
   * @param inTurn whether the tracks are of places one after the other, so that their times add up;
   *     else the worst counts
   */
  private record Watch(
      List<Step> steps, What what, List<Track> tracks, boolean inTurn, boolean counts) {

    TimeAbove.Watched of(List<Band> bands) {
      return new TimeAbove.Watched(
          steps, what, counts, tracks.stream().map(track -> probe(track, bands)).toList());
    }

    private static TimeAbove.Probe probe(Track track, List<Band> bands) {
      return new TimeAbove.Probe(
          track.called(),
          bands.stream().map(band -> Inside.of(longest(track, band))).toList(),
          track.origin());
    }

    /** What goes on after a step with air or water is counted by what comes next. */
    Exposure inTotal(Band band) {
      Exposure time =
          tracks.stream()
              .map(track -> longest(track, band))
              .reduce(inTurn ? WarmTime::plus : WarmTime::longer)
              .orElse(NONE);
      boolean running = what == What.INTERNAL_TEMPERATURE && time.running();
      return new Exposure(time.longest(), time.unseen(), time.beginsInside(), running);
    }
  }

  private static Exposure total(List<Watch> watched, Band band, long pauses) {
    return watched.stream()
        .filter(Watch::counts)
        .map(each -> each.inTotal(band))
        .reduce(new Exposure(pauses, 0, false, false), WarmTime::plus);
  }

  private static Exposure plus(Exposure one, Exposure other) {
    return new Exposure(
        one.longest() + other.longest(),
        one.unseen() + other.unseen(),
        one.beginsInside() || other.beginsInside(),
        one.running() || other.running());
  }

  private static Exposure longer(Exposure one, Exposure other) {
    return other.longest() > one.longest() ? other : one;
  }

  /** The air of the cooler tells nothing of a hot piece, so that it never counts for the chill. */
  private List<Watch> watched() {
    List<Watch> all = new ArrayList<>();
    air(Step.CURE, What.COOLER_TEMPERATURE, true).ifPresent(all::add);
    air(Step.SOAK, What.WATER_TEMPERATURE, true).ifPresent(all::add);
    air(Step.DRY, What.COOLER_TEMPERATURE, true).ifPresent(all::add);
    List<Step> heat = List.of(Step.SMOKE, Step.CHILL);
    if (!cores.isEmpty() || heat.stream().anyMatch(step -> lot.stay(step).isPresent())) {
      all.add(new Watch(heat, What.INTERNAL_TEMPERATURE, cores, false, true));
    }
    air(Step.CHILL, What.COOLER_TEMPERATURE, false).ifPresent(all::add);
    return all;
  }

  private Optional<Watch> air(Step step, What what, boolean counts) {
    return lot.stay(step)
        .map(
            stay ->
                new Watch(
                    List.of(step), what, lot.tracks(what, step), stay.visits().size() > 1, counts));
  }

  /** Of all ways to read the track, with its error up and down, the one that took longest. */
  private static Exposure longest(Track track, Band band) {
    return track.ways().stream()
        .flatMap(way -> Stream.of(Shift.UP, Shift.DOWN).map(shift -> exposure(way, shift, band)))
        .max(Comparator.comparing(Exposure::longest).thenComparing(Exposure::unseen))
        .orElseThrow();
  }

  private static Exposure exposure(Track way, Shift shift, Band band) {
    long bottom = Level.of(band.from());
    return band.to()
        .map(top -> Exposure.between(way, shift, bottom, Level.of(top)))
        .orElseGet(() -> Exposure.above(way, shift, bottom));
  }

  /** The longest times from the end of a step to the beginning of the next, added up; in ms. */
  private long pauses() {
    return lot.product().map(Product::steps).orElse(List.of()).stream()
        .mapToLong(this::pauseAfter)
        .sum();
  }

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
    return cores.stream()
        .anyMatch(
            core ->
                core.earliest(0) <= out.latest().toEpochMilli()
                    && core.latest(core.size() - 1) >= into.earliest().toEpochMilli());
  }
}

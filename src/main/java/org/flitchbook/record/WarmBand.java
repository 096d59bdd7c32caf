package org.flitchbook.record;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.flitchbook.lot.Track;
import org.flitchbook.measure.Level;
import org.flitchbook.measure.Quantity;
import org.flitchbook.plan.Kind;
import org.flitchbook.plan.Limit;
import org.flitchbook.plan.Product;
import org.flitchbook.sums.Exposure;
import org.flitchbook.sums.Shift;

/**
 * Temperatures between which the time of a lot is added up, taken from the limits of its product.
 *
 * @param to empty where the band is open
 */
record WarmBand(Quantity from, Optional<Quantity> to) {

  private static final String COLD = "cold holding";
  private static final String COME_UP = "come-up";

  /** With the figures as the limit prints them. */
  String name(Phrases phrases) {
    return to.map(top -> phrases.band(from, top))
        .orElseGet(() -> phrases.say("record.warm.above", "above {0}", from));
  }

  /** Above the strictest level of cold holding, and inside the first stage of the come-up. */
  static List<WarmBand> of(Product product) {
    List<WarmBand> bands = new ArrayList<>();
    cold(product).ifPresent(bands::add);
    comeUp(product).ifPresent(bands::add);
    return bands;
  }

  /** The hazard controls of which the product has no limit that gives a band. */
  static List<String> missing(Product product) {
    List<String> missing = new ArrayList<>();
    if (cold(product).isEmpty()) {
      missing.add(COLD);
    }
    if (comeUp(product).isEmpty()) {
      missing.add(COME_UP);
    }
    return missing;
  }

  private static Optional<WarmBand> cold(Product product) {
    return kinds(product, COLD, Kind.Holding.class)
        .filter(Kind.Holding::ceiling)
        .map(Kind.Holding::limit)
        .min(Comparator.naturalOrder())
        .map(level -> new WarmBand(level, Optional.empty()));
  }

  private static Optional<WarmBand> comeUp(Product product) {
    return kinds(product, COME_UP, Kind.Span.class)
        .flatMap(span -> span.stages().stream().limit(1))
        .filter(stage -> !stage.falling())
        .findFirst()
        .map(stage -> between(stage.from(), stage.to()));
  }

  private static WarmBand between(Quantity from, Quantity to) {
    return new WarmBand(from, Optional.of(to));
  }

  private static <K extends Kind> Stream<K> kinds(Product product, String covers, Class<K> kind) {
    return product.limits().stream()
        .filter(limit -> limit.covers().equals(covers))
        .map(Limit::kind)
        .filter(kind::isInstance)
        .map(kind::cast);
  }

  /** Of all ways to read the track, with its error up and down, the one that took longest. */
  Exposure longest(Track track) {
    return track.ways().stream()
        .flatMap(way -> Stream.of(Shift.UP, Shift.DOWN).map(shift -> exposure(way, shift)))
        .max(Comparator.comparing(Exposure::longest).thenComparing(Exposure::unseen))
        .orElseThrow();
  }

  private Exposure exposure(Track way, Shift shift) {
    long bottom = Level.of(from);
    return to.map(top -> Exposure.between(way, shift, bottom, Level.of(top)))
        .orElseGet(() -> Exposure.above(way, shift, bottom));
  }
}

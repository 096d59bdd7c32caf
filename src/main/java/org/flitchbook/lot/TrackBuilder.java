package org.flitchbook.lot;

import java.math.BigDecimal;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.flitchbook.measure.Dimension;
import org.flitchbook.measure.Level;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Ratio;
import org.flitchbook.measure.Unit;
import org.flitchbook.reading.Entry;
import org.flitchbook.reading.Moment;
import org.flitchbook.reading.Samples;
import org.flitchbook.reading.Series;
import org.flitchbook.sheet.Sheet;
import org.flitchbook.sheet.Step;
import org.flitchbook.sheet.What;

/** Cuts from all series and hand readings what counts for one lot. */
final class TrackBuilder {

  private final LotAssembly.Shared shared;
  private final List<Entry> entries;
  private final List<Stay> stays;

  TrackBuilder(LotAssembly.Shared shared, List<Entry> entries, List<Stay> stays) {
    this.shared = shared;
    this.entries = entries;
    this.stays = stays;
  }

  List<Lot.StepTrack> tracks() {
    List<Lot.StepTrack> tracks = new ArrayList<>();
    internal().forEach(track -> tracks.add(new Lot.StepTrack(Step.SMOKE, track)));
    atRelease().ifPresent(track -> tracks.add(new Lot.StepTrack(Step.RELEASE, track)));
    for (Stay stay : stays) {
      for (What what : ofPlaces(stay.step())) {
        ofPlace(what, stay).forEach(track -> tracks.add(new Lot.StepTrack(stay.step(), track)));
      }
    }
    return tracks;
  }

  /** What is read of a place, on the sheet of a step. */
  private static List<What> ofPlaces(Step step) {
    List<What> all =
        List.of(
            What.COOLER_TEMPERATURE,
            What.WATER_TEMPERATURE,
            What.CHAMBER_TEMPERATURE,
            What.WET_BULB_TEMPERATURE,
            What.HUMIDITY);
    return all.stream()
        .filter(what -> Sheet.parse(step.word()).filter(what::standsOn).isPresent())
        .toList();
  }

  /** The core from the smoke to the end of the chill; before it goes in, a probe lies in air. */
  private List<Track> internal() {
    List<Stay> heat = stays.stream().filter(Stay::isHeat).toList();
    if (heat.isEmpty()) {
      return List.of();
    }
    Stay last = heat.get(heat.size() - 1);
    Optional<Moment> out =
        last.step() == Step.CHILL ? last.out().map(Entry::time) : Optional.empty();
    Stay.Visit window = new Stay.Visit("", heat.get(0).into().time(), out);
    List<HandReading> hands =
        hands(
            entries.stream()
                .filter(entry -> entry.is(What.INTERNAL_TEMPERATURE))
                .filter(entry -> entry.sheet() != Sheet.DISPATCH)
                .filter(entry -> holds(window, entry))
                .toList());
    String lot = heat.get(0).into().lot();
    List<Track> tracks = new ArrayList<>();
    for (Series series : shared.series()) {
      if (series.what() == What.INTERNAL_TEMPERATURE && series.lots().contains(lot)) {
        track(series, List.of(window), hands).ifPresent(tracks::add);
      }
    }
    return orByHand(What.INTERNAL_TEMPERATURE, tracks, hands);
  }

  /** What was read by hand while it was kept for sale and when it left. */
  private Optional<Track> atRelease() {
    List<HandReading> hands =
        hands(
            entries.stream()
                .filter(entry -> entry.is(What.INTERNAL_TEMPERATURE))
                .filter(entry -> entry.sheet() == Sheet.DISPATCH)
                .toList());
    return hands.isEmpty()
        ? Optional.empty()
        : Optional.of(MergedTrack.ofHand(What.INTERNAL_TEMPERATURE, hands, piece(hands)));
  }

  private List<Track> ofPlace(What what, Stay stay) {
    String lot = stay.into().lot();
    List<Entry> read =
        shared.entries().stream()
            .filter(entry -> entry.is(what))
            .filter(entry -> concerns(entry, lot, stay))
            .toList();
    List<HandReading> hands = hands(read);
    List<Track> tracks = new ArrayList<>();
    for (Series series : shared.series()) {
      if (series.what() == what) {
        track(series, windows(series, stay, lot), hands).ifPresent(tracks::add);
      }
    }
    return orByHand(what, tracks, hands);
  }

  /**
   * A hand reading is that of a place while the lot lies in it, or the lot's own on the sheet of
   * the step; one that names another place says nothing of this one.
   */
  private boolean concerns(Entry entry, String lot, Stay stay) {
    boolean ofStep = entry.sheet().step().filter(step -> step == stay.step()).isPresent();
    boolean ofNoPlace = shared.plan().room(entry.item()).isEmpty();
    boolean own = entry.lot().equals(lot) && ofStep && ofNoPlace;
    return stay.visits().stream()
        .filter(visit -> holds(visit, entry))
        .anyMatch(visit -> own || entry.item().equals(visit.place()));
  }

  private static boolean holds(Stay.Visit visit, Entry entry) {
    return visit.holds(entry.time().earliest().toEpochMilli());
  }

  private static List<Stay.Visit> windows(Series series, Stay stay, String lot) {
    return stay.visits().stream()
        .filter(visit -> series.lots().contains(lot) || visit.place().equals(series.place()))
        .toList();
  }

  private List<Track> orByHand(What what, List<Track> tracks, List<HandReading> hands) {
    return tracks.isEmpty() && !hands.isEmpty()
        ? List.of(MergedTrack.ofHand(what, hands, piece(hands)))
        : tracks;
  }

  private ProbedPiece piece(List<HandReading> hands) {
    return ProbedPiece.ofHand(shared.entries(), hands);
  }

  private ProbedPiece piece(Series series) {
    return series.what() == What.INTERNAL_TEMPERATURE
        ? ProbedPiece.of(shared.entries(), series.lots(), series.seat())
        : ProbedPiece.NONE;
  }

  private Optional<Track> track(Series series, List<Stay.Visit> windows, List<HandReading> hands) {
    Samples samples = series.samples();
    long until = shared.until().toEpochMilli();
    int[] kept =
        IntStream.range(0, samples.size())
            .filter(i -> samples.at(i) <= until)
            .filter(i -> windows.stream().anyMatch(window -> window.holds(samples.at(i))))
            .toArray();
    if (kept.length == 0) {
      return Optional.empty();
    }
    return spread(
            series.instrument(),
            series.unit(),
            Instant.ofEpochMilli(samples.at(kept[0])),
            Instant.ofEpochMilli(samples.at(kept[kept.length - 1])))
        .map(spread -> MergedTrack.of(series, kept, piece(series), spread, hands));
  }

  private List<HandReading> hands(List<Entry> read) {
    List<HandReading> hands = new ArrayList<>();
    for (Entry entry : read) {
      Instant at = entry.time().earliest();
      spread(entry.instrument(), entry.amount().unit(), at, at)
          .ifPresent(spread -> hands.add(HandReading.of(entry, spread)));
    }
    hands.sort(Comparator.comparing(HandReading::at));
    return hands;
  }

  /**
   * The instrument's accuracy, plus its last known error on the side where it has one; empty for an
   * instrument that the plan lacks, whose readings can't be used.
   */
  private Optional<Probe.Spread> spread(String id, Unit unit, Instant from, Instant until) {
    return shared
        .plan()
        .instrument(id)
        .flatMap(instrument -> instrument.accuracyFor(unit.dimension()))
        .map(
            accuracy -> {
              boolean heat = unit.dimension() == Dimension.TEMPERATURE;
              long first = heat ? error(id, from) : 0;
              long last = heat ? error(id, until) : 0;
              long exact = levels(accuracy);
              return new Probe.Spread(
                  exact + Math.max(0, -Math.min(first, last)),
                  exact + Math.max(0, Math.max(first, last)));
            });
  }

  private long error(String id, Instant at) {
    Optional<Quantity> error = shared.register().last(id, at).map(Register.Check::error);
    return error.map(TrackBuilder::levels).orElse(0L);
  }

  /** A difference in levels, made no smaller where it has more decimals than a level holds. */
  private static long levels(Quantity difference) {
    BigDecimal near = difference.value().rounded(Level.DECIMALS);
    boolean smaller = Ratio.of(near).abs().isBelow(difference.value().abs());
    BigDecimal step = BigDecimal.valueOf(difference.value().signum(), Level.DECIMALS);
    return Level.ofDifference(Quantity.of(smaller ? near.add(step) : near, difference.unit()));
  }
}

package org.flitchbook.lot;

import java.math.BigDecimal;
import java.nio.IntBuffer;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.flitchbook.input.Place;
import org.flitchbook.measure.Dimension;
import org.flitchbook.measure.Level;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Ratio;
import org.flitchbook.measure.Unit;
import org.flitchbook.practice.Practice;
import org.flitchbook.reading.Entry;
import org.flitchbook.reading.Moment;
import org.flitchbook.reading.Samples;
import org.flitchbook.reading.Seat;
import org.flitchbook.reading.Series;
import org.flitchbook.sheet.Sheet;
import org.flitchbook.sheet.Step;
import org.flitchbook.sheet.What;

/** Cuts from all series and hand readings what counts for one lot. */
record TrackBuilder(Shared shared, List<Entry> entries, List<Stay> stays) {

  /** Of a probe that reads no core. */
  private static final Track.Piece NO_PIECE = new Track.Piece(false, Optional.empty(), List.of());

  List<Lot.StepTrack> tracks() {
    List<Lot.StepTrack> tracks = new ArrayList<>();
    core().forEach(track -> tracks.add(new Lot.StepTrack(Step.SMOKE, track)));
    atRelease().forEach(track -> tracks.add(new Lot.StepTrack(Step.RELEASE, track)));
    for (Stay stay : stays) {
      ofPlaces(stay.step())
          .flatMap(what -> ofPlace(what, stay).stream())
          .forEach(track -> tracks.add(new Lot.StepTrack(stay.step(), track)));
    }
    return tracks;
  }

  /** What is read of a place, on the sheet of a step. */
  private static Stream<What> ofPlaces(Step step) {
    return Stream.of(
            What.COOLER_TEMPERATURE,
            What.WATER_TEMPERATURE,
            What.CHAMBER_TEMPERATURE,
            What.WET_BULB_TEMPERATURE,
            What.HUMIDITY)
        .filter(what -> Sheet.parse(step.word()).filter(what::standsOn).isPresent());
  }

  /**
   * The core from the smoke to the end of the chill; before it goes in, a probe lies in air, and in
   * the minute in which it came out perhaps too.
   */
  private List<Track> core() {
    List<Stay> heat = stays.stream().filter(Stay::isHeat).toList();
    if (heat.isEmpty()) {
      return List.of();
    }
    Stay last = heat.get(heat.size() - 1);
    Optional<Moment> out =
        last.step() == Step.CHILL
            ? last.out().map(Entry::time).map(Moment::earliest).map(Moment::exactly)
            : Optional.empty();
    Stay.Visit window = new Stay.Visit("", heat.get(0).into().time(), out);
    String lot = heat.get(0).into().lot();
    return tracks(
        What.INTERNAL_TEMPERATURE,
        hands(
            entries.stream()
                .filter(entry -> entry.is(What.INTERNAL_TEMPERATURE))
                .filter(entry -> entry.sheet() != Sheet.DISPATCH)
                .filter(entry -> holds(window, entry))),
        shared.seriesOf(lot),
        series -> List.of(window));
  }

  /** What was read by hand while it was kept for sale and when it left. */
  private List<Track> atRelease() {
    return byHand(
        What.INTERNAL_TEMPERATURE,
        hands(
            entries.stream()
                .filter(entry -> entry.is(What.INTERNAL_TEMPERATURE))
                .filter(entry -> entry.sheet() == Sheet.DISPATCH)));
  }

  private List<Track> ofPlace(What what, Stay stay) {
    String lot = stay.into().lot();
    return tracks(
        what,
        hands(
            shared.during(what, begin(stay), end(stay)).stream()
                .filter(entry -> concerns(entry, lot, stay))),
        shared.serving(lot, stay.visits().stream().map(Stay.Visit::place)),
        series ->
            stay.visits().stream()
                .filter(
                    visit -> series.lots().contains(lot) || visit.place().equals(series.place()))
                .toList());
  }

  private static Instant begin(Stay stay) {
    return stay.visits().stream()
        .map(visit -> visit.from().earliest())
        .min(Comparator.naturalOrder())
        .orElseThrow();
  }

  private Instant end(Stay stay) {
    return stay.visits().stream()
        .map(visit -> visit.until().map(Moment::latest).orElse(shared.until()))
        .max(Comparator.naturalOrder())
        .orElseThrow();
  }

  /**
   * A hand reading is that of a place while the lot lies in it, or the lot's own on the sheet of
   * the step; one that names another place says nothing of this one.
   */
  private boolean concerns(Entry entry, String lot, Stay stay) {
    boolean ofStep = entry.sheet().step().filter(step -> step == stay.step()).isPresent();
    boolean ofNoPlace = shared.plan().location(entry.item()).isEmpty();
    boolean own = entry.lot().equals(lot) && ofStep && ofNoPlace;
    return stay.visits().stream()
        .filter(visit -> holds(visit, entry))
        .anyMatch(visit -> own || entry.item().equals(visit.place()));
  }

  private static boolean holds(Stay.Visit visit, Entry entry) {
    return visit.holds(entry.time().earliest().toEpochMilli());
  }

  /** The tracks of the logs; where none was kept, that of the readings by hand. */
  private List<Track> tracks(
      What what,
      List<HandReading> hands,
      List<Series> serving,
      Function<Series, List<Stay.Visit>> windows) {
    List<Track> logged =
        serving.stream()
            .filter(series -> series.what() == what)
            .flatMap(series -> track(series, windows.apply(series), hands).stream())
            .toList();
    return logged.isEmpty() ? byHand(what, hands) : logged;
  }

  private List<Track> byHand(What what, List<HandReading> hands) {
    return hands.isEmpty()
        ? List.of()
        : List.of(
            new Track(
                what,
                "hand",
                hands.get(0).entry().place(),
                "",
                "",
                piece(hands),
                hands.get(0).entry().amount().unit(),
                new HandReading.Spread(0, 0),
                0,
                0,
                gap().longestStep(0),
                hands,
                Optional.empty(),
                List.of(),
                Collections.emptyNavigableSet(),
                IntBuffer.wrap(IntStream.range(0, hands.size()).map(hand -> -1 - hand).toArray()),
                Handover.Stated.NOTHING,
                Optional.empty()));
  }

  private Practice.Gap gap() {
    return shared.plan().practice().gap();
  }

  /** Where nobody stated it, it may have been any piece of the lots that the log serves. */
  private Track.Piece piece(Series series) {
    if (series.what() != What.INTERNAL_TEMPERATURE) {
      return NO_PIECE;
    }
    return piece(
        series.seat().map(Seat::lot).map(List::of).orElse(series.lots()),
        series.seat().map(Seat::piece));
  }

  /** Of readings by hand, which were all taken of one piece or are taken for those of any. */
  private Track.Piece piece(List<HandReading> hands) {
    List<String> pieces = hands.stream().map(hand -> hand.entry().piece()).distinct().toList();
    return piece(
        List.of(hands.get(0).entry().lot()),
        Optional.of(pieces.get(0)).filter(piece -> pieces.size() == 1 && !piece.isEmpty()));
  }

  private Track.Piece piece(List<String> lots, Optional<String> stated) {
    String piece = stated.orElse("");
    return new Track.Piece(
        stated.isPresent(),
        lots.stream()
            .distinct()
            .flatMap(lot -> shared.ofLot(lot).stream())
            .filter(entry -> entry.is(What.THICKNESS))
            .filter(entry -> piece.isEmpty() || piece.equals(entry.piece()))
            .map(Entry::amount)
            .min(Comparator.naturalOrder()),
        lots.stream().flatMap(lot -> passages(lot, piece)).toList());
  }

  private Stream<Passage> passages(String lot, String piece) {
    return piece.isEmpty()
        ? Passage.all(lot, shared.ofLot(lot)).stream()
        : Stream.of(Passage.of(lot, piece, shared.ofLot(lot)));
  }

  private Optional<Track> track(Series series, List<Stay.Visit> windows, List<HandReading> hands) {
    Samples samples = series.samples();
    long until = shared.until().toEpochMilli();
    int first =
        samples.firstAt(
            windows.stream()
                .mapToLong(window -> window.from().earliest().toEpochMilli())
                .min()
                .orElse(Long.MAX_VALUE));
    int[] kept =
        IntStream.range(first, samples.size())
            .takeWhile(i -> samples.at(i) <= until && !isPast(windows, samples.at(i)))
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
        .map(spread -> track(series, kept, spread, hands));
  }

  private static boolean isPast(List<Stay.Visit> windows, long at) {
    return windows.stream()
        .allMatch(
            window -> window.until().filter(end -> end.latest().toEpochMilli() < at).isPresent());
  }

  private Track track(
      Series series, int[] kept, HandReading.Spread spread, List<HandReading> hands) {
    Samples samples = series.samples();
    long interval = shared.interval(samples);
    return new Track(
        series.what(),
        series.called(),
        new Place(samples.file(kept[0]), 0, series.column()),
        series.instrument(),
        series.place(),
        piece(series),
        series.unit(),
        spread,
        series.precisionMillis(),
        interval,
        gap().longestStep(interval),
        hands,
        Optional.of(samples),
        List.of(),
        Collections.emptyNavigableSet(),
        HandReading.among(samples, kept, hands),
        new Handover.Stated(series.lots(), series.seat(), series.continues()),
        Optional.empty());
  }

  /** In the order of time. */
  private List<HandReading> hands(Stream<Entry> read) {
    return read.flatMap(entry -> hand(entry).stream())
        .sorted(Comparator.comparing(HandReading::at))
        .toList();
  }

  private Optional<HandReading> hand(Entry entry) {
    Instant at = entry.time().earliest();
    return spread(entry.instrument(), entry.amount().unit(), at, at)
        .map(spread -> new HandReading(entry, spread));
  }

  /**
   * The instrument's accuracy, plus its last known error on the side where it has one; empty for an
   * instrument that the plan lacks, whose readings can't be used.
   */
  private Optional<HandReading.Spread> spread(String id, Unit unit, Instant from, Instant until) {
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
              return new HandReading.Spread(
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

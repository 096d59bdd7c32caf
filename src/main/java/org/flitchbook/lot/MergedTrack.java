package org.flitchbook.lot;

import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.flitchbook.input.Place;
import org.flitchbook.measure.Level;
import org.flitchbook.measure.Unit;
import org.flitchbook.reading.Entry;
import org.flitchbook.reading.Samples;
import org.flitchbook.reading.Series;
import org.flitchbook.sheet.What;
import org.flitchbook.sums.Shift;

/**
 * Readings of a log and by hand, merged by time: a list of their indices. A negative one points
 * into the list of hand entries: −1 is the first of them.
 */
final class MergedTrack implements Track {

  private final What what;
  private final String called;
  private final Place origin;
  private final String instrument;
  private final String logRoom;
  private final Unit unit;
  private final Spread logSpread;
  private final List<HandReading> hands;
  private final long precision;
  private final long interval;
  private final Optional<Samples> samples;
  private final int[] order;

  /** How far the true value may lie above and below a reading, in steps of {@link Level}. */
  record Spread(long up, long down) {}

  /** A hand reading with its instrument's spread. */
  record HandReading(Entry entry, Spread spread) {
    long at() {
      return entry.time().earliest().toEpochMilli();
    }
  }

  /**
   * @param kept the indices of the series that count for the lot, in order of time; at least one
   * @param hands in order of time
   */
  static MergedTrack of(Series series, int[] kept, Spread spread, List<HandReading> hands) {
    Samples samples = series.samples();
    return new MergedTrack(
        series.what(),
        series.called(),
        new Place(samples.file(kept[0]), 0, series.column()),
        series.instrument(),
        series.place(),
        series.unit(),
        spread,
        hands,
        series.precisionMillis(),
        samples.interval(),
        Optional.of(samples),
        merged(samples, kept, hands));
  }

  private static int[] merged(Samples samples, int[] kept, List<HandReading> hands) {
    int[] order = new int[kept.length + hands.size()];
    int size = 0;
    int hand = 0;
    for (int index : kept) {
      while (hand < hands.size() && hands.get(hand).at() < samples.at(index)) {
        order[size++] = -1 - hand++;
      }
      order[size++] = index;
    }
    while (hand < hands.size()) {
      order[size++] = -1 - hand++;
    }
    return order;
  }

  /**
   * @param hands at least one, in order of time
   */
  static MergedTrack ofHand(What what, List<HandReading> hands) {
    Entry first = hands.get(0).entry();
    return new MergedTrack(
        what,
        "hand",
        first.place(),
        "",
        "",
        first.amount().unit(),
        new Spread(0, 0),
        hands,
        0,
        0,
        Optional.empty(),
        IntStream.range(0, hands.size()).map(hand -> -1 - hand).toArray());
  }

  private MergedTrack(
      What what,
      String called,
      Place origin,
      String instrument,
      String logRoom,
      Unit unit,
      Spread logSpread,
      List<HandReading> hands,
      long precision,
      long interval,
      Optional<Samples> samples,
      int[] order) {
    this.what = what;
    this.called = called;
    this.origin = origin;
    this.instrument = instrument;
    this.logRoom = logRoom;
    this.unit = unit;
    this.logSpread = logSpread;
    this.hands = List.copyOf(hands);
    this.precision = precision;
    this.interval = interval;
    this.samples = samples;
    this.order = order;
  }

  private MergedTrack(MergedTrack whole, int[] kept) {
    this.what = whole.what;
    this.called = whole.called;
    this.origin = whole.origin;
    this.instrument = whole.instrument;
    this.logRoom = whole.logRoom;
    this.unit = whole.unit;
    this.logSpread = whole.logSpread;
    this.hands = whole.hands;
    this.precision = whole.precision;
    this.interval = whole.interval;
    this.samples = whole.samples;
    this.order = Arrays.stream(kept).map(i -> whole.order[i]).toArray();
  }

  @Override
  public What what() {
    return what;
  }

  @Override
  public String called() {
    return called;
  }

  @Override
  public Place origin() {
    return origin;
  }

  @Override
  public Unit unit() {
    return unit;
  }

  @Override
  public String room(int index) {
    return byHand(index) ? hand(index).entry().item() : logRoom;
  }

  @Override
  public String instrument() {
    return instrument;
  }

  @Override
  public List<Track> ways() {
    int[] standing =
        IntStream.range(0, size()).filter(this::stands).filter(i -> !isLonePeak(i)).toArray();
    return standing.length == size()
        ? List.of(this)
        : List.of(this, new MergedTrack(this, standing));
  }

  @Override
  public Optional<Track> during(Instant from, Instant until) {
    int[] within =
        IntStream.range(0, size())
            .filter(i -> earliest(i) >= from.toEpochMilli() && earliest(i) <= until.toEpochMilli())
            .toArray();
    return within.length == 0 ? Optional.empty() : Optional.of(new MergedTrack(this, within));
  }

  /** By hand in a gap of the log, and hotter than the log was on both sides of it. */
  private boolean isLonePeak(int index) {
    if (!byHand(index) || interval == 0) {
      return false;
    }
    int before = loggedAtOrBefore(index);
    int after = loggedAtOrAfter(index);
    return before >= 0 && after < size() && level(index) > Math.max(level(before), level(after));
  }

  @Override
  public Optional<Entry> entry(int index) {
    return byHand(index) ? Optional.of(hand(index).entry()) : Optional.empty();
  }

  @Override
  public Place place(int index) {
    return byHand(index)
        ? hand(index).entry().place()
        : new Place(log().file(order[index]), log().line(order[index]), origin.column());
  }

  @Override
  public int size() {
    return order.length;
  }

  @Override
  public long earliest(int index) {
    return byHand(index) ? hand(index).at() : log().at(order[index]);
  }

  @Override
  public long latest(int index) {
    return byHand(index)
        ? hand(index).entry().time().latest().toEpochMilli()
        : log().at(order[index]) + precision;
  }

  @Override
  public long level(int index, Shift shift) {
    return switch (shift) {
      case AS_WRITTEN -> level(index);
      case UP -> level(index) + spread(index).up();
      case DOWN -> level(index) - spread(index).down();
    };
  }

  @Override
  public boolean byHand(int index) {
    return order[index] < 0;
  }

  @Override
  public long interval() {
    return interval;
  }

  private long level(int index) {
    return byHand(index) ? Level.of(hand(index).entry().amount()) : log().level(order[index]);
  }

  /** Only a reading of a log is looked up in it. */
  private Samples log() {
    return samples.orElseThrow();
  }

  private Spread spread(int index) {
    return byHand(index) ? hand(index).spread() : logSpread;
  }

  private HandReading hand(int index) {
    return hands.get(-1 - order[index]);
  }
}

package org.flitchbook.lot;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.flitchbook.input.Place;
import org.flitchbook.input.Stretch;
import org.flitchbook.measure.Unit;
import org.flitchbook.practice.Practice;
import org.flitchbook.reading.Entry;
import org.flitchbook.reading.Samples;
import org.flitchbook.reading.Series;
import org.flitchbook.sheet.What;
import org.flitchbook.sums.Shift;

/**
 * Readings merged by time: an index into the log's samples, or below 0 one into the list of hand
 * entries, −1 being the first of them.
 */
final class MergedTrack implements Track {

  private final Probe probe;
  private final List<HandReading> hands;
  private final Optional<Samples> samples;
  private final List<Excluded> excluded;
  private final int[] order;
  private final long[] out;

  /**
   * @param kept the indices of the series that count for the lot, in order of time; at least one
   * @param hands in order of time
   */
  static MergedTrack of(
      Series series,
      int[] kept,
      ProbedPiece piece,
      Probe.Spread spread,
      List<HandReading> hands,
      Practice.Gap gap) {
    Samples samples = series.samples();
    return new MergedTrack(
        Probe.of(series, samples.file(kept[0]), piece, spread, gap),
        hands,
        Optional.of(samples),
        List.of(),
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
  static MergedTrack ofHand(
      What what, List<HandReading> hands, ProbedPiece piece, Practice.Gap gap) {
    return new MergedTrack(
        Probe.ofHand(what, hands.get(0), piece, gap),
        hands,
        Optional.empty(),
        List.of(),
        IntStream.range(0, hands.size()).map(hand -> -1 - hand).toArray());
  }

  private MergedTrack(
      Probe probe,
      List<HandReading> hands,
      Optional<Samples> samples,
      List<Excluded> excluded,
      int[] order) {
    this.probe = probe;
    this.hands = List.copyOf(hands);
    this.samples = samples;
    this.excluded = List.copyOf(excluded);
    this.order = order;
    this.out =
        excluded.stream()
            .filter(each -> each.standing() == Stretch.Standing.PROBE_OUT)
            .mapToLong(Excluded::at)
            .toArray();
  }

  private MergedTrack keeping(IntStream indices, List<Excluded> leftOut) {
    int[] kept = indices.map(i -> order[i]).toArray();
    return new MergedTrack(probe, hands, samples, leftOut, kept);
  }

  @Override
  public What what() {
    return probe.what();
  }

  @Override
  public String called() {
    return probe.called();
  }

  @Override
  public Place origin() {
    return probe.origin();
  }

  @Override
  public Unit unit() {
    return probe.unit();
  }

  @Override
  public ProbedPiece piece() {
    return probe.piece();
  }

  @Override
  public String room(int index) {
    return byHand(index) ? hand(index).entry().item() : probe.room();
  }

  @Override
  public String instrument() {
    return probe.instrument();
  }

  @Override
  public List<Track> ways() {
    int[] standing =
        IntStream.range(0, size()).filter(this::stands).filter(i -> !isLonePeak(i)).toArray();
    return standing.length == size()
        ? List.of(this)
        : List.of(this, keeping(Arrays.stream(standing), excluded));
  }

  @Override
  public Optional<Track> during(Instant from, Instant until) {
    int[] within =
        IntStream.range(0, size())
            .filter(i -> earliest(i) >= from.toEpochMilli() && earliest(i) <= until.toEpochMilli())
            .toArray();
    return within.length == 0
        ? Optional.empty()
        : Optional.of(keeping(Arrays.stream(within), excluded));
  }

  /** By hand in a gap of the log, and hotter than the log was on both sides of it. */
  private boolean isLonePeak(int index) {
    if (!byHand(index) || interval() == 0) {
      return false;
    }
    int before = loggedAtOrBefore(index);
    int after = loggedAtOrAfter(index);
    return before >= 0 && after < size() && level(index) > Math.max(level(before), level(after));
  }

  @Override
  public List<Excluded> excluded() {
    return excluded;
  }

  @Override
  public Track without(Stretch stretch, String why) {
    if (!stretch.origin().equals(origin())) {
      return this;
    }
    List<Excluded> leftOut = new ArrayList<>(excluded);
    IntStream.range(0, size())
        .filter(i -> isIn(stretch, i))
        .mapToObj(i -> new Excluded(earliest(i), level(i), place(i), why, stretch.standing()))
        .forEach(leftOut::add);
    leftOut.sort(Comparator.comparing(Excluded::at));
    return keeping(IntStream.range(0, size()).filter(i -> !isIn(stretch, i)), leftOut);
  }

  private boolean isIn(Stretch stretch, int index) {
    return !byHand(index) && stretch.holds(earliest(index));
  }

  /** While the probe was out for a short time, a reading by hand can't speak for it. */
  @Override
  public boolean stands(int index) {
    return Track.super.stands(index) && !(byHand(index) && isBesideOut(index));
  }

  private boolean isBesideOut(int index) {
    int before = loggedAtOrBefore(index);
    int after = loggedAtOrAfter(index);
    return before >= 0 && after < size() && wasOut(earliest(before), earliest(after));
  }

  /** Nothing held on while the probe was out, however short that was. */
  @Override
  public boolean gapAfter(int index) {
    return Track.super.gapAfter(index)
        || (index + 1 < size() && wasOut(earliest(index), earliest(index + 1)));
  }

  private boolean wasOut(long from, long until) {
    int found = Arrays.binarySearch(out, from);
    int next = found < 0 ? -1 - found : found;
    return next < out.length && out[next] < until;
  }

  @Override
  public Optional<Entry> entry(int index) {
    return byHand(index) ? Optional.of(hand(index).entry()) : Optional.empty();
  }

  @Override
  public Place place(int index) {
    return byHand(index)
        ? hand(index).entry().place()
        : new Place(log().file(order[index]), log().line(order[index]), origin().column());
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
        : log().at(order[index]) + probe.precision();
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
    return probe.interval();
  }

  @Override
  public long longestStep() {
    return probe.longestStep();
  }

  private long level(int index) {
    return byHand(index) ? hand(index).level() : log().level(order[index]);
  }

  /** Only a reading of a log is looked up in it. */
  private Samples log() {
    return samples.orElseThrow();
  }

  private Probe.Spread spread(int index) {
    return byHand(index) ? hand(index).spread() : probe.spread();
  }

  private HandReading hand(int index) {
    return hands.get(-1 - order[index]);
  }
}

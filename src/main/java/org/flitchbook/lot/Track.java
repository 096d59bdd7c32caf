package org.flitchbook.lot;

import java.nio.IntBuffer;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.NavigableSet;
import java.util.Optional;
import java.util.TreeSet;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.flitchbook.input.Place;
import org.flitchbook.input.Stretch;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Unit;
import org.flitchbook.reading.Entry;
import org.flitchbook.reading.Samples;
import org.flitchbook.sheet.What;
import org.flitchbook.sums.Curve;
import org.flitchbook.sums.Shift;

/**
 * One probe's readings for one lot: a log's column with the hand readings laid into it.
 *
 * @param called the probe, or "hand" where no log was kept
 * @param origin the log's file and column, without a line; where no log was kept, the first entry
 * @param instrument the log's; empty where no log was kept, as is the location
 * @param piece the one that the probe sat in, as far as it is known
 * @param unit in which the readings were written
 * @param spread of the log's readings
 * @param precision in ms, how late a reading of the log can have been after its written time
 * @param interval in ms, the usual time between readings; 0 where no log was kept
 * @param hands in order of time
 * @param samples empty where no log was kept
 * @param excluded the readings that were left out, in order of time; they are no part of the curve
 * @param out when the probe is known to have been out, in ms since 1970
 * @param order in order of time an index into the samples, or below 0 one into the hand readings,
 *     −1 being the first of them
 * @param stated what logs.json says of whose core it was
 * @param next the readings of the probe that went on where this one was taken out, see {@link
 *     Handover}
 */
public record Track(
    What what,
    String called,
    Place origin,
    String instrument,
    String location,
    Piece piece,
    Unit unit,
    HandReading.Spread spread,
    long precision,
    long interval,
    long longestStep,
    List<HandReading> hands,
    Optional<Samples> samples,
    List<Excluded> excluded,
    NavigableSet<Long> out,
    IntBuffer order,
    Handover.Stated stated,
    Optional<Track> next)
    implements Curve {

  /**
   * What is known of the piece that a probe sat in.
   *
   * @param isStated whether anybody wrote which piece it was
   * @param thickness the least that it can have been thick; empty where none that it can have been
   *     was measured
   * @param passages of each that it can have been; empty where the probe reads no core
   */
  public record Piece(boolean isStated, Optional<Quantity> thickness, List<Passage> passages) {

    public Piece {
      passages = List.copyOf(passages);
    }

    /** That of two probes in one piece, of which no more is known than of either. */
    private Piece and(Piece other) {
      return new Piece(
          isStated && other.isStated,
          thickness.flatMap(one -> other.thickness.map(two -> one.compareTo(two) <= 0 ? one : two)),
          Stream.concat(passages.stream(), other.passages.stream()).distinct().toList());
    }
  }

  /**
   * A reading of the log that was left out of the curve. It is printed, and counts for nothing.
   *
   * @param at in ms since 1970, and the level as the log wrote it
   */
  public record Excluded(long at, long level, Place place, String why, Stretch.Standing standing) {}

  private Track keeping(IntPredicate kept, List<Excluded> leftOut, NavigableSet<Long> outAt) {
    IntStream ofOwn = IntStream.range(0, own()).filter(kept);
    return with(
        piece,
        leftOut,
        outAt,
        IntBuffer.wrap(ofOwn.map(order::get).toArray()),
        next.map(track -> track.keeping(i -> kept.test(i + own()), track.excluded, track.out)));
  }

  private Track keeping(IntPredicate kept) {
    return keeping(kept, excluded, out);
  }

  /** This probe up to its last reading, and from there on the one that went on in its place. */
  Track handedOverTo(Track other) {
    long last = earliest(loggedAtOrBefore(own() - 1));
    Track after = other.keeping(i -> other.earliest(i) > last);
    NavigableSet<Long> outOfBoth = new TreeSet<>(out);
    outOfBoth.addAll(after.out);
    return with(
        piece.and(other.piece),
        excluded,
        outOfBoth,
        keeping(i -> earliest(i) <= last).order,
        Optional.of(after));
  }

  private Track with(
      Piece sat,
      List<Excluded> leftOut,
      NavigableSet<Long> outAt,
      IntBuffer kept,
      Optional<Track> after) {
    return new Track(
        what,
        called,
        origin,
        instrument,
        location,
        sat,
        unit,
        spread,
        precision,
        interval,
        longestStep,
        hands,
        samples,
        leftOut,
        outAt,
        kept,
        stated,
        after);
  }

  /** The probes that read it, in the order of time. */
  public List<String> probes() {
    return Stream.concat(Stream.of(called), next.stream().flatMap(each -> each.probes().stream()))
        .toList();
  }

  /** What it is called in a record: its probe, or one after the other those that read it. */
  public String name() {
    return String.join(" + ", probes());
  }

  /** The readings that are not those of the next probe. */
  private int own() {
    return order.limit();
  }

  /** Whether the next probe read it, in whose readings its index is less by those of this one. */
  private boolean isLater(int index) {
    return index >= own() && next.isPresent();
  }

  /** The place of the plan that one reading was taken of; empty where it names none. */
  public String location(int index) {
    if (isLater(index)) {
      return next.orElseThrow().location(index - own());
    }
    return byHand(index) ? hand(index).entry().item() : location;
  }

  /**
   * The ways in which it is read, of which the worst counts: with all readings by hand, and without
   * those taken beside a log that went on, or hotter than it was on both sides of its gap. They may
   * count against the lot and never for it: one mistyped must not restart a clock.
   */
  public List<Track> ways() {
    Track standing = keeping(i -> stands(i) && !isLonePeak(i));
    return standing.size() == size() ? List.of(this) : List.of(this, standing);
  }

  /** Its readings from one time to another, both included; empty where there are none. */
  public Optional<Track> during(Instant from, Instant until) {
    long first = from.toEpochMilli();
    long last = until.toEpochMilli();
    return Optional.of(keeping(i -> earliest(i) >= first && earliest(i) <= last))
        .filter(track -> track.size() > 0);
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

  /**
   * The same track without the log's readings in a stretch; one of another column leaves all in.
   *
   * @param why each of them is left out, in a few words
   */
  public Track without(Stretch stretch, String why) {
    if (!stretch.origin().equals(origin)) {
      return this;
    }
    List<Excluded> leftOut = new ArrayList<>(excluded);
    IntStream.range(0, size())
        .filter(i -> isIn(stretch, i))
        .mapToObj(i -> new Excluded(earliest(i), level(i), place(i), why, stretch.standing()))
        .forEach(leftOut::add);
    leftOut.sort(Comparator.comparing(Excluded::at));
    NavigableSet<Long> outAt = new TreeSet<>();
    leftOut.stream()
        .filter(each -> each.standing() == Stretch.Standing.PROBE_OUT)
        .forEach(each -> outAt.add(each.at()));
    return keeping(i -> !isIn(stretch, i), List.copyOf(leftOut), outAt);
  }

  private boolean isIn(Stretch stretch, int index) {
    return !byHand(index) && stretch.holds(earliest(index), level(index));
  }

  /** While the probe was out for a short time, a reading by hand can't speak for it. */
  @Override
  public boolean stands(int index) {
    return Curve.super.stands(index) && (out.isEmpty() || !byHand(index) || !isBesideOut(index));
  }

  private boolean isBesideOut(int index) {
    int before = loggedAtOrBefore(index);
    int after = loggedAtOrAfter(index);
    return before >= 0 && after < size() && wasOut(earliest(before), earliest(after));
  }

  /** Nothing held on while the probe was out, however short that was. */
  @Override
  public boolean gapAfter(int index) {
    return Curve.super.gapAfter(index)
        || (index + 1 < size() && wasOut(earliest(index), earliest(index + 1)));
  }

  private boolean wasOut(long from, long until) {
    Long next = out.ceiling(from);
    return next != null && next < until;
  }

  /** The entry of a reading by hand; empty for one of the log. */
  public Optional<Entry> entry(int index) {
    if (isLater(index)) {
      return next.orElseThrow().entry(index - own());
    }
    return byHand(index) ? Optional.of(hand(index).entry()) : Optional.empty();
  }

  /** Where one reading stands. */
  public Place place(int index) {
    if (isLater(index)) {
      return next.orElseThrow().place(index - own());
    }
    return byHand(index)
        ? hand(index).entry().place()
        : new Place(log().file(order.get(index)), log().line(order.get(index)), origin.column());
  }

  /** Each probe has its own usual interval; where one hands over to another, the shorter counts. */
  @Override
  public long longestStep(int from, int to) {
    if (next.isEmpty() || to < own()) {
      return longestStep;
    }
    Track after = next.get();
    long ofNext = after.longestStep(Math.max(0, from - own()), to - own());
    return from >= own() ? ofNext : Math.min(longestStep, ofNext);
  }

  @Override
  public int size() {
    return own() + next.map(Track::size).orElse(0);
  }

  @Override
  public long earliest(int index) {
    if (isLater(index)) {
      return next.orElseThrow().earliest(index - own());
    }
    return byHand(index) ? hand(index).at() : log().at(order.get(index));
  }

  @Override
  public long latest(int index) {
    if (isLater(index)) {
      return next.orElseThrow().latest(index - own());
    }
    return byHand(index)
        ? hand(index).entry().time().latest().toEpochMilli()
        : earliest(index) + precision;
  }

  @Override
  public long level(int index, Shift shift) {
    if (isLater(index)) {
      return next.orElseThrow().level(index - own(), shift);
    }
    int row = order.get(index);
    if (row >= 0) {
      return spread.around(log().level(row), shift);
    }
    HandReading hand = hands.get(-1 - row);
    return hand.spread().around(hand.level(), shift);
  }

  @Override
  public boolean byHand(int index) {
    return isLater(index) ? next.orElseThrow().byHand(index - own()) : order.get(index) < 0;
  }

  @Override
  public boolean isWrittenTwice(int index) {
    return index > 0
        && byHand(index)
        && byHand(index - 1)
        && earliest(index) == earliest(index - 1)
        && hand(index).entry().instrument().equals(hand(index - 1).entry().instrument());
  }

  private long level(int index) {
    return level(index, Shift.AS_WRITTEN);
  }

  /** Only a reading of a log is looked up in it. */
  private Samples log() {
    return samples.orElseThrow();
  }

  private HandReading hand(int index) {
    return hands.get(-1 - order.get(index));
  }
}

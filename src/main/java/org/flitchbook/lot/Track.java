package org.flitchbook.lot;

import java.nio.IntBuffer;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.NavigableSet;
import java.util.Optional;
import java.util.TreeSet;
import java.util.stream.IntStream;
import org.flitchbook.input.Place;
import org.flitchbook.input.Stretch;
import org.flitchbook.measure.Level;
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
 */
public record Track(
    What what,
    String called,
    Place origin,
    String instrument,
    String location,
    Piece piece,
    Unit unit,
    Spread spread,
    long precision,
    long interval,
    long longestStep,
    List<Hand> hands,
    Optional<Samples> samples,
    List<Excluded> excluded,
    NavigableSet<Long> out,
    IntBuffer order)
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
  }

  /** How far the true value may lie above and below a reading, in steps of a level. */
  record Spread(long up, long down) {}

  /** A hand reading with its instrument's spread. */
  record Hand(Entry entry, long level, Spread spread) {

    Hand(Entry entry, Spread spread) {
      this(entry, Level.of(entry.amount()), spread);
    }

    long at() {
      return entry.time().earliest().toEpochMilli();
    }
  }

  /**
   * A reading of the log that was left out of the curve. It is printed, and counts for nothing.
   *
   * @param at in ms since 1970, and the level as the log wrote it
   */
  public record Excluded(long at, long level, Place place, String why, Stretch.Standing standing) {}

  /** With the hand readings among those of the log that are kept; both are in order of time. */
  static IntBuffer merged(Samples samples, int[] kept, List<Hand> hands) {
    IntBuffer order = IntBuffer.allocate(kept.length + hands.size());
    int hand = 0;
    for (int index : kept) {
      while (hand < hands.size() && hands.get(hand).at() < samples.at(index)) {
        order.put(-1 - hand++);
      }
      order.put(index);
    }
    while (hand < hands.size()) {
      order.put(-1 - hand++);
    }
    return order.flip();
  }

  private Track keeping(IntStream indices, List<Excluded> leftOut, NavigableSet<Long> outAt) {
    return new Track(
        what,
        called,
        origin,
        instrument,
        location,
        piece,
        unit,
        spread,
        precision,
        interval,
        longestStep,
        hands,
        samples,
        leftOut,
        outAt,
        IntBuffer.wrap(indices.map(order::get).toArray()));
  }

  /** The place of the plan that one reading was taken of; empty where it names none. */
  public String location(int index) {
    return byHand(index) ? hand(index).entry().item() : location;
  }

  /**
   * The ways in which it is read, of which the worst counts: with all readings by hand, and without
   * those taken beside a log that went on, or hotter than it was on both sides of its gap. They may
   * count against the lot and never for it: one mistyped must not restart a clock.
   */
  public List<Track> ways() {
    int[] standing = IntStream.range(0, size()).filter(i -> stands(i) && !isLonePeak(i)).toArray();
    return standing.length == size()
        ? List.of(this)
        : List.of(this, keeping(IntStream.of(standing), excluded, out));
  }

  /** Its readings from one time to another, both included; empty where there are none. */
  public Optional<Track> during(Instant from, Instant until) {
    IntStream within =
        IntStream.range(0, size())
            .filter(i -> earliest(i) >= from.toEpochMilli() && earliest(i) <= until.toEpochMilli());
    return Optional.of(keeping(within, excluded, out)).filter(track -> track.size() > 0);
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
    IntStream rest = IntStream.range(0, size()).filter(i -> !isIn(stretch, i));
    return keeping(rest, List.copyOf(leftOut), outAt);
  }

  private boolean isIn(Stretch stretch, int index) {
    return !byHand(index) && stretch.holds(earliest(index));
  }

  /** While the probe was out for a short time, a reading by hand can't speak for it. */
  @Override
  public boolean stands(int index) {
    return Curve.super.stands(index) && !(byHand(index) && isBesideOut(index));
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
    return byHand(index) ? Optional.of(hand(index).entry()) : Optional.empty();
  }

  /** Where one reading stands. */
  public Place place(int index) {
    return byHand(index)
        ? hand(index).entry().place()
        : new Place(log().file(order.get(index)), log().line(order.get(index)), origin.column());
  }

  @Override
  public int size() {
    return order.limit();
  }

  @Override
  public long earliest(int index) {
    return byHand(index) ? hand(index).at() : log().at(order.get(index));
  }

  @Override
  public long latest(int index) {
    return byHand(index)
        ? hand(index).entry().time().latest().toEpochMilli()
        : earliest(index) + precision;
  }

  @Override
  public long level(int index, Shift shift) {
    Spread around = byHand(index) ? hand(index).spread() : spread;
    return switch (shift) {
      case AS_WRITTEN -> level(index);
      case UP -> level(index) + around.up();
      case DOWN -> level(index) - around.down();
    };
  }

  @Override
  public boolean byHand(int index) {
    return order.get(index) < 0;
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
    return byHand(index) ? hand(index).level() : log().level(order.get(index));
  }

  /** Only a reading of a log is looked up in it. */
  private Samples log() {
    return samples.orElseThrow();
  }

  private Hand hand(int index) {
    return hands.get(-1 - order.get(index));
  }
}

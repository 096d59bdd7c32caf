package org.flitchbook.lot;

import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.IntStream;
import org.flitchbook.practice.Practice;
import org.flitchbook.reading.Seat;

/**
 * Which probes of a core went on for which: one was taken out of a piece and another put in within
 * some minutes, and what they read where they meet does not contradict by more than the errors of
 * both. Of two probes that is enough; of more, logs.json must say which went on for which, or in
 * which piece each sat.
 */
final class Handover {

  /**
   * What logs.json says of a probe.
   *
   * @param lots that it served
   * @param seat its piece, where it is stated
   * @param continues the probe that it went on for; empty where none is stated
   */
  record Stated(List<String> lots, Optional<Seat> seat, String continues) {

    static final Stated NOTHING = new Stated(List.of(), Optional.empty(), "");

    private boolean isOfOnePiece(Stated other) {
      return seat.isPresent() && seat.equals(other.seat);
    }

    /** Whether nothing is stated by which the two sat in different pieces or lots. */
    private boolean mayBeOfOnePiece(Stated other) {
      boolean known = seat.isPresent() && other.seat.isPresent();
      return known ? isOfOnePiece(other) : served().equals(other.served());
    }

    private List<String> served() {
      return seat.map(Seat::lot).map(List::of).orElse(lots);
    }
  }

  private final List<Track> tracks;
  private final Optional<Practice.Handover> practice;

  /** Of each track the index of the one that went on for it; −1 where none did. */
  private final int[] next;

  Handover(List<Track> tracks, Optional<Practice.Handover> practice) {
    this.tracks = tracks;
    this.practice = practice;
    this.next = all().map(this::next).toArray();
  }

  /** The curves of a core: those that hand over are one, all others stand for themselves. */
  List<Track> curves() {
    return all().filter(i -> !wentOn(i)).mapToObj(this::curve).toList();
  }

  /** The tracks without those that went on for another and fulfil a condition. */
  List<Track> without(Predicate<Track> condition) {
    return all()
        .filter(i -> !(wentOn(i) && condition.test(tracks.get(i))))
        .mapToObj(tracks::get)
        .toList();
  }

  private IntStream all() {
    return IntStream.range(0, tracks.size());
  }

  private boolean wentOn(int index) {
    return IntStream.of(next).anyMatch(each -> each == index);
  }

  private Track curve(int index) {
    Track track = tracks.get(index);
    return next[index] < 0 ? track : track.handedOverTo(curve(next[index]));
  }

  /** The one that went on for it, where that is one and went on for no other. */
  private int next(int from) {
    int[] after = all().filter(to -> goesOn(from, to)).toArray();
    return after.length == 1 && all().filter(i -> goesOn(i, after[0])).count() == 1 ? after[0] : -1;
  }

  private boolean goesOn(int from, int to) {
    Track first = tracks.get(from);
    Track then = tracks.get(to);
    return from != to
        && first.interval() > 0
        && then.interval() > 0
        && first.stated().mayBeOfOnePiece(then.stated())
        && isMeant(first, then)
        && practice.filter(numbers -> new Seam(first, then).holds(numbers)).isPresent();
  }

  private boolean isMeant(Track first, Track then) {
    String continues = then.stated().continues();
    return continues.isEmpty()
        ? tracks.size() == 2 || first.stated().isOfOnePiece(then.stated())
        : continues.equals(first.called());
  }
}

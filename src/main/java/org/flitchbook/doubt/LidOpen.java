package org.flitchbook.doubt;

import static org.flitchbook.message.Message.say;

import java.time.Duration;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.stream.Stream;
import org.flitchbook.json.Choice;
import org.flitchbook.sheet.Step;

/**
 * The smoker's air falls fast and soon comes back.
 *
 * @param fall it falls by more than this
 * @param in within this time
 * @param back it has come back where it is at most so far below where it was
 * @param within so soon after it had fallen
 */
@Choice("lid open")
record LidOpen(Degrees fall, Duration in, Degrees back, Duration within) implements Finder {

  @Override
  public Stream<Doubt> find(Subject subject) {
    return subject.air(Step.SMOKE).logs().stream().flatMap(this::find);
  }

  private Stream<Doubt> find(ProbeLog air) {
    List<Doubt> doubts = new ArrayList<>();
    Lowest lowest = new Lowest(air, in.toMillis());
    for (int i = 0; i < air.last(); i++) {
      int again = -air.rise(i, lowest.after(i)) > fall.difference() ? again(air, i) : 0;
      if (again > 0) {
        doubts.add(doubt(air, i, again));
        i = again;
      }
    }
    return doubts.stream();
  }

  /** When the air has come back after a fall that begins there; 0 where it has not. */
  private int again(ProbeLog air, int before) {
    int low = before + 1;
    while (-air.rise(before, low) <= fall.difference()) {
      low++;
    }
    for (int i = low; i < air.size() && air.between(low, i) <= within.toMillis(); i++) {
      if (-air.rise(before, i) <= back.difference()) {
        return i;
      }
    }
    return 0;
  }

  /** The lowest reading within a time behind another one, which is asked for in order. */
  private static final class Lowest {

    private final ProbeLog air;
    private final long in;
    private final Deque<Integer> rising = new ArrayDeque<>();
    private int end;

    Lowest(ProbeLog air, long in) {
      this.air = air;
      this.in = in;
    }

    int after(int before) {
      for (end = Math.max(end, before + 1); isIn(before); end++) {
        while (!rising.isEmpty() && air.rise(end, rising.getLast()) >= 0) {
          rising.removeLast();
        }
        rising.addLast(end);
      }
      while (!rising.isEmpty() && rising.getFirst() <= before) {
        rising.removeFirst();
      }
      return rising.isEmpty() ? before : rising.getFirst();
    }

    private boolean isIn(int before) {
      return end < air.size() && air.between(before, end) <= in;
    }
  }

  private Doubt doubt(ProbeLog air, int before, int again) {
    return new Doubt(
        air.place(before),
        say(
            "doubt.lid.found",
            "the smoker's air fell from {0} and was back to {1}",
            air.said(before),
            air.said(again)),
        say("doubt.lid.expected", "a closed smoker"),
        say("do.lid-open", "Keep it short."));
  }
}

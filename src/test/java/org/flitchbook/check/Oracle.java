package org.flitchbook.check;

import java.util.List;
import java.util.Optional;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * Judges one probe slowly, by trying every pair of readings against the rules as they are written
 * down, with none of the program's own code.
 *
 * @param readings in order of time, those of the log before those by hand of the same time
 * @param interval of the log, in s
 */
record Oracle(List<Reading> readings, long interval) {

  /** Times in s, levels and their uncertainty in thousandths of a °F. */
  record Reading(long early, long late, long level, long off, boolean byHand) {

    long shifted(int shift) {
      return level + shift * off;
    }
  }

  private int size() {
    return readings.size();
  }

  private long level(int index, int shift) {
    return readings.get(index).shifted(shift);
  }

  private static boolean all(int from, int to, IntPredicate holds) {
    return IntStream.rangeClosed(from, to).allMatch(holds);
  }

  private boolean isGap(int from, int to) {
    long time = readings.get(to).early() - readings.get(from).early();
    return time > 3 * interval && time > 300;
  }

  /** By the log, or by hand with no two readings of the log around it that are close together. */
  private boolean stands(int index) {
    if (!readings.get(index).byHand()) {
      return true;
    }
    return IntStream.range(0, index)
        .filter(before -> !readings.get(before).byHand())
        .allMatch(
            before ->
                IntStream.range(index, size())
                    .filter(after -> !readings.get(after).byHand())
                    .allMatch(after -> isGap(before, after)));
  }

  Oracle standing() {
    List<Reading> kept =
        IntStream.range(0, size())
            .filter(index -> stands(index) && !isHotterThanTheLogAround(index))
            .mapToObj(readings::get)
            .toList();
    return new Oracle(kept, interval);
  }

  private boolean isHotterThanTheLogAround(int index) {
    Optional<Reading> before = log(0, index).reduce((a, b) -> b);
    Optional<Reading> after = log(index, size()).findFirst();
    long level = readings.get(index).level();
    return readings.get(index).byHand()
        && before.filter(reading -> reading.level() < level).isPresent()
        && after.filter(reading -> reading.level() < level).isPresent();
  }

  private Stream<Reading> log(int from, int to) {
    return readings.subList(from, to).stream().filter(reading -> !reading.byHand());
  }

  /** Whether every way to read the probe leaves it in the band for no longer than that. */
  boolean falls(long top, long bottom, long seconds) {
    return IntStream.rangeClosed(-1, 1)
        .allMatch(
            shift ->
                fallsAlone(shift, top, bottom, seconds)
                    && standing().fallsAlone(shift, top, bottom, seconds));
  }

  private boolean fallsAlone(int shift, long top, long bottom, long seconds) {
    return IntStream.range(0, size())
        .filter(start -> isStart(start, shift, top))
        .anyMatch(
            start ->
                IntStream.range(start + 1, size())
                    .filter(end -> isEnd(end, shift, bottom))
                    .anyMatch(end -> time(start, end) <= seconds));
  }

  private long time(int start, int end) {
    return readings.get(end).late() - readings.get(start).early();
  }

  private boolean isPeak(int index, int shift) {
    return all(0, index - 1, k -> level(k, shift) < level(index, shift))
        && all(index, size() - 1, k -> level(k, shift) <= level(index, shift));
  }

  private boolean isStart(int start, int shift, long top) {
    int peak = IntStream.range(0, size()).filter(k -> isPeak(k, shift)).findFirst().orElseThrow();
    if (level(peak, shift) < top) {
      // What a gap before it hid may have been at the top.
      return peak > 0 && start == (isGap(peak - 1, peak) ? peak - 1 : peak);
    }
    return start >= peak
        && all(peak, start, k -> level(k, shift) >= top)
        && start + 1 < size()
        && level(start + 1, shift) < top;
  }

  private boolean isEnd(int end, int shift, long bottom) {
    return all(end, size() - 1, k -> level(k, shift) <= bottom) && level(end - 1, shift) > bottom;
  }

  /** Whether two readings of the log after its peak show it in the band for longer than that. */
  boolean isSeenLonger(long top, long bottom, long seconds) {
    List<Reading> log = readings.stream().filter(reading -> !reading.byHand()).toList();
    Oracle alone = new Oracle(log, interval);
    int peak =
        IntStream.range(0, log.size()).filter(k -> alone.isPeak(k, 0)).findFirst().orElseThrow();
    List<Reading> inside =
        log.subList(peak, log.size()).stream()
            .filter(reading -> reading.level() < top && reading.level() > bottom)
            .toList();
    return inside.stream()
        .anyMatch(a -> inside.stream().anyMatch(b -> b.early() - a.late() > seconds));
  }

  /** Whether some run in the heat holds a temperature that long; 0 s takes two readings. */
  boolean holds(long atLeast, long seconds, long into, long out) {
    return IntStream.range(0, size())
        .anyMatch(
            a ->
                IntStream.range(a, size())
                    .filter(b -> isRun(a, b, atLeast, into, out))
                    .anyMatch(b -> serves(a, b, seconds)));
  }

  private boolean serves(int a, int b, long seconds) {
    if (seconds == 0) {
      return b > a && IntStream.rangeClosed(a, b).anyMatch(this::stands);
    }
    return stands(a) && stands(b) && readings.get(b).early() - readings.get(a).late() >= seconds;
  }

  private boolean isRun(int a, int b, long atLeast, long into, long out) {
    return all(a, b, k -> level(k, -1) >= atLeast)
        && all(a, b, k -> readings.get(k).early() >= into && readings.get(k).early() <= out)
        && all(a, b - 1, k -> !isGap(k, k + 1));
  }
}

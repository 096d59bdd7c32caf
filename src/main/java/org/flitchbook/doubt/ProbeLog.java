package org.flitchbook.doubt;

import static org.flitchbook.message.Message.say;

import java.util.LongSummaryStatistics;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.flitchbook.input.Place;
import org.flitchbook.input.Stretch;
import org.flitchbook.lot.Track;
import org.flitchbook.message.Message;
import org.flitchbook.message.Time;
import org.flitchbook.message.Word;
import org.flitchbook.sums.Shift;

/** The log's readings of one probe, without those by hand; levels as written, times in ms. */
final class ProbeLog {

  private final Subject subject;
  private final Track track;
  private final int[] logged;

  /** Of each its time, which the rules ask for again and again. */
  private final long[] times;

  ProbeLog(Subject subject, Track track) {
    this.subject = subject;
    this.track = track;
    this.logged = IntStream.range(0, track.size()).filter(i -> !track.byHand(i)).toArray();
    this.times = IntStream.of(logged).mapToLong(track::earliest).toArray();
  }

  Track track() {
    return track;
  }

  int size() {
    return logged.length;
  }

  int last() {
    return logged.length - 1;
  }

  long at(int index) {
    return times[index];
  }

  /** At the latest: a time written to the minute lies somewhere within it. */
  long latest(int index) {
    return track.latest(logged[index]);
  }

  long level(int index) {
    return level(index, Shift.AS_WRITTEN);
  }

  long level(int index, Shift shift) {
    return track.level(logged[index], shift);
  }

  Place place(int index) {
    return track.place(logged[index]);
  }

  Word probe() {
    return Subject.probe(track);
  }

  Time clock(int index) {
    return subject.clock(at(index));
  }

  /** {@code 139.3 °F at 13:00}. */
  Message said(int index) {
    return subject.said(track, logged[index]);
  }

  Message said(Run run) {
    return say("doubt.readings", "{0}: {1} to {2}", probe(), said(run.first()), said(run.last()));
  }

  /** How far the level rose from one reading to another; below 0 where it fell. */
  long rise(int from, int to) {
    return level(to) - level(from);
  }

  long between(Run run) {
    return between(run.first(), run.last());
  }

  long between(int from, int to) {
    return at(to) - at(from);
  }

  /** Runs of one level. */
  Stream<Run> flatRuns() {
    return Run.alike(size(), i -> level(i) == level(i - 1));
  }

  /** Runs of readings that are all below a level, or all above another. */
  Stream<Run> runsOutside(long least, long most) {
    return Stream.concat(
        Run.where(size(), i -> level(i) < least), Run.where(size(), i -> level(i) > most));
  }

  /** Whether the probe is known to have been out between two readings. */
  boolean isCut(int from, int to) {
    Long next = track.out().higher(at(from));
    return next != null && next < at(to);
  }

  /** The last reading at or before a time; −1 where there is none. */
  int atOrBefore(long time) {
    int low = -1;
    int high = size();
    while (high - low > 1) {
      int middle = (low + high) >>> 1;
      if (at(middle) <= time) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return low;
  }

  /** The first reading at or after a time; the size where there is none. */
  int atOrAfter(long time) {
    int before = atOrBefore(time);
    return before >= 0 && at(before) == time ? before : before + 1;
  }

  /** About some of its readings, at the first of them. */
  Doubt doubt(Run run, Stretch.Standing standing, Message found, Message expected, Message remedy) {
    return new Doubt(place(run.first()), found, expected, remedy)
        .over(track, at(run.first()), at(run.last()), standing);
  }

  /** About some that are no readings; others of the same time, of other levels, are. */
  Doubt noReading(Run run, Message found, Message expected, Message remedy) {
    LongSummaryStatistics levels =
        IntStream.rangeClosed(run.first(), run.last()).mapToLong(this::level).summaryStatistics();
    Doubt doubt = doubt(run, Stretch.Standing.NO_READING, found, expected, remedy);
    return doubt.ofLevels(levels.getMin(), levels.getMax());
  }
}

package org.flitchbook.reading;

import static org.flitchbook.message.Message.say;

import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.zone.ZoneOffsetTransition;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import org.flitchbook.input.Severity;
import org.flitchbook.message.Message;

/**
 * Turns the times of a clock on the wall, which is set twice a year, into times of the world. The
 * hour that comes twice is told apart by the order of the rows and their steady interval, or not at
 * all.
 */
final class WallClock {

  private static final String AUTUMN = "autumn clock change";
  private static final String SPRING = "spring clock change";

  private final ReadLog log;
  private final LogRows rows;
  private long minute = Long.MIN_VALUE;
  private List<ZoneOffset> offsetsOfMinute = List.of();

  WallClock(ReadLog log) {
    this.log = log;
    this.rows = log.rows();
  }

  /** Rows that follow each other and have one offset; NONE where they can't be used. */
  private record Stretch(int begin, int end, long offset) {}

  /** Resolves the rows of one part, which stand in the order in which they were read. */
  void resolve(int from, int to) {
    List<Stretch> stretches = new ArrayList<>();
    int row = from;
    while (row < to) {
      List<ZoneOffset> offsets = offsets(row);
      int end = endOf(offsets, row, to);
      switch (offsets.size()) {
        case 0 -> {
          Message expected = say("reading.clock.shown", "a time that was on the clock");
          stretches.add(unusable(SPRING, row, end, this::skipped, expected));
        }
        case 1 -> stretches.add(new Stretch(row, end, millis(offsets.get(0))));
        default -> stretches.addAll(doubled(Steps.of(log, from, to), row, end));
      }
      row = end;
    }
    for (int i = 1; i < stretches.size(); i++) {
      spring(stretches.get(i - 1), stretches.get(i), Steps.of(log, from, to));
    }
    stretches.forEach(this::apply);
  }

  /** The zone's rules change at whole minutes. */
  private List<ZoneOffset> offsets(int row) {
    long minuteOf = Math.floorDiv(rows.at(row), 60_000);
    if (minuteOf != minute) {
      minute = minuteOf;
      offsetsOfMinute = zone().getRules().getValidOffsets(local(minuteOf * 60));
    }
    return offsetsOfMinute;
  }

  private int endOf(List<ZoneOffset> offsets, int begin, int to) {
    int end = begin + 1;
    while (end < to && offsets(end).equals(offsets)) {
      end++;
    }
    return end;
  }

  private static LocalDateTime local(long seconds) {
    return LocalDateTime.ofEpochSecond(seconds, 0, ZoneOffset.UTC);
  }

  private static long millis(ZoneOffset offset) {
    return offset.getTotalSeconds() * 1000L;
  }

  private Message skipped(int row) {
    return say("reading.clock.skipped", "{0}, which the clock skipped in {1}", shown(row), zone());
  }

  private Message twice(int row) {
    return say(
        "reading.clock.twice", "{0}, which the clock showed twice in {1}", shown(row), zone());
  }

  private Stretch unusable(
      String rule, int begin, int end, Function<Integer, Message> found, Message expected) {
    for (int row = begin; row < end; row++) {
      log.add(rule, Severity.STOP, row, found.apply(row), expected);
    }
    return new Stretch(begin, end, LogRows.NONE);
  }

  private List<Stretch> doubled(Steps steps, int begin, int end) {
    ZoneOffsetTransition change =
        zone().getRules().getTransition(local(Math.floorDiv(rows.at(begin), 1000)));
    int turn = steps.turn(begin, end, -change.getDuration().toMillis());
    if (turn < 0) {
      Message expected =
          say(
              "reading.clock.unresolved",
              "times with one meaning; neither a step back nor a steady interval tells the two"
                  + " apart");
      return List.of(unusable(AUTUMN, begin, end, this::twice, expected));
    }
    Message found =
        turn > begin && turn < end
            ? say(
                "reading.clock.behind",
                "{0} behind {1} in {2}",
                shown(turn),
                shown(turn - 1),
                zone())
            : twice(begin);
    log.add(
        AUTUMN, Severity.NOTE, turn == end ? begin : turn, found, one(change, steps, turn == end));
    return List.of(
        new Stretch(begin, turn, millis(change.getOffsetBefore())),
        new Stretch(turn, end, millis(change.getOffsetAfter())));
  }

  private static Message one(ZoneOffsetTransition change, Steps steps, boolean first) {
    return first
        ? say(
            "reading.clock.first-time",
            "times with one meaning; by the order of the rows and their steady {0} s it is the"
                + " first time, at {1}",
            steps.usual() / 1000,
            change.getOffsetBefore())
        : say(
            "reading.clock.second-time",
            "times with one meaning; by the order of the rows and their steady {0} s it is the"
                + " second time, at {1} from this line on",
            steps.usual() / 1000,
            change.getOffsetAfter());
  }

  /** A hole of an hour where the clock was set forward is no gap. */
  private void spring(Stretch before, Stretch after, Steps steps) {
    if (before.offset() == LogRows.NONE || after.offset() <= before.offset()) {
      return;
    }
    int row = after.begin();
    long went = rows.at(row) - rows.at(row - 1) - (after.offset() - before.offset());
    if (went > 0 && went <= log.practice().gap().longestStep(steps.usual())) {
      Message found = say("reading.order.behind", "{0} behind {1}", shown(row), shown(row - 1));
      Message expected =
          say(
              "reading.clock.hour",
              "the hour that the clock skipped in {0}; {1} s went by",
              zone(),
              went / 1000);
      log.add(SPRING, Severity.NOTE, row, found, expected);
    }
  }

  private ZoneId zone() {
    return log.clock().zone();
  }

  private String shown(int row) {
    return log.clock().shown(rows.at(row));
  }

  private void apply(Stretch stretch) {
    for (int row = stretch.begin(); row < stretch.end(); row++) {
      rows.at(
          row, stretch.offset() == LogRows.NONE ? LogRows.NONE : rows.at(row) - stretch.offset());
    }
  }
}

package org.flitchbook.reading;

import static org.flitchbook.message.Message.say;

import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.time.zone.ZoneOffsetTransition;
import java.time.zone.ZoneRules;
import java.util.ArrayList;
import java.util.List;
import org.flitchbook.input.Severity;
import org.flitchbook.message.Message;
import org.flitchbook.practice.Practice;

/**
 * Turns the times of a clock on the wall, which is set twice a year, into times of the world. The
 * hour that comes twice is told apart by the order of the rows and their steady interval, or not at
 * all.
 */
final class WallClock {

  private static final String AUTUMN = "autumn clock change";
  private static final String SPRING = "spring clock change";

  private final Practice practice;
  private final LogClock clock;
  private final ZoneRules rules;
  private final String column;
  private final long precision;
  private final RowFaults faults;
  private final LogRows rows;
  private long minute = Long.MIN_VALUE;
  private List<ZoneOffset> offsetsOfMinute = List.of();

  WallClock(
      LogLayout.Time time, Practice practice, long precision, RowFaults faults, LogRows rows) {
    this.practice = practice;
    this.clock = time.clock();
    this.rules = clock.zone().getRules();
    this.column = time.column();
    this.precision = precision;
    this.faults = faults;
    this.rows = rows;
  }

  /** A time of the world as the log's clock would write it. */
  static String shown(LogClock clock, long at) {
    long local =
        clock.isLocal()
            ? at + millis(clock.zone().getRules().getOffset(Instant.ofEpochMilli(at)))
            : at;
    return clock.shown(local);
  }

  /** Rows that follow each other and have one offset; NONE where they can't be used. */
  private record Stretch(int begin, int end, long offset) {}

  /** Resolves the rows of one part, which stand in the order in which they were read. */
  void resolve(int from, int to) {
    List<Stretch> stretches = new ArrayList<>();
    int row = from;
    while (row < to) {
      List<ZoneOffset> offsets = offsets(rows.at(row));
      int end = endOf(offsets, row, to);
      if (offsets.size() == 2) {
        stretches.addAll(doubled(steps(from, to), row, end));
      } else if (offsets.isEmpty()) {
        tell(
            SPRING,
            row,
            end,
            say("reading.clock.skipped", "{0}, which the clock skipped in {1}"),
            say("reading.clock.shown", "a time that was on the clock"));
        stretches.add(new Stretch(row, end, LogRows.NONE));
      } else {
        stretches.add(new Stretch(row, end, millis(offsets.get(0))));
      }
      row = end;
    }
    for (int i = 1; i < stretches.size(); i++) {
      spring(stretches.get(i - 1), stretches.get(i), steps(from, to));
    }
    stretches.forEach(this::apply);
  }

  private Steps steps(int from, int to) {
    return new Steps(rows, from, to, practice.steadyClock(), precision);
  }

  /** The zone's rules change at whole minutes. */
  private List<ZoneOffset> offsets(long local) {
    long minuteOf = Math.floorDiv(local, 60_000);
    if (minuteOf != minute) {
      minute = minuteOf;
      offsetsOfMinute = rules.getValidOffsets(local(minuteOf * 60_000));
    }
    return offsetsOfMinute;
  }

  private int endOf(List<ZoneOffset> offsets, int begin, int to) {
    int end = begin + 1;
    while (end < to && offsets(rows.at(end)).equals(offsets)) {
      end++;
    }
    return end;
  }

  private static LocalDateTime local(long millis) {
    return LocalDateTime.ofEpochSecond(Math.floorDiv(millis, 1000), 0, ZoneOffset.UTC);
  }

  private static long millis(ZoneOffset offset) {
    return offset.getTotalSeconds() * 1000L;
  }

  private List<Stretch> doubled(Steps steps, int begin, int end) {
    ZoneOffsetTransition change = rules.getTransition(local(rows.at(begin)));
    int turn = steps.turn(begin, end, -change.getDuration().toMillis());
    if (turn < 0) {
      tell(
          AUTUMN,
          begin,
          end,
          say("reading.clock.twice", "{0}, which the clock showed twice in {1}"),
          say(
              "reading.clock.unresolved",
              "times with one meaning; neither a step back nor a steady interval tells the two"
                  + " apart"));
      return List.of(new Stretch(begin, end, LogRows.NONE));
    }
    int told = turn == end ? begin : turn;
    Message found =
        turn > begin && turn < end
            ? say(
                "reading.clock.behind",
                "{0} behind {1} in {2}",
                shown(turn),
                shown(turn - 1),
                clock.zone())
            : say(
                "reading.clock.twice",
                "{0}, which the clock showed twice in {1}",
                shown(begin),
                clock.zone());
    Message expected =
        turn == end
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
    faults.add(AUTUMN, Severity.NOTE, rows.line(told), column, found, expected);
    return List.of(
        new Stretch(begin, turn, millis(change.getOffsetBefore())),
        new Stretch(turn, end, millis(change.getOffsetAfter())));
  }

  /** A hole of an hour where the clock was set forward is no gap. */
  private void spring(Stretch before, Stretch after, Steps steps) {
    if (before.offset() == LogRows.NONE || after.offset() <= before.offset()) {
      return;
    }
    long onTheClock = rows.at(after.begin()) - rows.at(after.begin() - 1);
    long went = onTheClock - (after.offset() - before.offset());
    if (went > 0 && went <= practice.gap().longestStep(steps.usual())) {
      Message found =
          say(
              "reading.order.behind",
              "{0} behind {1}",
              shown(after.begin()),
              shown(after.begin() - 1));
      Message expected =
          say(
              "reading.clock.hour",
              "the hour that the clock skipped in {0}; {1} s went by",
              clock.zone(),
              went / 1000);
      faults.add(SPRING, Severity.NOTE, rows.line(after.begin()), column, found, expected);
    }
  }

  private void tell(String rule, int begin, int end, Message found, Message expected) {
    for (int row = begin; row < end; row++) {
      faults.add(
          rule,
          Severity.STOP,
          rows.line(row),
          column,
          say(found.id(), found.english(), shown(row), clock.zone()),
          expected);
    }
  }

  private String shown(int row) {
    return clock.shown(rows.at(row));
  }

  private void apply(Stretch stretch) {
    for (int row = stretch.begin(); row < stretch.end(); row++) {
      rows.at(
          row, stretch.offset() == LogRows.NONE ? LogRows.NONE : rows.at(row) - stretch.offset());
    }
  }
}

package org.flitchbook.reading;

import static org.flitchbook.message.Message.say;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.flitchbook.input.Severity;
import org.flitchbook.message.Message;
import org.flitchbook.practice.Practice;

/** Gives each row of a log its time, and brings the rows into the order of time. */
final class RowOrder {

  private static final long A_MINUTE = 60_000;

  private final LogLayout.Time time;
  private final Practice practice;
  private final long precision;
  private final RowFaults faults;
  private final LogRows rows;
  private final List<Integer> begins;

  /** Asked for once, since a log of a week may have it a million times. */
  private final Message oneMinute;

  private final Message seconds;

  /**
   * @param precision how late a reading can have been after its time, in milliseconds
   * @param begins the rows at which a heading stood
   */
  RowOrder(
      LogLayout.Time time,
      Practice practice,
      long precision,
      RowFaults faults,
      LogRows rows,
      List<Integer> begins) {
    this.time = time;
    this.practice = practice;
    this.precision = precision;
    this.faults = faults;
    this.rows = rows;
    this.begins = begins;
    this.oneMinute = say("reading.order.one-minute", "several rows of one minute");
    this.seconds =
        say(
            "reading.order.seconds",
            "the seconds, which a spreadsheet may have dropped; each row counts at its worse end");
  }

  /** The rows that can be used, in the order of time; none where they stand in another order. */
  Chosen inOrder() {
    if (runsBackwards() != time.newestFirst()) {
      wrongWayRound();
      return new Chosen();
    }
    List<Integer> bounds = bounds();
    List<Chosen> parts = new ArrayList<>();
    for (int i = 0; i + 1 < bounds.size(); i++) {
      parts.add(part(bounds.get(i), bounds.get(i + 1)));
    }
    return parts.stream()
        .filter(part -> part.size() > 0)
        .sorted(Comparator.comparing(part -> rows.at(part.get(0))))
        .reduce(this::merge)
        .orElse(new Chosen());
  }

  /** Where the parts begin, and the end; the rows are turned round where newest stand first. */
  private List<Integer> bounds() {
    List<Integer> bounds = new ArrayList<>(begins);
    bounds.add(rows.size());
    if (time.newestFirst()) {
      rows.turnRound();
      bounds.replaceAll(bound -> rows.size() - bound);
      bounds.sort(Comparator.naturalOrder());
    }
    return bounds;
  }

  /** Whether most rows are earlier than the one before; too few rows say nothing of their own. */
  private boolean runsBackwards() {
    int back = 0;
    int on = 0;
    for (int row = 1; row < rows.size(); row++) {
      back += rows.at(row) < rows.at(row - 1) ? 1 : 0;
      on += rows.at(row) > rows.at(row - 1) ? 1 : 0;
    }
    return back + on < 2 ? time.newestFirst() : back > on;
  }

  private void wrongWayRound() {
    int end = rows.size() - 1;
    String rule = "order of rows";
    Message found =
        say(
            "reading.order.from-to",
            "{0} to {1}",
            time.clock().shown(rows.at(0)),
            time.clock().shown(rows.at(end)));
    Message expected =
        time.newestFirst()
            ? say("reading.order.newest-first", "the newest row first, as logs.json says")
            : say(
                "reading.order.oldest-first",
                "the oldest row first, or \"order\": \"newest first\" in the time of logs.json");
    faults.add(rule, Severity.STOP, rows.line(0), time.column(), found, expected);
  }

  private Chosen part(int from, int to) {
    if (time.clock().isLocal()) {
      new WallClock(time, practice, precision, faults, rows).resolve(from, to);
    }
    Chosen chosen = new Chosen();
    int last = -1;
    for (int row = from; row < to; row++) {
      if (rows.isUsable(row) && (last < 0 || follows(row, last))) {
        chosen.add(row);
        last = row;
      }
    }
    return chosen;
  }

  private boolean follows(int row, int last) {
    long step = rows.at(row) - rows.at(last);
    if (step < 0) {
      goesBack(row, last, -step);
      return false;
    }
    return step > 0 || !isTwice(row, last);
  }

  private void goesBack(int row, int last, long back) {
    Message found = say("reading.order.behind", "{0} behind {1}", shown(row), shown(last));
    add("time goes back", Severity.STOP, row, found, later(back));
  }

  private Message later(long back) {
    if (practice.setBack().isHour(back)) {
      return say(
          "reading.order.later-or-change",
          "a later time; a change of the clock that {0} does not have then?",
          time.clock().zone());
    }
    return practice.setBack().isHalfDay(back)
        ? say(
            "reading.order.later-or-half-day",
            "a later time; a clock of 12 hours without AM and PM?")
        : say("reading.order.later", "a later time");
  }

  /**
   * Whether a row says again what one of the same time said. Where it says something else both
   * count, each where it is worse.
   */
  private boolean isTwice(int row, int other) {
    if (rows.readAlike(row, other)) {
      faults.add(
          "same row twice",
          Severity.NOTE,
          rows.line(row),
          "",
          say("reading.order.once-more", "the readings of line {0} once more", rows.line(other)),
          say("reading.order.once", "each once"));
      return true;
    }
    if (precision >= A_MINUTE) {
      faults.addUp(
          "rows of one minute", Severity.NOTE, rows.line(row), time.column(), oneMinute, seconds);
    } else {
      Message found =
          say(
              "reading.order.other-values",
              "{0} as on line {1}, with other values",
              shown(row),
              rows.line(other));
      add(
          "time twice",
          Severity.NOTE,
          row,
          found,
          say("reading.order.one-row", "one row a time; both are counted"));
    }
    return false;
  }

  /** Two parts that overlap in time: what both have is taken once. */
  private Chosen merge(Chosen early, Chosen late) {
    Chosen merged = new Chosen();
    int i = 0;
    for (int j = 0; j < late.size(); j++) {
      int row = late.get(j);
      while (i < early.size() && rows.at(early.get(i)) <= rows.at(row)) {
        merged.add(early.get(i++));
      }
      int before = i == 0 ? -1 : early.get(i - 1);
      if (before < 0 || rows.at(before) != rows.at(row) || !isTwice(row, before)) {
        merged.add(row);
      }
    }
    while (i < early.size()) {
      merged.add(early.get(i++));
    }
    return merged;
  }

  private String shown(int row) {
    return WallClock.shown(time.clock(), rows.at(row));
  }

  private void add(String rule, Severity severity, int row, Message found, Message expected) {
    faults.add(rule, severity, rows.line(row), time.column(), found, expected);
  }
}

package org.flitchbook.reading;

import static org.flitchbook.message.Message.say;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.flitchbook.input.Severity;
import org.flitchbook.message.Message;

/**
 * Gives each row of a log its time, and brings the rows into the order of time.
 *
 * @param begins the rows at which a heading stood
 */
record RowOrder(ReadLog log, LogRows rows, List<Integer> begins) {

  /** Made once, since a log of a week may have it a million times. */
  private static final Message ONE_MINUTE =
      say("reading.order.one-minute", "several rows of one minute");

  private static final Message SECONDS =
      say(
          "reading.order.seconds",
          "the seconds, which a spreadsheet may have dropped; each row counts as the worst second"
              + " of its minute");

  /** The rows that can be used, in the order of time; none where they stand in another order. */
  Chosen inOrder() {
    if (runsBackwards() != isNewestFirst()) {
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
    if (isNewestFirst()) {
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
    return back + on < 2 ? isNewestFirst() : back > on;
  }

  private void wrongWayRound() {
    Message found =
        say(
            "reading.order.from-to",
            "{0} to {1}",
            log.clock().shown(rows.at(0)),
            log.clock().shown(rows.at(rows.size() - 1)));
    Message expected =
        isNewestFirst()
            ? say("reading.order.newest-first", "the newest row first, as logs.json says")
            : say(
                "reading.order.oldest-first",
                "the oldest row first, or \"order\": \"newest first\" in the time of logs.json");
    log.add("order of rows", Severity.STOP, 0, found, expected);
  }

  private Chosen part(int from, int to) {
    if (log.clock().isLocal()) {
      new WallClock(log).resolve(from, to);
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
    log.add("time goes back", Severity.STOP, row, found, later(back));
  }

  private Message later(long back) {
    if (log.practice().setBack().isHour(back)) {
      return say(
          "reading.order.later-or-change",
          "a later time; a change of the clock that {0} does not have then?",
          log.clock().zone());
    }
    return log.practice().setBack().isHalfDay(back)
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
      log.faults()
          .add(
              "same row twice",
              Severity.NOTE,
              rows.line(row),
              "",
              say(
                  "reading.order.once-more",
                  "the readings of line {0} once more",
                  rows.line(other)),
              say("reading.order.once", "each once"));
      return true;
    }
    if (rows.areApart(row, other)) {
      return false;
    }
    if (log.precision() >= 60_000) {
      log.faults()
          .addUp(
              "rows of one minute",
              Severity.NOTE,
              rows.line(row),
              log.time().column(),
              ONE_MINUTE,
              SECONDS);
    } else {
      Message found =
          say(
              "reading.order.other-values",
              "{0} as on line {1}, with other values",
              shown(row),
              rows.line(other));
      log.add(
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

  private boolean isNewestFirst() {
    return log.time().order().isPresent();
  }

  private String shown(int row) {
    return log.clock().onTheClock(rows.at(row));
  }
}

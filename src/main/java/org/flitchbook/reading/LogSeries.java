package org.flitchbook.reading;

import static org.flitchbook.message.Message.say;

import java.time.Instant;
import java.util.BitSet;
import java.util.List;
import org.flitchbook.input.Severity;
import org.flitchbook.message.Message;

/** Makes a series of each column of one log, and tells of the rows that none of them took. */
final class LogSeries {

  private final String name;
  private final LogLayout layout;
  private final long precision;
  private final LogRows rows;
  private final RowFaults faults;
  private final long correction;

  LogSeries(String name, LogLayout layout, long precision, LogRows rows, RowFaults faults) {
    this.name = name;
    this.layout = layout;
    this.precision = precision;
    this.rows = rows;
    this.faults = faults;
    this.correction = layout.time().off().toMillis();
  }

  /**
   * Adds the series.
   *
   * @param inOrder the rows that can be used, in the order of time
   * @param last the last time that the log can have
   * @return how many rows were used
   */
  int make(Chosen inOrder, Instant last, List<Series> series) {
    BitSet used = new BitSet(rows.size());
    BitSet held = new BitSet(rows.size());
    for (int index = 0; index < layout.columns().size(); index++) {
      series.add(series(index, chosen(inOrder, index, used, held)));
    }
    for (int i = 0; i < inOrder.size(); i++) {
      tell(inOrder.get(i), held, last.toEpochMilli());
    }
    if (inOrder.size() > 0) {
      layout.time().correction().ifPresent(by -> corrected(by, inOrder));
    }
    return used.cardinality();
  }

  private Chosen chosen(Chosen inOrder, int index, BitSet used, BitSet held) {
    LogLayout.ValueColumn column = layout.columns().get(index);
    Chosen chosen = new Chosen();
    for (int i = 0; i < inOrder.size(); i++) {
      int row = inOrder.get(i);
      if (column.holdsAt(rows.at(row))) {
        held.set(row);
        if (rows.level(index, row) != LogRows.NONE) {
          used.set(row);
          chosen.add(row);
        }
      }
    }
    return chosen;
  }

  private Series series(int index, Chosen chosen) {
    LogLayout.ValueColumn column = layout.columns().get(index);
    return new Series(
        name,
        column.column(),
        column.what(),
        column.item(),
        column.lots(),
        column.placeId(),
        column.seat(),
        layout.instrument(),
        column.unit(),
        precision,
        new LoggedSamples(name, rows, index, chosen, correction));
  }

  private void tell(int row, BitSet held, long last) {
    if (!held.get(row)) {
      Message expected =
          say("reading.log.held-time", "a time that a \"from\" and \"until\" of logs.json holds");
      add("row outside", Severity.NOTE, row, Message.of(shown(row, 0)), expected);
    }
    if (rows.at(row) + correction > last) {
      Message until =
          say("reading.log.until", "a time up to the end of the day behind the folder's");
      add("future time", Severity.ASK, row, Message.of(shown(row, correction)), until);
    }
  }

  private void corrected(LogLayout.Correction by, Chosen inOrder) {
    int first = inOrder.get(0);
    int last = inOrder.get(inOrder.size() - 1);
    Message found =
        say(
            "reading.log.corrected",
            "{0} to {1}, read as {2} to {3} because {4}",
            shown(first, 0),
            shown(last, 0),
            shown(first, correction),
            shown(last, correction),
            by.because());
    add(
        "clock offset",
        Severity.NOTE,
        first,
        found,
        say("reading.log.right-clock", "a clock that goes right; {0} corrects it", by.place()));
  }

  private String shown(int row, long shift) {
    return WallClock.shown(layout.time().clock(), rows.at(row) + shift);
  }

  private void add(String rule, Severity severity, int row, Message found, Message expected) {
    faults.add(rule, severity, rows.line(row), layout.time().column(), found, expected);
  }
}

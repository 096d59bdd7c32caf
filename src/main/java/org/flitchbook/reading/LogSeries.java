package org.flitchbook.reading;

import static org.flitchbook.message.Message.say;

import java.time.Instant;
import java.time.ZoneOffset;
import java.util.BitSet;
import java.util.List;
import java.util.stream.IntStream;
import org.flitchbook.input.Severity;
import org.flitchbook.message.Message;

/**
 * Makes a series of each column of one log, and reports the rows that none of them took.
 *
 * @param inOrder the rows that can be used, in the order of time
 * @param used those that a series took, and {@code held} those of whose time a column holds
 */
record LogSeries(ReadLog log, Chosen inOrder, BitSet used, BitSet held) {

  LogSeries(ReadLog log, Chosen inOrder) {
    this(log, inOrder, new BitSet(), new BitSet());
  }

  /**
   * The series.
   *
   * @param last the last time that the log can have
   */
  List<Series> make(Instant last) {
    List<LogsFile.ValueColumn> columns = log.layout().columns();
    List<Series> series =
        IntStream.range(0, columns.size())
            .mapToObj(index -> series(columns.get(index), index))
            .toList();
    for (int i = 0; i < inOrder.size(); i++) {
      check(inOrder.get(i), last.toEpochMilli());
    }
    if (inOrder.size() > 0 && log.time().offset().isPresent()) {
      corrected();
    }
    if (inOrder.size() > 0 && log.clock().isLocal()) {
      log.time().columns().all().forEach(this::zone);
    }
    return series;
  }

  /** An offset that the heading of the time names against the zone that is stated. */
  private void zone(String word) {
    IntStream.of(0, inOrder.size() - 1)
        .map(inOrder::get)
        .filter(row -> ZoneWord.in(word).filter(named -> !named.equals(offset(row))).isPresent())
        .limit(1)
        .forEach(
            row ->
                log.add(
                    "zone",
                    Severity.ASK,
                    row,
                    say("reading.log.zone-in", "{0} in \"{1}\"", ZoneWord.in(word).get(), word),
                    say(
                        "reading.log.zone-stated",
                        "{0} as {1} in logs.json has it then",
                        offset(row),
                        log.clock().zone())));
  }

  private ZoneOffset offset(int row) {
    return log.clock().zone().getRules().getOffset(Instant.ofEpochMilli(log.at(row)));
  }

  private Series series(LogsFile.ValueColumn column, int index) {
    Samples samples = new Samples(List.of(new Samples.Source(log, index, log.correction())));
    for (int i = 0; i < inOrder.size(); i++) {
      int row = inOrder.get(i);
      if (column.holdsAt(log.at(row))) {
        held.set(row);
        if (log.rows().level(index, row) != LogRows.NONE) {
          used.set(row);
          samples.add(0, row);
        } else {
          samples.addSilent(row);
        }
      }
    }
    silent(column, samples);
    return column.series().with(log.name(), log.precision(), samples);
  }

  /** Of a lot's probe that gave no reading the lot itself knows when it should have. */
  private void silent(LogsFile.ValueColumn column, Samples samples) {
    int silent = samples.silent().size();
    if (samples.size() == 0 && silent > 0 && !column.series().place().isEmpty()) {
      log.faults()
          .add(
              "place without a reading",
              Severity.STOP,
              log.rows().line(samples.silent().get(0)),
              column.column(),
              say("reading.log.no-number", "no reading in {0} rows", silent),
              say("reading.log.every-place", "readings of every place that logs.json names"));
    }
  }

  private void check(int row, long last) {
    if (!held.get(row)) {
      Message expected =
          say("reading.log.held-time", "a time that a \"from\" and \"until\" of logs.json holds");
      log.add("row outside", Severity.NOTE, row, Message.of(shown(row, 0)), expected);
    }
    if (log.at(row) + log.correction() > last) {
      Message found = Message.of(shown(row, log.correction()));
      Message until =
          say("reading.log.until", "a time up to the end of the day behind the folder's");
      log.add("future time", Severity.ASK, row, found, until);
    }
  }

  private void corrected() {
    int first = inOrder.get(0);
    int last = inOrder.get(inOrder.size() - 1);
    Message found =
        say(
            "reading.log.corrected",
            "{0} to {1}, read as {2} to {3} because {4}",
            shown(first, 0),
            shown(last, 0),
            shown(first, log.correction()),
            shown(last, log.correction()),
            log.time().because().orElse(""));
    Message expected =
        say(
            "reading.log.right-clock",
            "a clock that goes right; {0} corrects it",
            log.time().object().place("offset"));
    log.add("clock offset", Severity.NOTE, first, found, expected);
  }

  private String shown(int row, long shift) {
    return log.clock().onTheClock(log.at(row) + shift);
  }
}

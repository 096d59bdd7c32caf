package org.flitchbook.lot;

import org.flitchbook.input.Place;
import org.flitchbook.measure.Unit;
import org.flitchbook.practice.Practice;
import org.flitchbook.reading.Series;
import org.flitchbook.sheet.What;

/**
 * What all log readings of a track have in common.
 *
 * @param origin the log's file and column; where no log was kept, the first entry
 * @param instrument empty where no log was kept, as is the room
 * @param precision in ms, how late a reading can have been after its written time
 * @param interval in ms, the usual time between readings; 0 where no log was kept
 */
record Probe(
    What what,
    String called,
    Place origin,
    String instrument,
    String room,
    ProbedPiece piece,
    Unit unit,
    Spread spread,
    long precision,
    long interval,
    long longestStep) {

  /** How far the true value may lie above and below a reading, in steps of a level. */
  record Spread(long up, long down) {}

  /**
   * @param file the log of the first reading that counts
   */
  static Probe of(Series series, String file, ProbedPiece piece, Spread spread, Practice.Gap gap) {
    long interval = series.samples().interval(gap);
    return new Probe(
        series.what(),
        series.called(),
        new Place(file, 0, series.column()),
        series.instrument(),
        series.place(),
        piece,
        series.unit(),
        spread,
        series.precisionMillis(),
        interval,
        gap.longestStep(interval));
  }

  static Probe ofHand(What what, HandReading first, ProbedPiece piece, Practice.Gap gap) {
    return new Probe(
        what,
        "hand",
        first.entry().place(),
        "",
        "",
        piece,
        first.entry().amount().unit(),
        new Spread(0, 0),
        0,
        0,
        gap.longestStep(0));
  }
}

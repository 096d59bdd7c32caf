package org.flitchbook.reading;

import java.util.List;
import java.util.Optional;
import org.flitchbook.measure.Unit;
import org.flitchbook.sheet.What;

/**
 * One column of a probe log.
 *
 * @param file the log's name within the book
 * @param item the probe
 * @param lots the lots that it was stated for; empty where it is a place's
 * @param place the place that it was stated for; empty where it is a lot's
 * @param seat the piece that the probe sat in, where it is stated
 * @param continues the probe that was taken out where this one was put in; empty where none is
 *     stated
 * @param unit as the log has it: °C, °F or %
 * @param precisionMillis how late a reading can have been after its written time: 0, or 60,000
 *     where the log writes minutes only
 */
public record Series(
    String file,
    String column,
    What what,
    String item,
    List<String> lots,
    String place,
    Optional<Seat> seat,
    String continues,
    String instrument,
    Unit unit,
    long precisionMillis,
    Samples samples) {

  public Series {
    lots = List.copyOf(lots);
  }

  /** How the series is called in a record: its probe, or its column where no probe is named. */
  public String called() {
    return item.isEmpty() ? column : item;
  }

  /** The same column, as read from one log or several. */
  Series with(String file, long precisionMillis, Samples samples) {
    return new Series(
        file,
        column,
        what,
        item,
        lots,
        place,
        seat,
        continues,
        instrument,
        unit,
        precisionMillis,
        samples);
  }
}

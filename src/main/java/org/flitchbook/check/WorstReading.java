package org.flitchbook.check;

import static org.flitchbook.message.Message.say;

import org.flitchbook.input.Place;
import org.flitchbook.lot.Track;
import org.flitchbook.measure.Quantity;
import org.flitchbook.message.Argument;
import org.flitchbook.message.Message;
import org.flitchbook.message.Time;
import org.flitchbook.sums.Shift;

/**
 * A reading with its error counted against the lot.
 *
 * @param ceiling whether it is held against a ceiling, so that the error is added
 */
record WorstReading(JudgedLot judged, Track track, int index, boolean ceiling) {

  /** As it was written. */
  Quantity value() {
    return judged.level(track, index);
  }

  private Quantity error() {
    return judged.error(track, index, ceiling ? Shift.UP : Shift.DOWN);
  }

  Quantity worst() {
    Quantity value = value();
    return new Quantity(
        ceiling ? value.value().plus(error().value()) : value.value().minus(error().value()),
        value.unit());
  }

  Measured measured(Argument quantity, Quantity limit) {
    return Measured.of(quantity, value(), ceiling, limit).less(error());
  }

  /** {@code P1 at 14:05: 150.3 °F − 0.6 °F = 149.7 °F}. */
  Message formula(Time when) {
    Message read = say("check.reading.at", "{0} at {1}", JudgedLot.probe(track), when);
    return ceiling
        ? say("check.reading.more", "{0}: {1} + {2} = {3}", read, value(), error(), worst())
        : say("check.reading.less", "{0}: {1} − {2} = {3}", read, value(), error(), worst());
  }

  Place place() {
    return track.place(index);
  }
}

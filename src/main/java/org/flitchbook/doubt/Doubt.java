package org.flitchbook.doubt;

import java.time.Instant;
import java.util.Optional;
import org.flitchbook.input.Place;
import org.flitchbook.input.Stretch;
import org.flitchbook.lot.Track;
import org.flitchbook.message.Message;

/**
 * What a rule finds.
 *
 * @param remedy what to do about it
 * @param stretch the readings that it is about, where it is about some of a log's and not about all
 */
record Doubt(
    Place place, Message found, Message expected, Message remedy, Optional<Stretch> stretch) {

  Doubt(Place place, Message found, Message expected, Message remedy) {
    this(place, found, expected, remedy, Optional.empty());
  }

  Doubt at(Place other) {
    return new Doubt(other, found, expected, remedy, stretch);
  }

  /** About the readings from one time to another, both counted. */
  Doubt over(Track track, long from, long until, Stretch.Standing standing) {
    Stretch readings =
        new Stretch(
            track.origin(), Instant.ofEpochMilli(from), Instant.ofEpochMilli(until), standing);
    return new Doubt(place, found, expected, remedy, Optional.of(readings));
  }

  /** The same, but about readings of these levels alone, both counted. */
  Doubt ofLevels(long least, long most) {
    return new Doubt(
        place, found, expected, remedy, stretch.map(each -> each.ofLevels(least, most)));
  }

  /** About a time in which a log was silent; hand readings alone have no such time. */
  Doubt silent(Track track, long from, long until) {
    return track.interval() == 0
        ? this
        : over(track, from, Math.max(from, until), Stretch.Standing.SILENCE);
  }
}

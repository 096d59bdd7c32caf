package org.flitchbook.lot;

import java.util.List;
import java.util.Optional;
import org.flitchbook.reading.Entry;
import org.flitchbook.reading.Moment;
import org.flitchbook.sheet.Step;

/**
 * A lot's passage through one step.
 *
 * @param into the first entry that says it went in
 * @param out the last entry that says it came out; empty while it is in, or where nobody wrote it
 * @param visits the places it lay in, in the order of time
 */
public record Stay(Step step, Entry into, Optional<Entry> out, List<Visit> visits) {

  public Stay {
    visits = List.copyOf(visits);
  }

  /**
   * Some time in one place.
   *
   * @param until when it left for another place or came out; empty while it is there
   */
  public record Visit(String place, Moment from, Optional<Moment> until) {

    boolean holds(long atMillis) {
      return atMillis >= from.earliest().toEpochMilli()
          && until.map(end -> atMillis <= end.latest().toEpochMilli()).orElse(true);
    }
  }
}

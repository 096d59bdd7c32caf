package org.flitchbook.doubt;

import java.util.List;
import java.util.Optional;
import org.flitchbook.input.Place;
import org.flitchbook.message.Message;

/** What bears on one fault, and so can bear an explanation of it out. */
interface Bearing {

  /** Why what an explanation names does not bear it out; empty where it does. */
  Optional<Message> lacks(List<Place> evidence);

  /** What would. */
  Message counts();
}

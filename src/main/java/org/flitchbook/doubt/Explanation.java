package org.flitchbook.doubt;

import java.time.Duration;
import org.flitchbook.json.Choice;

/**
 * What a person says of a fault, with what else it rests on. It names a fault that is on file, was
 * written after what it is about, and does not explain a stop away.
 *
 * @param near how far a reading may lie in time from those that it is compared with
 * @param within how soon after they began readings must be confirmed: later on, a core is like its
 *     air
 */
@Choice("explanation")
record Explanation(Duration near, Duration within) implements Rule.Numbers {}

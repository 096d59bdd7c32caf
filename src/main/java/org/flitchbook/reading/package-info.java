/**
 * Turns named bytes of sheets and probe logs into readings with unit, time, instrument and origin.
 */
@NullMarked
@Floor(
    name = "reading",
    floor = 4,
    mayImport = {"message", "input", "measure", "json", "sheet", "table", "practice"},
    door = "Readings")
package org.flitchbook.reading;

import org.flitchbook.Floor;
import org.jspecify.annotations.NullMarked;

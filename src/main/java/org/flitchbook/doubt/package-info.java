/** Finds the readings that may not be believed, by named rules whose numbers are data. */
@NullMarked
@Floor(
    name = "doubt",
    floor = 5,
    mayImport = {"message", "input", "measure", "json", "sheet", "sums", "plan", "reading", "lot"},
    door = "Doubts")
package org.flitchbook.doubt;

import org.flitchbook.Floor;
import org.jspecify.annotations.NullMarked;

/** Finds the readings that may not be believed, by named rules whose numbers are data. */
@NullMarked
@Floor(
    name = "doubt",
    floor = 6,
    mayImport = {
      "message",
      "input",
      "measure",
      "json",
      "sheet",
      "sums",
      "practice",
      "plan",
      "reading",
      "lot"
    },
    door = "Doubts")
package org.flitchbook.doubt;

import org.flitchbook.Floor;
import org.jspecify.annotations.NullMarked;

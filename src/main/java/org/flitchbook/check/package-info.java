/** Judges lots against the limits of the plan in force, and gives every limit a verdict. */
@NullMarked
@Floor(
    name = "check",
    floor = 6,
    mayImport = {
      "message",
      "input",
      "measure",
      "sheet",
      "sums",
      "practice",
      "words",
      "plan",
      "reading",
      "lot"
    },
    door = "Checks")
package org.flitchbook.check;

import org.flitchbook.Floor;
import org.jspecify.annotations.NullMarked;

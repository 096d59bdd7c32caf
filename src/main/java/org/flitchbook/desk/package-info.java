/** Carries out the jobs that a person asks for by joining the rooms below. */
@NullMarked
@Floor(
    name = "desk",
    floor = 6,
    mayImport = {
      "fault",
      "measure",
      "table",
      "json",
      "plan",
      "reading",
      "sums",
      "document",
      "lot",
      "doubt",
      "check",
      "record",
      "pdf"
    },
    door = "Desk")
package org.flitchbook.desk;

import org.flitchbook.Floor;
import org.jspecify.annotations.NullMarked;

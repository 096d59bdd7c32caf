/** Composes findings into documents and into the JSON of a record. */
@NullMarked
@Floor(
    name = "record",
    floor = 5,
    mayImport = {
      "fault",
      "measure",
      "json",
      "plan",
      "reading",
      "sums",
      "document",
      "lot",
      "doubt",
      "check"
    },
    door = "Records")
package org.flitchbook.record;

import org.flitchbook.Floor;
import org.jspecify.annotations.NullMarked;

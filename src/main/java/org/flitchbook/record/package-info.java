/** Composes findings into documents and into the JSON of a record. */
@NullMarked
@Floor(
    name = "record",
    floor = 7,
    mayImport = {
      "message",
      "input",
      "measure",
      "sheet",
      "sums",
      "practice",
      "document",
      "plan",
      "reading",
      "lot",
      "check",
      "json",
      "words",
      "change"
    },
    door = "Records")
package org.flitchbook.record;

import org.flitchbook.Floor;
import org.jspecify.annotations.NullMarked;

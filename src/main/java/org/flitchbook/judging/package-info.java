/** Judges the lots of a book by its plan. */
@NullMarked
@Floor(
    name = "judging",
    floor = 8,
    mayImport = {
      "message",
      "input",
      "job",
      "json",
      "words",
      "document",
      "plan",
      "reading",
      "book",
      "lot",
      "doubt",
      "check",
      "record"
    },
    door = "Judging")
package org.flitchbook.judging;

import org.flitchbook.Floor;
import org.jspecify.annotations.NullMarked;

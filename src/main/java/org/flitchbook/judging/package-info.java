/** Judges the lots of a book by its plan. */
@NullMarked
@Floor(
    name = "judging",
    floor = 9,
    mayImport = {
      "message",
      "input",
      "job",
      "sheet",
      "json",
      "practice",
      "words",
      "document",
      "plan",
      "reading",
      "book",
      "lot",
      "check",
      "doubt",
      "account",
      "archive",
      "record"
    },
    door = "Judging")
package org.flitchbook.judging;

import org.flitchbook.Floor;
import org.jspecify.annotations.NullMarked;

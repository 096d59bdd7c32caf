/** Closes days: writes their records into the book, with a line in its ledger, or elsewhere. */
@NullMarked
@Floor(
    name = "closing",
    floor = 11,
    mayImport = {
      "message",
      "input",
      "measure",
      "job",
      "sheet",
      "change",
      "ledger",
      "words",
      "document",
      "plan",
      "reading",
      "book",
      "lot",
      "pdf",
      "check",
      "archive",
      "record",
      "judging",
      "evidence"
    },
    door = "Closing")
package org.flitchbook.closing;

import org.flitchbook.Floor;
import org.jspecify.annotations.NullMarked;

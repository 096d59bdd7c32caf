/** Closes days: writes their records into the book, with a line in its ledger, or elsewhere. */
@NullMarked
@Floor(
    name = "closing",
    floor = 10,
    mayImport = {
      "message",
      "input",
      "measure",
      "job",
      "words",
      "document",
      "sheet",
      "change",
      "plan",
      "reading",
      "book",
      "lot",
      "check",
      "record",
      "pdf",
      "ledger",
      "judging",
      "archive",
      "evidence"
    },
    door = "Closing")
package org.flitchbook.closing;

import org.flitchbook.Floor;
import org.jspecify.annotations.NullMarked;

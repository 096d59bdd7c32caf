/** Carries out the jobs that a person asks for by joining the rooms below. */
@NullMarked
@Floor(
    name = "desk",
    floor = 9,
    mayImport = {
      "message",
      "input",
      "measure",
      "words",
      "document",
      "practice",
      "plan",
      "reading",
      "lot",
      "check",
      "record",
      "pdf",
      "sheet",
      "ledger",
      "change",
      "seal",
      "account",
      "job",
      "book",
      "judging",
      "archive",
      "evidence"
    },
    door = "Desk")
package org.flitchbook.desk;

import org.flitchbook.Floor;
import org.jspecify.annotations.NullMarked;

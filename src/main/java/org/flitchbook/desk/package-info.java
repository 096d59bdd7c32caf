/** Carries out the jobs that a person asks for by joining the rooms below. */
@NullMarked
@Floor(
    name = "desk",
    floor = 9,
    mayImport = {
      "message",
      "input",
      "measure",
      "json",
      "words",
      "document",
      "plan",
      "reading",
      "lot",
      "doubt",
      "check",
      "account",
      "record",
      "pdf",
      "sheet",
      "ledger",
      "sign",
      "change",
      "look"
    },
    door = "Desk")
package org.flitchbook.desk;

import org.flitchbook.Floor;
import org.jspecify.annotations.NullMarked;

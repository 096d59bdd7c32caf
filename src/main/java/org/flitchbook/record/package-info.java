/** Composes findings into documents and into the JSON of a record. */
@NullMarked
@Floor(
    name = "record",
    floor = 8,
    mayImport = {
      "message",
      "input",
      "measure",
      "json",
      "sheet",
      "sums",
      "change",
      "words",
      "document",
      "plan",
      "reading",
      "lot",
      "check",
      "account",
      "archive",
      "qrcode",
      "ledger"
    },
    door = "Records")
package org.flitchbook.record;

import org.flitchbook.Floor;
import org.jspecify.annotations.NullMarked;

/** Composes findings into documents and into the JSON of a record. */
@NullMarked
@Floor(
    name = "record",
    floor = 8,
    mayImport = {
      "message",
      "input",
      "measure",
      "qrcode",
      "sheet",
      "sums",
      "change",
      "ledger",
      "words",
      "document",
      "plan",
      "reading",
      "lot",
      "check",
      "account",
      "archive"
    },
    door = "Records")
package org.flitchbook.record;

import org.flitchbook.Floor;
import org.jspecify.annotations.NullMarked;

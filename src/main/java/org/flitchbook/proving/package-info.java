/** Proves records and books: what was changed, who signed, and what is found again. */
@NullMarked
@Floor(
    name = "proving",
    floor = 11,
    mayImport = {
      "message",
      "input",
      "qrcode",
      "sign",
      "job",
      "json",
      "disk",
      "ledger",
      "words",
      "document",
      "plan",
      "book",
      "seal",
      "archive",
      "record",
      "judging",
      "evidence"
    },
    door = "Proving")
package org.flitchbook.proving;

import org.flitchbook.Floor;
import org.jspecify.annotations.NullMarked;

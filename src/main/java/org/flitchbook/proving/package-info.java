/** Proves records and books: what was changed, who signed, and what is found again. */
@NullMarked
@Floor(
    name = "proving",
    floor = 10,
    mayImport = {
      "message",
      "input",
      "job",
      "json",
      "disk",
      "words",
      "document",
      "plan",
      "book",
      "record",
      "pdf",
      "sign",
      "ledger",
      "judging",
      "archive",
      "evidence"
    },
    door = "Proving")
package org.flitchbook.proving;

import org.flitchbook.Floor;
import org.jspecify.annotations.NullMarked;

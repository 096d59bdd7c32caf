/** Keeps the records of a book: their folders, the signatures in them, and the ledger of both. */
@NullMarked
@Floor(
    name = "archive",
    floor = 7,
    mayImport = {
      "message", "input", "sign", "job", "json", "disk", "ledger", "plan", "book", "seal"
    },
    door = "LedgerFile")
package org.flitchbook.archive;

import org.flitchbook.Floor;
import org.jspecify.annotations.NullMarked;

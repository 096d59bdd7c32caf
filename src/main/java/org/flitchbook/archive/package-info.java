/** Keeps the records of a book: their folders, the signatures in them, and the ledger of both. */
@NullMarked
@Floor(
    name = "archive",
    floor = 8,
    mayImport = {
      "message", "input", "job", "json", "disk", "plan", "book", "pdf", "sign", "ledger"
    },
    door = "LedgerFile")
package org.flitchbook.archive;

import org.flitchbook.Floor;
import org.jspecify.annotations.NullMarked;

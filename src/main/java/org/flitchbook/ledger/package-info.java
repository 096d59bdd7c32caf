/** Keeps an append-only chain of what was done with a book's records. */
@NullMarked
@Floor(
    name = "ledger",
    floor = 3,
    mayImport = {"message", "input", "json"},
    door = "Ledger")
package org.flitchbook.ledger;

import org.flitchbook.Floor;
import org.jspecify.annotations.NullMarked;

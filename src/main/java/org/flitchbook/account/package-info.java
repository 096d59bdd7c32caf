/** Adds up what a record says about a lot beside its limits, and follows codes through a book. */
@NullMarked
@Floor(
    name = "account",
    floor = 7,
    mayImport = {"message", "input", "measure", "sheet", "sums", "plan", "reading", "lot", "check"},
    door = "Accounts")
package org.flitchbook.account;

import org.flitchbook.Floor;
import org.jspecify.annotations.NullMarked;

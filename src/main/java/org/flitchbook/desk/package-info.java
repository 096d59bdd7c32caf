/** Carries out the jobs that a person asks for by joining the rooms below. */
@NullMarked
@Floor(
    name = "desk",
    floor = 9,
    mayImport = {"message", "input", "measure", "json", "words", "document", "practice", "plan", "reading", "lot", "doubt", "check", "record", "pdf", "sheet", "ledger", "sign", "change", "look", "seal", "account"},
    door = "Desk")
package org.flitchbook.desk;

import org.flitchbook.Floor;
import org.jspecify.annotations.NullMarked;

/** Picks the files that a record carries, puts them in, and takes them out to judge them again. */
@NullMarked
@Floor(
    name = "evidence",
    floor = 9,
    mayImport = {
      "message", "input", "words", "job", "json", "sheet", "plan", "reading", "book", "lot",
      "check", "record", "pdf", "judging"
    },
    door = "EvidenceSelection")
package org.flitchbook.evidence;

import org.flitchbook.Floor;
import org.jspecify.annotations.NullMarked;

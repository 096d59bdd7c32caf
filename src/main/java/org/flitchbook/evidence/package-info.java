/** Picks the files that a record carries, puts them in, and takes them out to judge them again. */
@NullMarked
@Floor(
    name = "evidence",
    floor = 10,
    mayImport = {
      "message",
      "input",
      "job",
      "json",
      "sheet",
      "practice",
      "words",
      "plan",
      "reading",
      "book",
      "document",
      "lot",
      "pdf",
      "check",
      "seal",
      "record",
      "judging"
    },
    door = "EvidenceSelection")
package org.flitchbook.evidence;

import org.flitchbook.Floor;
import org.jspecify.annotations.NullMarked;

/** Signs records for people. */
@NullMarked
@Floor(
    name = "signing",
    floor = 10,
    mayImport = {
      "message",
      "input",
      "job",
      "disk",
      "words",
      "sheet",
      "plan",
      "reading",
      "book",
      "lot",
      "check",
      "record",
      "pdf",
      "sign",
      "ledger",
      "keys",
      "judging",
      "archive",
      "evidence"
    },
    door = "RecordSigning")
package org.flitchbook.signing;

import org.flitchbook.Floor;
import org.jspecify.annotations.NullMarked;

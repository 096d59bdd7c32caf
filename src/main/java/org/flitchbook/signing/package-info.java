/** Signs records for people. */
@NullMarked
@Floor(
    name = "signing",
    floor = 11,
    mayImport = {
      "message",
      "input",
      "sign",
      "job",
      "sheet",
      "disk",
      "ledger",
      "words",
      "plan",
      "reading",
      "book",
      "lot",
      "check",
      "account",
      "keys",
      "seal",
      "archive",
      "record",
      "judging",
      "evidence"
    },
    door = "RecordSigning")
package org.flitchbook.signing;

import org.flitchbook.Floor;
import org.jspecify.annotations.NullMarked;

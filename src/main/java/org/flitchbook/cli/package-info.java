/** Is the door for people: arguments in, text and an exit status out. */
@NullMarked
@Floor(
    name = "cli",
    floor = 12,
    mayImport = {
      "message",
      "input",
      "job",
      "json",
      "document",
      "book",
      "look",
      "keys",
      "planning",
      "judging",
      "tracing",
      "closing",
      "proving",
      "signing"
    },
    door = "Main")
package org.flitchbook.cli;

import org.flitchbook.Floor;
import org.jspecify.annotations.NullMarked;

/** Is the door for people: arguments in, text and an exit status out. */
@NullMarked
@Floor(
    name = "cli",
    floor = 10,
    mayImport = {
      "message",
      "input",
      "job",
      "json",
      "look",
      "book",
      "planning",
      "judging",
      "keys",
      "tracing",
      "closing",
      "signing",
      "proving"
    },
    door = "Main")
package org.flitchbook.cli;

import org.flitchbook.Floor;
import org.jspecify.annotations.NullMarked;

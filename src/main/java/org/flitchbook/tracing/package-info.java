/** Follows a code through a book: what it touched, and what touched it. */
@NullMarked
@Floor(
    name = "tracing",
    floor = 10,
    mayImport = {"message", "job", "json", "document", "book", "record", "judging"},
    door = "Tracing")
package org.flitchbook.tracing;

import org.flitchbook.Floor;
import org.jspecify.annotations.NullMarked;

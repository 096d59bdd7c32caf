/**
 * Says what is in a probe log of which nothing is known, and proposes how to read it, by the clocks
 * and numbers of the reader of logs.
 */
@NullMarked
@Floor(
    name = "look",
    floor = 5,
    mayImport = {"message", "input", "measure", "json", "sheet", "table", "practice", "reading"},
    door = "Look")
package org.flitchbook.look;

import org.flitchbook.Floor;
import org.jspecify.annotations.NullMarked;

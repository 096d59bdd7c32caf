/** Joins readings into lots with their steps, places and timelines. */
@NullMarked
@Floor(
    name = "lot",
    floor = 5,
    mayImport = {"message", "input", "measure", "sheet", "sums", "practice", "plan", "reading"},
    door = "Lots")
package org.flitchbook.lot;

import org.flitchbook.Floor;
import org.jspecify.annotations.NullMarked;

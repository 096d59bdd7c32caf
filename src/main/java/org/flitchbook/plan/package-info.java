/** Reads a HACCP plan and its rule sets, and refuses one that is not sound. */
@NullMarked
@Floor(
    name = "plan",
    floor = 4,
    mayImport = {"message", "input", "measure", "json", "sheet", "practice", "words"},
    door = "Plans")
package org.flitchbook.plan;

import org.flitchbook.Floor;
import org.jspecify.annotations.NullMarked;

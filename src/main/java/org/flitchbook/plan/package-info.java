/** Reads a HACCP plan and its rule sets, and refuses one that is not sound. */
@NullMarked
@Floor(
    name = "plan",
    floor = 3,
    mayImport = {"input", "measure", "json", "words", "sheet"},
    door = "Plans")
package org.flitchbook.plan;

import org.flitchbook.Floor;
import org.jspecify.annotations.NullMarked;

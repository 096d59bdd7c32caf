/** Reads a HACCP plan and its rule sets, and refuses one that is not sound. */
@NullMarked
@Floor(
    name = "plan",
    floor = 2,
    mayImport = {"fault", "measure", "json"},
    door = "Plans")
package org.flitchbook.plan;

import org.flitchbook.Floor;
import org.jspecify.annotations.NullMarked;

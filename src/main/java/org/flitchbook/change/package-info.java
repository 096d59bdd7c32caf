/** Lists row by row and key by key what changed between two sets of files. */
@NullMarked
@Floor(
    name = "change",
    floor = 3,
    mayImport = {"message", "input", "json", "sheet", "table"},
    door = "Changes")
package org.flitchbook.change;

import org.flitchbook.Floor;
import org.jspecify.annotations.NullMarked;

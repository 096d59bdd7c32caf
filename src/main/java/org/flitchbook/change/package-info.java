/** Lists row by row and key by key what changed between two sets of files. */
@NullMarked
@Floor(
    name = "change",
    floor = 4,
    mayImport = {"message", "input", "table", "json", "sheet"},
    door = "Changes")
package org.flitchbook.change;

import org.flitchbook.Floor;
import org.jspecify.annotations.NullMarked;

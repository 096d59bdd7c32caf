/** Turns CSV text into rows that know the line and the column they came from. */
@NullMarked
@Floor(
    name = "table",
    floor = 2,
    mayImport = {"message", "input"},
    door = "Tables")
package org.flitchbook.table;

import org.flitchbook.Floor;
import org.jspecify.annotations.NullMarked;

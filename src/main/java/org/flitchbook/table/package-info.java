/** Turns CSV text into rows that know the line and the column they came from. */
@NullMarked
@Floor(
    name = "table",
    floor = 1,
    mayImport = {"input"},
    door = "Tables")
package org.flitchbook.table;

import org.flitchbook.Floor;
import org.jspecify.annotations.NullMarked;

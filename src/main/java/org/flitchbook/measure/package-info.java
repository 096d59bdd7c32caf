/** Holds values with their units, converts between units exactly and compares without rounding. */
@NullMarked
@Floor(
    name = "measure",
    floor = 1,
    mayImport = {"message"},
    door = "Unit")
package org.flitchbook.measure;

import org.flitchbook.Floor;
import org.jspecify.annotations.NullMarked;

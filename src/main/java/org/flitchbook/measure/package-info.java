/** Holds values with their units, converts between units exactly and compares without rounding. */
@NullMarked
@Floor(
    name = "measure",
    floor = 2,
    mayImport = {"message", "input"},
    door = "Unit")
package org.flitchbook.measure;

import org.flitchbook.Floor;
import org.jspecify.annotations.NullMarked;

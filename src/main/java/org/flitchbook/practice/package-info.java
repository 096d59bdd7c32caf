/** Holds the numbers of common practice that decide beside limits and rules for dirty data. */
@NullMarked
@Floor(
    name = "practice",
    floor = 3,
    mayImport = {"message", "input", "measure", "json"},
    door = "Practice")
package org.flitchbook.practice;

import org.flitchbook.Floor;
import org.jspecify.annotations.NullMarked;

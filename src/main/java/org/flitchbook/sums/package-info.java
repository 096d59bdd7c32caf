/** Does the arithmetic of curing, heating and cooling as pure functions. */
@NullMarked
@Floor(
    name = "sums",
    floor = 2,
    mayImport = {"message", "measure"},
    door = "Sums")
package org.flitchbook.sums;

import org.flitchbook.Floor;
import org.jspecify.annotations.NullMarked;

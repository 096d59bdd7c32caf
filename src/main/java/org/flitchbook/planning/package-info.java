/** Checks plans. */
@NullMarked
@Floor(
    name = "planning",
    floor = 6,
    mayImport = {"message", "job", "plan", "practice", "book"},
    door = "PlanCheck")
package org.flitchbook.planning;

import org.flitchbook.Floor;
import org.jspecify.annotations.NullMarked;

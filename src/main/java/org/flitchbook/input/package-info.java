/** What was handed in: named bytes, places in them, and what is wrong with them. */
@NullMarked
@Floor(
    name = "input",
    floor = 1,
    mayImport = {"message"},
    door = "Fault")
package org.flitchbook.input;

import org.flitchbook.Floor;
import org.jspecify.annotations.NullMarked;

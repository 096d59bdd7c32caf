/** What every job of the program is given and gives back. */
@NullMarked
@Floor(
    name = "job",
    floor = 2,
    mayImport = {"message", "input"},
    door = "Session")
package org.flitchbook.job;

import org.flitchbook.Floor;
import org.jspecify.annotations.NullMarked;

/** Says what was found wrong, where it stands and what was expected. */
@NullMarked
@Floor(
    name = "fault",
    floor = 0,
    mayImport = {},
    door = "Fault")
package org.flitchbook.fault;

import org.flitchbook.Floor;
import org.jspecify.annotations.NullMarked;

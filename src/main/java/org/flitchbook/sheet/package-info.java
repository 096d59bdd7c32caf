/** The words of the sheets: which sheets and steps there are, and what an entry can be about. */
@NullMarked
@Floor(
    name = "sheet",
    floor = 2,
    mayImport = {"message", "measure"},
    door = "Sheet")
package org.flitchbook.sheet;

import org.flitchbook.Floor;
import org.jspecify.annotations.NullMarked;

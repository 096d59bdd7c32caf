/** Looks after the keys that people sign with. */
@NullMarked
@Floor(
    name = "keys",
    floor = 6,
    mayImport = {"message", "input", "sign", "job", "disk", "plan", "book"},
    door = "Keys")
package org.flitchbook.keys;

import org.flitchbook.Floor;
import org.jspecify.annotations.NullMarked;

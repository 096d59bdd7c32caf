/** Looks after the keys that people sign with. */
@NullMarked
@Floor(
    name = "keys",
    floor = 8,
    mayImport = {"message", "input", "job", "disk", "plan", "book", "sign"},
    door = "Keys")
package org.flitchbook.keys;

import org.flitchbook.Floor;
import org.jspecify.annotations.NullMarked;

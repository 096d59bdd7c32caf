/** Says what is in a probe log of which nothing is known, and proposes how to read it. */
@NullMarked
@Floor(
    name = "look",
    floor = 3,
    mayImport = {"message", "input", "table", "json"},
    door = "Look")
package org.flitchbook.look;

import org.flitchbook.Floor;
import org.jspecify.annotations.NullMarked;

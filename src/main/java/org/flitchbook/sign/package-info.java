/** Makes keys for people, signs bytes with them, and says what a signature shows. */
@NullMarked
@Floor(
    name = "sign",
    floor = 1,
    mayImport = {"message"},
    door = "Signing")
package org.flitchbook.sign;

import org.flitchbook.Floor;
import org.jspecify.annotations.NullMarked;

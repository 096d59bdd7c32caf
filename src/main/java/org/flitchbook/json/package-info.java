/** Reads JSON with the position of every value, and writes it with stable keys. */
@NullMarked
@Floor(
    name = "json",
    floor = 2,
    mayImport = {"message", "input", "measure"},
    door = "Json")
package org.flitchbook.json;

import org.flitchbook.Floor;
import org.jspecify.annotations.NullMarked;

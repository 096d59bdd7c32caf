/** The fixed wording of what is printed, by key, in the language of the plan. */
@NullMarked
@Floor(
    name = "words",
    floor = 3,
    mayImport = {"message", "input", "json"},
    door = "Words")
package org.flitchbook.words;

import org.flitchbook.Floor;
import org.jspecify.annotations.NullMarked;

/** What is said: a stable id, its English text and typed arguments, which become words in print. */
@NullMarked
@Floor(
    name = "message",
    floor = 0,
    mayImport = {},
    door = "Message")
package org.flitchbook.message;

import org.flitchbook.Floor;
import org.jspecify.annotations.NullMarked;

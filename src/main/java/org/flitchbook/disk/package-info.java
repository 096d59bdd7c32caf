/** Reads and writes files so that a power cut loses nothing and a refusal is said in words. */
@NullMarked
@Floor(
    name = "disk",
    floor = 3,
    mayImport = {"message", "job"},
    door = "Disk")
package org.flitchbook.disk;

import org.flitchbook.Floor;
import org.jspecify.annotations.NullMarked;

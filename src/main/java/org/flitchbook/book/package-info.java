/** Reads a book off the disk: its files as named bytes, and its plan with those it replaced. */
@NullMarked
@Floor(
    name = "book",
    floor = 5,
    mayImport = {"message", "input", "job", "disk", "words", "sheet", "plan"},
    door = "BookFolder")
package org.flitchbook.book;

import org.flitchbook.Floor;
import org.jspecify.annotations.NullMarked;

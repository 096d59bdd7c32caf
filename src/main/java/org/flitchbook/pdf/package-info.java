/**
 * Draws a document as tagged, archival PDF bytes, signs them, and finds what was changed in them.
 */
@NullMarked
@Floor(
    name = "pdf",
    floor = 7,
    mayImport = {"message", "words", "document"},
    door = "Pdf")
package org.flitchbook.pdf;

import org.flitchbook.Floor;
import org.jspecify.annotations.NullMarked;

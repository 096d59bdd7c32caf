/** Draws a document as tagged, archival PDF bytes, with fields to sign in. */
@NullMarked
@Floor(
    name = "pdf",
    floor = 5,
    mayImport = {"words", "document"},
    door = "Pdf")
package org.flitchbook.pdf;

import org.flitchbook.Floor;
import org.jspecify.annotations.NullMarked;

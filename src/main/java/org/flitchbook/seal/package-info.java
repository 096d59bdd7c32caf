/**
 * Signs printed PDF files, and reads what signatures, attachments and changes such a file holds.
 */
@NullMarked
@Floor(
    name = "seal",
    floor = 6,
    mayImport = {"message", "words", "pdf"},
    door = "PdfFile")
package org.flitchbook.seal;

import org.flitchbook.Floor;
import org.jspecify.annotations.NullMarked;

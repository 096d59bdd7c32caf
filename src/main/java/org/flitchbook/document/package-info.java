/**
 * Models a printed document of headings, paragraphs, tables, charts and signature boxes; knows
 * nothing of pork.
 */
@NullMarked
@Floor(
    name = "document",
    floor = 4,
    mayImport = {"message", "words"},
    door = "Document")
package org.flitchbook.document;

import org.flitchbook.Floor;
import org.jspecify.annotations.NullMarked;

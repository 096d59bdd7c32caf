/**
 * Flitchbook: checks the readings of dry-cured, smoked pork against the limits of a HACCP plan and
 * prints the record. Each package below is a room on a {@link org.flitchbook.Floor}.
 */
@NullMarked
package org.flitchbook;

import org.jspecify.annotations.NullMarked;

package org.flitchbook.pdf;

/** Whom a mark on paper belongs to: an element of the structure tree, or nobody. */
sealed interface Owner permits Element, Artifact {}

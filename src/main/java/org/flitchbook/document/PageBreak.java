package org.flitchbook.document;

/** What follows begins a new page. */
public record PageBreak() implements Block {}

package org.flitchbook.lot;

import org.flitchbook.reading.Entry;

/** An entry that another one replaced; it stays visible. */
public record Correction(Entry replaced, Entry by) {}

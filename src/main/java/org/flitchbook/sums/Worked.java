package org.flitchbook.sums;

import org.flitchbook.measure.Quantity;

/** A result with the sum that led to it, the numbers put in. */
public record Worked(Quantity value, String formula) {}

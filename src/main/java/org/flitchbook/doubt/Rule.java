package org.flitchbook.doubt;

import java.util.Optional;
import org.flitchbook.input.Severity;
import org.flitchbook.measure.Quantity;

/**
 * One rule for dirty data, as its data file states it.
 *
 * @param what to do about it, in one sentence
 * @param above the difference from which it speaks, where it has one
 */
public record Rule(
    String name, Severity severity, Optional<Quantity> above, String what, String source) {}

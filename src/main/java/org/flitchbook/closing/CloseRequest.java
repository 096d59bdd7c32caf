package org.flitchbook.closing;

import java.nio.file.Path;
import java.util.Optional;

/**
 * How a day is to be closed.
 *
 * @param out the folder to write to; empty: into the book, and its ledger
 * @param at the moment judged; empty: the later of the day's end and the last time read
 * @param by the initials of the one who closes
 * @param reason why a day that was closed is closed again
 */
public record CloseRequest(
    Optional<Path> out, Optional<String> at, Optional<String> by, Optional<String> reason) {}

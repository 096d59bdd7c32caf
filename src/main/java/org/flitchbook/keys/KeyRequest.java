package org.flitchbook.keys;

import java.nio.file.Path;

/**
 * Whose key is meant.
 *
 * @param book whose plan names the person
 * @param initials of the person
 * @param keys the folder of the keys, outside of the book
 */
public record KeyRequest(Path book, String initials, Path keys) {}

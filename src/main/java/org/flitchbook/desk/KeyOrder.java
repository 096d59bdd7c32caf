package org.flitchbook.desk;

import java.nio.file.Path;

/**
 * Whose key is meant.
 *
 * @param book whose plan names the person
 * @param initials of the person
 * @param keys the folder of the keys, outside of the book
 */
public record KeyOrder(Path book, String initials, Path keys) {}

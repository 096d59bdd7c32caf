package org.flitchbook.json;

/**
 * Where a value stands in the bytes of a document.
 *
 * @param name where its key begins, with the quote; of an item of a list, where it begins itself
 * @param from the first byte of the value
 * @param to the byte behind it
 */
public record Span(int name, int from, int to) {}

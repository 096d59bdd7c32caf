package org.flitchbook.record;

import java.util.Map;
import org.flitchbook.document.Document;

/**
 * What was found on the track of a code.
 *
 * @param document for people
 * @param json the same as a tree for JSON
 */
public record Traced(Document document, Map<String, Object> json) {}

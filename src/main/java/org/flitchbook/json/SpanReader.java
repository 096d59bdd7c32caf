package org.flitchbook.json;

import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import java.io.IOException;
import java.util.Map;
import java.util.TreeMap;

/** Finds where each value of a document begins and ends, by its path. */
final class SpanReader {

  private final JsonParser parser;
  private final Map<String, Span> spans = new TreeMap<>();

  SpanReader(JsonParser parser) {
    this.parser = parser;
  }

  Map<String, Span> read() throws IOException {
    parser.nextToken();
    value("", begin());
    return spans;
  }

  private int begin() {
    return Math.toIntExact(parser.currentTokenLocation().getByteOffset());
  }

  private void value(String path, int name) throws IOException {
    int from = begin();
    if (parser.currentToken() == JsonToken.START_OBJECT) {
      members(path);
    } else if (parser.currentToken() == JsonToken.START_ARRAY) {
      items(path);
    }
    // A text is only looked at up to its first quote until it is asked for.
    parser.finishToken();
    spans.put(
        path, new Span(name, from, Math.toIntExact(parser.currentLocation().getByteOffset())));
  }

  private void members(String path) throws IOException {
    while (parser.nextToken() != JsonToken.END_OBJECT) {
      int name = begin();
      String key = parser.currentName();
      parser.nextToken();
      value(path.isEmpty() ? key : path + "." + key, name);
    }
  }

  private void items(String path) throws IOException {
    for (int index = 0; parser.nextToken() != JsonToken.END_ARRAY; index++) {
      value(path + "[" + index + "]", begin());
    }
  }
}

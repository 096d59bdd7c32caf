package org.flitchbook.json;

import com.fasterxml.jackson.core.JsonParseException;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.core.exc.StreamConstraintsException;
import java.io.IOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.flitchbook.input.Place;

/**
 * Builds the tree of a document while keeping each value's line and path.
 *
 * @param spans takes where each value begins and ends, by its path
 */
record TreeReader(String name, JsonParser parser, Map<String, Json.Span> spans) {

  TreeReader(String name, JsonParser parser) {
    this(name, parser, new HashMap<>());
  }

  Node document() throws IOException {
    try {
      return root();
    } catch (StreamConstraintsException | NumberFormatException beyond) {
      throw new JsonParseException(
          parser,
          String.valueOf(beyond.getMessage()).startsWith("String")
              ? "a text of more than 100,000 letters"
              : "nesting or a value beyond what is read (1,000 deep)",
          beyond);
    }
  }

  private Node root() throws IOException {
    if (parser.nextToken() == null) {
      throw new JsonParseException(parser, "an empty file");
    }
    Node root = value("", begin());
    if (parser.nextToken() != null) {
      throw new JsonParseException(parser, "text behind the end of the document");
    }
    return root;
  }

  private int begin() {
    return Math.toIntExact(parser.currentTokenLocation().getByteOffset());
  }

  /** A value whose key, or which itself in a list, begins at that byte. */
  private Node value(String path, int key) throws IOException {
    int from = begin();
    Node value = value(new Place(name, parser.currentTokenLocation().getLineNr(), path));
    int to = Math.toIntExact(parser.currentLocation().getByteOffset());
    spans.put(path, new Json.Span(key, from, to));
    return value;
  }

  private Node value(Place place) throws IOException {
    JsonToken token = parser.currentToken();
    return switch (token) {
      case START_OBJECT -> object(place);
      case START_ARRAY -> items(place);
      case VALUE_STRING -> new Node.Text(place, parser.getText());
      case VALUE_NUMBER_INT, VALUE_NUMBER_FLOAT -> new Node.Num(place, parser.getDecimalValue());
      case VALUE_TRUE, VALUE_FALSE -> new Node.Bool(place, parser.getBooleanValue());
      case VALUE_NULL -> new Node.Nil(place);
      default -> throw new AssertionError("JSON token " + token);
    };
  }

  private Node object(Place place) throws IOException {
    Map<String, Node> members = new LinkedHashMap<>();
    while (parser.nextToken() != JsonToken.END_OBJECT) {
      int begin = begin();
      String key = parser.currentName();
      parser.nextToken();
      members.put(key, value(place.column().isEmpty() ? key : place.column() + "." + key, begin));
    }
    return new Node.Obj(place, members);
  }

  private Node items(Place place) throws IOException {
    List<Node> items = new ArrayList<>();
    while (parser.nextToken() != JsonToken.END_ARRAY) {
      items.add(value(place.column() + "[" + items.size() + "]", begin()));
    }
    return new Node.Items(place, items);
  }
}

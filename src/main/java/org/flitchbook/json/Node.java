package org.flitchbook.json;

import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import org.flitchbook.input.Place;

/** A value of a JSON document, with the line on which it begins and the path that leads to it. */
public sealed interface Node {

  Place place();

  /** For a diagnostic: the value as one would point at it. */
  String shown();

  record Text(Place place, String value) implements Node {
    @Override
    public String shown() {
      return "\"" + Shown.onOneLine(value) + "\"";
    }
  }

  record Num(Place place, BigDecimal value) implements Node {
    @Override
    public String shown() {
      return Shown.number(value);
    }
  }

  record Bool(Place place, boolean value) implements Node {
    @Override
    public String shown() {
      return String.valueOf(value);
    }
  }

  record Nil(Place place) implements Node {
    @Override
    public String shown() {
      return "null";
    }
  }

  record Items(Place place, List<Node> items) implements Node {
    public Items {
      items = List.copyOf(items);
    }

    @Override
    public String shown() {
      return "a list";
    }
  }

  /** Members in the order of the file. */
  record Obj(Place place, Map<String, Node> members) implements Node {
    @Override
    public String shown() {
      return "an object";
    }
  }
}

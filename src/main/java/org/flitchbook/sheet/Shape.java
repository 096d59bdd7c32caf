package org.flitchbook.sheet;

import java.util.List;
import java.util.Optional;
import org.flitchbook.measure.Dimension;

/** What the value of an entry must be. */
public enum Shape {
  /** An event: no value is needed; one that is written is kept as text. */
  EVENT,
  /** The item says what: an ingredient lot, a place, a customer. */
  ITEM,
  /** A word or a sentence. */
  WORDS,
  ON_OFF("on", "off"),
  SURFACE("tacky", "wet"),
  MASS(Dimension.MASS),
  TEMPERATURE(Dimension.TEMPERATURE),
  LENGTH(Dimension.LENGTH),
  SHARE(Dimension.SHARE),
  BARE(Dimension.NUMBER),
  /** A quantity where one is written: a disposition of so many grams. */
  MAYBE_MASS;

  private final List<String> choices;
  private final Optional<Dimension> dimension;

  Shape(String... choices) {
    this.choices = List.of(choices);
    this.dimension = Optional.empty();
  }

  Shape(Dimension dimension) {
    this.choices = List.of();
    this.dimension = Optional.of(dimension);
  }

  /** The words allowed; empty where any will do. */
  public List<String> choices() {
    return choices;
  }

  /** What a value of this shape measures; empty where it is no measurement. */
  public Optional<Dimension> dimension() {
    return dimension;
  }

  /** Whether a value of this shape comes off an instrument that must be named. */
  public boolean needsInstrument() {
    return this == MASS || this == TEMPERATURE;
  }
}

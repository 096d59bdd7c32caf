package org.flitchbook.plan;

import java.util.Arrays;
import java.util.Optional;

/** How far a limit's source can be trusted. */
public enum Standing {
  /** Read in the source's own text. */
  READ("read"),
  /** Read in a quotation or copy. */
  SECOND_HAND("second-hand"),
  /** From memory: to be confirmed before it is relied on. */
  MEMORY("memory"),
  /** Arithmetic from the source's numbers. */
  DERIVED("derived"),
  /** The plan's own, with the support that it names. */
  PLAN("plan");

  private final String word;

  Standing(String word) {
    this.word = word;
  }

  public String word() {
    return word;
  }

  static Optional<Standing> parse(String word) {
    return Arrays.stream(values())
        .filter(standing -> standing != PLAN && standing.word.equals(word))
        .findFirst();
  }
}

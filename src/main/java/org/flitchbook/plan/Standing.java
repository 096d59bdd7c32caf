package org.flitchbook.plan;

import java.util.Arrays;
import java.util.Optional;

/** How far a limit's source can be trusted. */
public enum Standing {
  READ("read", "read in the source's own text"),
  SECOND_HAND("second-hand", "second-hand: read in a quotation or copy"),
  MEMORY("memory", "from memory: confirm before relying on it"),
  DERIVED("derived", "derived: arithmetic from the source's numbers"),
  PLAN("plan", "the plan's own, with the support that it names");

  private final String word;
  private final String sentence;

  Standing(String word, String sentence) {
    this.word = word;
    this.sentence = sentence;
  }

  public String word() {
    return word;
  }

  /** As it is printed beside a limit. */
  public String sentence() {
    return sentence;
  }

  static Optional<Standing> parse(String word) {
    return Arrays.stream(values())
        .filter(standing -> standing != PLAN && standing.word.equals(word))
        .findFirst();
  }
}

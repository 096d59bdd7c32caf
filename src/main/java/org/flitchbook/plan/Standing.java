package org.flitchbook.plan;

import static org.flitchbook.message.Message.say;

import java.util.Arrays;
import java.util.Optional;
import org.flitchbook.message.Message;

/** How far a limit's source can be trusted. */
public enum Standing {
  READ("read", say("planned.standing.read", "read in the source's own text")),
  SECOND_HAND(
      "second-hand",
      say("planned.standing.second-hand", "second-hand: read in a quotation or copy")),
  MEMORY("memory", say("planned.standing.memory", "from memory: confirm before relying on it")),
  DERIVED(
      "derived", say("planned.standing.derived", "derived: arithmetic from the source's numbers")),
  PLAN("plan", say("planned.standing.plan", "the plan's own, with the support that it names"));

  private final String word;
  private final Message meaning;

  Standing(String word, Message meaning) {
    this.word = word;
    this.meaning = meaning;
  }

  public String word() {
    return word;
  }

  /** What the word says of the source. */
  public Message meaning() {
    return meaning;
  }

  static Optional<Standing> parse(String word) {
    return Arrays.stream(values())
        .filter(standing -> standing != PLAN && standing.word.equals(word))
        .findFirst();
  }
}

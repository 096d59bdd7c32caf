package org.flitchbook.plan;

import static org.flitchbook.message.Message.say;

import java.util.Locale;
import org.flitchbook.message.Argument;
import org.flitchbook.message.Language;
import org.flitchbook.message.Message;

/** How far a limit's source can be trusted. */
public enum Standing implements Argument {
  READ(say("standing-full.read", "read in the source's own text")),
  SECOND_HAND(say("standing-full.second-hand", "second-hand: read in a quotation or copy")),
  MEMORY(say("standing-full.memory", "from memory: confirm before relying on it")),
  DERIVED(say("standing-full.derived", "derived: arithmetic from the source's numbers")),
  /** Stands in no file: it is that of whatever the plan itself states. */
  PLAN(say("standing-full.plan", "the plan's own, with the support that it names"));

  private final Message meaning;

  Standing(Message meaning) {
    this.meaning = meaning;
  }

  public String word() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** What it means, in a few words. */
  public Message meaning() {
    return meaning;
  }

  @Override
  public String in(Language language) {
    return language.word("standing", word());
  }

  @Override
  public Object json() {
    return word();
  }
}

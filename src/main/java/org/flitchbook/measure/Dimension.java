package org.flitchbook.measure;

import static org.flitchbook.message.Message.say;

import java.util.Locale;
import org.flitchbook.message.Argument;
import org.flitchbook.message.Language;
import org.flitchbook.message.Message;

/** What a unit measures; only values of one dimension can be compared. */
public enum Dimension implements Argument {
  MASS(say("dimension.mass", "a mass")),
  TEMPERATURE(say("dimension.temperature", "a temperature")),
  SHARE(say("dimension.share", "a share")),
  TIME(say("dimension.time", "a length of time")),
  LENGTH(say("dimension.length", "a length")),
  NUMBER(say("dimension.number", "a bare number"));

  private final Message words;

  Dimension(Message words) {
    this.words = words;
  }

  @Override
  public String in(Language language) {
    return words.in(language);
  }

  @Override
  public Object json() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** For a diagnostic: "a mass". */
  public String words() {
    return words.toString();
  }
}

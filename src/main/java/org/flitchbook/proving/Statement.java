package org.flitchbook.proving;

import static org.flitchbook.message.Message.say;

import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import org.flitchbook.job.Session;
import org.flitchbook.message.Message;

/**
 * Something that a proof says.
 *
 * @param about the file that it is about; empty where it is about all of them
 */
record Statement(Standing standing, String about, Message message) {

  private static final String OF_PAGES = "proving.pages.";

  /** Whether it is proved, nobody can say, or the contrary is. */
  enum Standing {
    BROKEN("✗", "broken", say("proving.broken", "What is not as it was")),
    LACKS("✗", "missing", say("proving.lacks", "What is missing")),
    DIFFERS(
        "≠",
        "judged differently",
        say("proving.judged-otherwise", "What this version judges differently")),
    UNWITNESSED("?", "key not known", say("proving.keys", "Keys that no signature vouches for")),
    PROVED("✓", "proved", say("proving.proved", "What is proved")),
    OPEN("–", "not proved", say("proving.open", "What is not proved"));

    final String sign;
    final String word;
    final Message heading;

    Standing(String sign, String word, Message heading) {
      this.sign = sign;
      this.word = word;
      this.heading = heading;
    }
  }

  /** About all files, with a message of that id, see {@link Message}. */
  Statement(Standing standing, String id, String english, Object... arguments) {
    this(standing, "", say(id, english, arguments));
  }

  Statement about(String file) {
    return new Statement(standing, file, message);
  }

  boolean is(Standing other) {
    return standing == other;
  }

  /** What is shown was not compared with what it should be. */
  boolean isOfPagesNotCompared() {
    return is(Standing.OPEN) && message.id().startsWith(OF_PAGES);
  }

  /**
   * On a line, with its sign.
   *
   * @param known a file that need not be named
   */
  String line(String known, Session session) {
    boolean named = !about.isEmpty() && !about.equals(known);
    return standing.sign
        + " "
        + (named ? session.say(Message.of(about)) + ": " : "")
        + text(session);
  }

  /** As a sentence: what is wrong with a file begins small, since it may stand inside of one. */
  private String text(Session session) {
    String text = session.say(message);
    String end = text.endsWith(".") ? "" : ".";
    return text.substring(0, 1).toUpperCase(Locale.ROOT) + text.substring(1) + end;
  }

  Map<String, Object> json(Session session) {
    Map<String, Object> tree = new LinkedHashMap<>();
    tree.put("standing", standing.word);
    tree.put("about", about);
    tree.putAll(message.json());
    tree.put("text", text(session));
    return tree;
  }
}

package org.flitchbook.proving;

import java.util.LinkedHashMap;
import java.util.Map;
import org.flitchbook.message.Message;

/**
 * Something that a proof says.
 *
 * @param about the file that it is about; empty where it is about all of them
 */
record Statement(Standing standing, String about, String words) {

  /** Whether it is proved, nobody can tell, or the contrary is. */
  enum Standing {
    BROKEN("✗", "broken", "What is not as it was"),
    DIFFERS("≠", "judged differently", "What this version judges differently"),
    PROVED("✓", "proved", "What is proved"),
    OPEN("–", "not proved", "What is not proved");

    final String sign;
    final String word;
    final String heading;

    Standing(String sign, String word, String heading) {
      this.sign = sign;
      this.word = word;
      this.heading = heading;
    }
  }

  static Statement proved(String about, String words) {
    return new Statement(Standing.PROVED, about, words);
  }

  static Statement differs(String about, Message words) {
    return new Statement(Standing.DIFFERS, about, words.toString());
  }

  static Statement proved(String about, Message words) {
    return proved(about, words.toString());
  }

  static Statement open(String about, Message words) {
    return open(about, words.toString());
  }

  static Statement broken(String about, Message words) {
    return broken(about, words.toString());
  }

  static Statement open(String about, String words) {
    return new Statement(Standing.OPEN, about, words);
  }

  static Statement broken(String about, String words) {
    return new Statement(Standing.BROKEN, about, words);
  }

  /** Whether a person has to look at it. */
  boolean isAmiss() {
    return isBroken() || standing == Standing.DIFFERS;
  }

  boolean isBroken() {
    return standing == Standing.BROKEN;
  }

  /**
   * On a line, with its sign.
   *
   * @param known a file that need not be named
   */
  String line(String known) {
    boolean named = !about.isEmpty() && !about.equals(known);
    return standing.sign + " " + (named ? about + ": " : "") + words;
  }

  Map<String, Object> json() {
    Map<String, Object> tree = new LinkedHashMap<>();
    tree.put("standing", standing.word);
    tree.put("about", about);
    tree.put("words", words);
    return tree;
  }
}

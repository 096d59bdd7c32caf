package org.flitchbook.proving;

import java.util.LinkedHashMap;
import java.util.Map;

/**
 * Something that a proof says.
 *
 * @param about the file that it is about; empty where it is about all of them
 */
record Statement(Standing standing, String about, String words) {

  /** Whether it is proved, nobody can tell, or the contrary is. */
  enum Standing {
    BROKEN("✗", "broken", "What is not as it was"),
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

  static Statement open(String about, String words) {
    return new Statement(Standing.OPEN, about, words);
  }

  static Statement broken(String about, String words) {
    return new Statement(Standing.BROKEN, about, words);
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

package org.flitchbook.reading;

/**
 * A name of files, with {@code *} for any letters and {@code ?} for one. Of the stars only the last
 * one passed is tried again, so that many of them take no longer than one.
 */
record FilePattern(String text) {

  boolean fits(String name) {
    int at = 0;
    int letter = 0;
    int star = -1;
    int begun = 0;
    while (letter < name.length()) {
      if (at < text.length() && text.charAt(at) == '*') {
        star = at++;
        begun = letter;
      } else if (at < text.length() && isOne(text.charAt(at), name.charAt(letter))) {
        at++;
        letter++;
      } else if (star >= 0) {
        at = star + 1;
        letter = ++begun;
      } else {
        return false;
      }
    }
    return text.substring(at).chars().allMatch(rest -> rest == '*');
  }

  private static boolean isOne(char pattern, char letter) {
    return pattern == '?' || pattern == letter;
  }
}

package org.flitchbook.reading;

import static org.flitchbook.message.Message.say;

import java.util.Locale;
import java.util.Set;
import java.util.regex.Pattern;
import org.flitchbook.message.Message;

/** What a lot may be called, so that its name can be a file's name on any system. */
final class LotName {

  private static final Pattern LETTERS = Pattern.compile("[A-Za-z0-9][A-Za-z0-9_-]{0,31}");

  /** Names of devices on some systems, and of a day's other records. */
  private static final Pattern TAKEN = Pattern.compile("con|prn|aux|nul|(com|lpt)[0-9]");

  private static final Set<String> RECORDS = Set.of("day", "deviations");

  private LotName() {}

  static boolean isOne(String text) {
    return LETTERS.matcher(text).matches() && !isTaken(text);
  }

  /** The key of what is expected, for a diagnostic about a text that is no lot's name. */
  static Message expected(String text) {
    return isTaken(text)
        ? say("reading.lot.taken", "another name: files of that name mean something else")
        : say("reading.lot.letters", "letters, digits, - and _ only, 32 at most");
  }

  private static boolean isTaken(String text) {
    String lower = text.toLowerCase(Locale.ROOT);
    return TAKEN.matcher(lower).matches() || RECORDS.contains(lower);
  }
}

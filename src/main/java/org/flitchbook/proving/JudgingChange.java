package org.flitchbook.proving;

import java.util.List;
import java.util.Set;
import org.flitchbook.message.Message;

/**
 * A change in how the same evidence is judged.
 *
 * @param since the first version of the program that judges so
 * @param touches the ids of the limits and the names of the rules about which something else may
 *     come out; a name that ends in {@code *} stands for all that begin so
 * @param change as the change log says it under that version
 */
record JudgingChange(ProgramVersion since, Set<String> touches, Message change) {

  /**
   * The changes since 0.1.0, the oldest first. A change that is missing here makes the records of
   * older versions look as if somebody had changed them; the kept records of each version hold
   * that.
   */
  static final List<JudgingChange> ALL = List.of();

  JudgingChange {
    touches = Set.copyOf(touches);
  }

  /** Whether it explains a difference in a record that an earlier version made. */
  boolean explains(Comparison.Difference difference, String made) {
    return ProgramVersion.isBefore(made, since.toString())
        && touches.stream().anyMatch(each -> matches(each, difference.about()));
  }

  private static boolean matches(String touched, String about) {
    return touched.endsWith("*")
        ? about.startsWith(touched.substring(0, touched.length() - 1))
        : touched.equals(about);
  }
}

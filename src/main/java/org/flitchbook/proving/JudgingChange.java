package org.flitchbook.proving;

import static org.flitchbook.message.Message.say;

import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.flitchbook.message.Message;

/**
 * A change in how the same evidence is judged.
 *
 * @param since the first version of the program that judges so, such as {@code 0.2.0}
 * @param touches the grounds on which something else may come out, see {@link Difference}; one that
 *     ends in {@code *} stands for all that begin so
 * @param change as the change log says it under that version
 */
record JudgingChange(String since, Set<String> touches, Message change) {

  /**
   * The changes since 0.1.0, the oldest first. A change that is missing here makes the records of
   * older versions look as if somebody had changed them; the kept records of each version hold
   * that.
   */
  static final List<JudgingChange> ALL =
      List.of(
          new JudgingChange(
              "0.2.0",
              Set.of("plan.between"),
              say(
                  "proving.change.out-of-step",
                  "the time that a lot is out of a step and goes into it again counts as time"
                      + " between steps")),
          new JudgingChange(
              "0.2.0",
              Set.of("review.before-dispatch"),
              say(
                  "proving.change.left",
                  "a lot that left while it was held, or with an open critical limit or question,"
                      + " misses the review before dispatch")),
          new JudgingChange(
              "0.2.0",
              Set.of(
                  "ca.ontario.app-1-table-1.*",
                  "us.a21.table-2.*",
                  "us.a21.table-6.*",
                  "us.318.10-c-1.*",
                  "us-retail.fc22.3-401.11-*"),
              say(
                  "proving.change.instant-row",
                  "one reading by hand meets no row of 0 s; it takes two readings, or its check"
                      + " with another instrument")),
          new JudgingChange(
              "0.2.0",
              Set.of("plan newer than the lot"),
              say(
                  "proving.change.newer-plan",
                  "a plan that was signed after the lot began, with no earlier version on file, is"
                      + " asked about")),
          new JudgingChange(
              "0.2.0",
              Set.of("day without entries"),
              say(
                  "proving.change.empty-day",
                  "a day of a step on which nothing is on file of a lot is named")),
          new JudgingChange(
              "0.2.0",
              Set.of("column not read", "column left out"),
              say(
                  "proving.change.other-columns",
                  "a column of a log that nothing reads is named, and asked about where it may hold"
                      + " readings")),
          new JudgingChange(
              "0.2.0",
              Set.of("entry twice"),
              say(
                  "proving.change.piece-beside-lot",
                  "the green weight of a piece beside that of the whole lot is a second one")),
          new JudgingChange(
              "0.2.0",
              Set.of(
                  "value",
                  "no value",
                  "unit",
                  "heading",
                  "heading again",
                  "zone",
                  "skipped reading",
                  "place without a reading"),
              say(
                  "proving.change.cells",
                  "a cell of a log that holds a reading and is no plain number is read or stops the"
                      + " lot, and so do readings that are passed over")),
          new JudgingChange(
              "0.2.0",
              Set.of("error value", "impossible air or water", "place too cold"),
              say(
                  "proving.change.codes",
                  "more codes of sensors, and a cold that no place has, are no readings")),
          new JudgingChange(
              "0.2.0",
              Set.of("class.*"),
              say(
                  "proving.change.group",
                  "a group of limits covers a hazard only where each of its limits does")),
          new JudgingChange(
              "0.2.0",
              Set.of("log begins late", "stuck"),
              say(
                  "proving.change.honest-days",
                  "a log that begins late below the band of the rise, and a core that stays near"
                      + " its air, are not asked about")),
          new JudgingChange(
              "0.2.0",
              Set.of(Difference.EXPLANATION),
              say(
                  "proving.change.borne-out",
                  "an explanation is borne out only by what bears on it")),
          new JudgingChange(
              "0.2.0",
              Set.of("not shown to pending"),
              say(
                  "proving.change.log-to-come",
                  "as long as the chill runs, a log of the core that is not on file yet may still"
                      + " come")),
          new JudgingChange(
              "0.2.0",
              Set.of("gap"),
              say(
                  "proving.change.gaps-of-places",
                  "the longest gap in the log of a place is noted")),
          new JudgingChange(
              "0.2.0",
              Set.of("kind duration"),
              say(
                  "proving.change.went-on",
                  "a piece that came out and went into the same step again has not ended it")),
          new JudgingChange(
              "0.2.0",
              Set.of("kind cadence"),
              say(
                  "proving.change.done-in-step",
                  "what is to be done every so often counts only while the step runs")),
          new JudgingChange(
              "0.2.0",
              Set.of("plan.*"),
              say(
                  "proving.change.overlap",
                  "a step that began before the one before it ended is not shown to have followed"
                      + " it, and each piece has its own time between steps")),
          new JudgingChange(
              "0.2.0",
              Set.of(
                  "kind of place",
                  "found in its place",
                  "row without a lot",
                  "air of several places",
                  "lots alike by name",
                  "product"),
              say(
                  "proving.change.places",
                  "what was found or held of a place is asked about in each lot that lay there,"
                      + " soak and drying want places of their kind, and a lot that nobody began"
                      + " is named on every day")));

  private static final Pattern VERSION = Pattern.compile("(\\d{1,6})\\.(\\d{1,6})\\.(\\d{1,6}).*");

  /** Above each part of a version. */
  private static final long BASE = 1_000_000;

  JudgingChange {
    touches = Set.copyOf(touches);
  }

  /** Whether it explains a difference in a record that an earlier version made. */
  boolean explains(Difference difference, String made) {
    return isBefore(made, since)
        && touches.stream()
            .anyMatch(each -> difference.grounds().stream().anyMatch(at -> matches(each, at)));
  }

  private static boolean matches(String touched, String about) {
    return touched.endsWith("*")
        ? about.startsWith(touched.substring(0, touched.length() - 1))
        : touched.equals(about);
  }

  /**
   * Whether the first of two versions of the program is the earlier one; a text that names no
   * version is earlier than each that does.
   */
  static boolean isBefore(String one, String other) {
    return !one.equals(other) && rank(one) < rank(other);
  }

  /** Whether a text names a version of the program. */
  static boolean isVersion(String text) {
    return rank(text) >= 0;
  }

  private static long rank(String version) {
    Matcher parts = VERSION.matcher(version);
    return parts.matches()
        ? (Long.parseLong(parts.group(1)) * BASE + Long.parseLong(parts.group(2))) * BASE
            + Long.parseLong(parts.group(3))
        : -1;
  }
}

package org.flitchbook.look;

import static org.flitchbook.message.Message.say;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.flitchbook.input.Fault;
import org.flitchbook.message.Listing;
import org.flitchbook.message.Message;

/** What in a log may mislead anyone who reads it. */
final class Oddities {

  private static final long A_MINUTE = 60;

  private final List<Oddity> found = new ArrayList<>();

  /**
   * One of them.
   *
   * @param line the first on which it stands; 0 where it stands on none in particular
   */
  record Oddity(int line, Message found) {}

  private Oddities() {}

  static List<Oddity> of(LogScan scan, List<Fault> faults) {
    Oddities oddities = new Oddities();
    faults.forEach(fault -> oddities.add(fault.place().line(), fault.found()));
    scan.odd.forEach(oddities::rows);
    oddities.heading(
        scan.columns.stream().map(each -> each.word).filter(w -> !w.isEmpty()).toList());
    scan.time.ifPresentOrElse(
        oddities::time, () -> oddities.add(0, say("look.odd.no-time", "no column of times")));
    if (scan.mayHaveBareCommas()) {
      oddities.add(
          0,
          say(
              "look.odd.bare-commas",
              "whole numbers alone, side by side: decimal commas in a file parted by commas?"));
    }
    scan.columns.stream().filter(each -> !scan.isOfTime(each)).forEach(oddities::column);
    return oddities.found;
  }

  private void add(int line, Message words) {
    found.add(new Oddity(line, words));
  }

  private void rows(LogScan.Oddity kind, LogScan.Lines lines) {
    int count = lines.count();
    Message words = kind.words;
    add(lines.first(), count == 1 ? words : say("look.odd.times", "{0}, {1} times", words, count));
  }

  private void heading(List<String> words) {
    if (words.stream().distinct().count() < words.size()) {
      add(0, say("look.odd.word-twice", "a word that stands twice in the heading"));
    }
  }

  private void time(TimeColumn time) {
    TimeSteps steps = time.reader().steps;
    if (steps.isNewestFirst()) {
      add(0, say("look.odd.newest-first", "the newest row stands first"));
    } else if (steps.back > 0) {
      add(steps.backLine, back(time, steps));
    }
    if (steps.isHole(steps.longest) && !steps.isNewestFirst()) {
      add(steps.longLine, say("look.odd.gap", "nothing for {0}", length(steps.longest, time)));
    }
    if (!time.strange.isEmpty()) {
      add(
          0,
          say(
              "look.odd.no-times",
              "no times in the column of the time: {0}",
              counted(time.strange)));
    }
    if (time.patterns().size() > 1) {
      add(
          0,
          say(
              "look.odd.order",
              "day, month and year can't be told apart: {0}",
              Listing.or(time.patterns())));
    }
    if (!time.isCounted() && steps.wholeMinutes && steps.isMostlyStill()) {
      add(
          0,
          say(
              "look.odd.no-seconds",
              "several rows of one minute: a spreadsheet may have dropped the seconds"));
    }
  }

  private static Message back(TimeColumn time, TimeSteps steps) {
    Message back = say("look.odd.back", "the time goes back by {0}", length(steps.backBy, time));
    if (steps.back > 1) {
      back = say("look.odd.back-more", "{0}, and {1} times more", back, steps.back - 1);
    }
    long minutes = steps.backBy / A_MINUTE;
    if (!time.isCounted() && minutes >= 50 && minutes <= 70) {
      back = say("look.odd.autumn", "{0}: the hour that comes twice in autumn?", back);
    }
    return time.lacksHalves()
        ? say("look.odd.halves", "{0}: a clock of 12 hours without AM and PM?", back)
        : back;
  }

  private void column(LogColumn column) {
    if (column.damaged > 0) {
      add(
          0,
          say(
              "look.odd.damaged",
              "\"{0}\": {1} cells that a spreadsheet wrote over",
              column.word,
              column.damaged));
    }
    if (!column.sentinels.isEmpty() && !column.isNoHeat()) {
      add(
          0,
          say(
              "look.odd.sentinels",
              "\"{0}\": no readings, perhaps: {1}",
              column.word,
              counted(column.sentinels)));
    }
    if (column.mayHoldReadings() && !column.others.isEmpty()) {
      add(
          0,
          say(
              "look.odd.others",
              "\"{0}\": {1} of {2} cells hold no number",
              column.word,
              column.filled - column.numbers,
              column.filled));
    }
    if (column.units().size() > 1) {
      add(
          0,
          say(
              "look.odd.units-of",
              "\"{0}\": more than one unit: {1}",
              column.word,
              Listing.commas(column.units())));
    }
    if (column.word.isEmpty() && column.filled > 0) {
      add(0, say("look.odd.no-word", "a column without a word above it"));
    }
  }

  static Listing counted(Map<String, Integer> cells) {
    return Listing.commas(
        cells.entrySet().stream()
            .map(
                each ->
                    each.getValue() == 1
                        ? each.getKey()
                        : say(
                            "look.odd.counted", "{0} ({1} times)", each.getKey(), each.getValue()))
            .toList());
  }

  /** In the unit of the log itself where that is not known to be a second. */
  static Message length(long seconds, TimeColumn time) {
    if (time.isCount()) {
      return Message.of(seconds);
    }
    boolean whole = seconds % A_MINUTE == 0;
    if (seconds >= 2 * 3600 && whole) {
      long minutes = seconds % 3600 / A_MINUTE;
      return minutes == 0
          ? say("look.length.hours", "{0} h", seconds / 3600)
          : say("look.length.hours-minutes", "{0} h {1} min", seconds / 3600, minutes);
    }
    return seconds >= 120 && whole
        ? say("look.length.minutes", "{0} min", seconds / A_MINUTE)
        : say("look.length.seconds", "{0} s", seconds);
  }
}

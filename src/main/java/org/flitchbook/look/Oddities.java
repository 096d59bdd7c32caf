package org.flitchbook.look;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.flitchbook.input.Fault;

/** What in a log may mislead whoever reads it. */
final class Oddities {

  private static final long A_MINUTE = 60;

  private final Survey survey;
  private final List<Oddity> found = new ArrayList<>();

  /**
   * One of them.
   *
   * @param line the first on which it stands; 0 where it stands on none in particular
   */
  record Oddity(int line, String words) {}

  private Oddities(Survey survey) {
    this.survey = survey;
  }

  static List<Oddity> of(Survey survey, List<Fault> faults) {
    Oddities oddities = new Oddities(survey);
    faults.forEach(fault -> oddities.add(fault.place().line(), fault.found().toString()));
    oddities.rows();
    survey.clock().ifPresentOrElse(oddities::clock, () -> oddities.add(0, "no column of times"));
    survey.columns().forEach(oddities::column);
    return oddities.found;
  }

  private void add(int line, String words) {
    found.add(new Oddity(line, words));
  }

  private void rows() {
    lines(survey.headingAgain(), "the heading again");
    lines(survey.units(), "a row of units");
    lines(survey.withoutTime(), "a row without a time");
    lines(survey.twice(), "the row before once more");
    lines(survey.otherwise(), "the time of the row before with other values");
    lines(survey.wide(), "more cells than the heading has words");
    long words = survey.columns().stream().map(Column::word).filter(w -> !w.isEmpty()).count();
    long different =
        survey.columns().stream().map(Column::word).filter(w -> !w.isEmpty()).distinct().count();
    if (different < words) {
      add(0, "a word that stands twice in the heading");
    }
  }

  private void lines(Survey.Lines lines, String words) {
    if (lines.count() > 0) {
      add(lines.first(), words + (lines.count() == 1 ? "" : ", " + lines.count() + " times"));
    }
  }

  private void clock(Clock clock) {
    Pace pace = clock.pace();
    if (pace.isNewestFirst()) {
      add(0, "the newest row stands first");
    } else if (pace.back() > 0) {
      String by = length(pace.backBy(), clock);
      add(pace.backLine(), "the time goes back by " + by + behind(pace, clock));
    }
    if (pace.longest() > Math.max(3 * pace.usual(), 5 * A_MINUTE) && !pace.isNewestFirst()) {
      add(pace.longLine(), "nothing for " + length(pace.longest(), clock));
    }
    if (clock.strange() > 0) {
      add(0, clock.strange() + " cells under the time that hold none");
    }
    if (clock.isWritten()) {
      written(clock.stamps(), pace);
    }
  }

  private static String behind(Pace pace, Clock clock) {
    String more = pace.back() == 1 ? "" : ", and " + (pace.back() - 1) + " times more";
    if (!clock.isWritten()) {
      return more;
    }
    long minutes = pace.backBy() / A_MINUTE;
    boolean change = minutes >= 50 && minutes <= 70;
    return more
        + (change ? ": the hour that comes twice in autumn?" : "")
        + (clock.lacksHalves() ? ": a clock of 12 hours without AM and PM?" : "");
  }

  private void written(Stamps stamps, Pace pace) {
    if (stamps.orders().size() > 1) {
      add(0, "day, month and year can't be told apart: " + stamps.choices());
    }
    if (stamps.areWithoutSeconds() && pace.isMostlyStill()) {
      add(0, "several rows of one minute: a spreadsheet may have dropped the seconds");
    }
  }

  private void column(Column column) {
    if (column.damaged() > 0) {
      add(0, quoted(column) + ": " + column.damaged() + " cells that a spreadsheet wrote over");
    }
    if (!column.sentinels().isEmpty()) {
      add(0, quoted(column) + ": no readings, perhaps: " + counted(column.sentinels()));
    }
    if (column.isOfNumbers() && !column.others().isEmpty()) {
      add(0, quoted(column) + ": no numbers: " + counted(column.others()));
    }
    if (column.word().isEmpty() && column.filled() > 0) {
      add(0, "a column without a word above it");
    }
  }

  private static String quoted(Column column) {
    return "\"" + column.word() + "\"";
  }

  private static String counted(Map<String, Integer> cells) {
    List<String> words = new ArrayList<>();
    cells.forEach((cell, count) -> words.add(cell + (count == 1 ? "" : " (" + count + " times)")));
    return String.join(", ", words);
  }

  /** In the unit of the log itself where that is not known to be a second. */
  static String length(long seconds, Clock clock) {
    if (clock.form() == Clock.Form.COUNTED) {
      return String.valueOf(seconds);
    }
    if (seconds >= 2 * 3600 && seconds % A_MINUTE == 0) {
      long minutes = seconds % 3600 / A_MINUTE;
      return seconds / 3600 + " h" + (minutes == 0 ? "" : " " + minutes + " min");
    }
    return seconds >= 120 && seconds % A_MINUTE == 0 ? seconds / A_MINUTE + " min" : seconds + " s";
  }
}

package org.flitchbook.reading;

import static org.flitchbook.message.Message.say;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import org.flitchbook.input.Severity;
import org.flitchbook.message.Message;
import org.flitchbook.table.Row;

/**
 * The rows of a log that have no time. A row of units, what a logger says about itself above
 * another heading, and the figures that it adds at the end hold no reading; else a number without
 * its time is a reading that is lost. Which it is shows in what follows.
 */
final class TimelessRows {

  /** What a logger adds below its rows. */
  private static final Pattern FIGURE =
      Pattern.compile(
          "(?iU)(min|max|mean|median|avg|average|std ?dev|standard deviation|sum|total|count|mkt"
              + "|highest|lowest|minimum|maximum|m[ií]nim[oa]|m[áa]xim[oa]|promedio|media|mittel"
              + "|mittelwert|anzahl|moyenne)( ?(temp(eratur[ea]?)?\\.?|value|reading))?\\.?:?");

  /** At least four digits in two parts, and no words. */
  private static final Pattern LIKE_A_TIME =
      Pattern.compile("(?=.*\\d[^\\d]+\\d)(?=(?:\\D*\\d){4})[\\d:./T Z+-]+");

  /** A row with a number beside a label in the place of its time. */
  private record Labelled(Row row, String label) {}

  private final LogsFile.LogLayout layout;
  private final RowFaults faults;
  private final List<Labelled> labelled = new ArrayList<>();
  private Optional<Row> maybeHeading = Optional.empty();

  TimelessRows(LogsFile.LogLayout layout, RowFaults faults) {
    this.layout = layout;
    this.faults = faults;
  }

  /** Whether something was read in it; else it may be a row of units. */
  boolean reads(Row row, LogColumns columns) {
    String time = columns.timeText(row);
    boolean labels = isLabel(time);
    return isWholeRow(time) || columns.valuesOf(row).anyMatch(cell -> isReading(cell, labels));
  }

  /** A row that is parted otherwise than the log, or that stands in quotes as a whole. */
  private boolean isWholeRow(String cell) {
    List<String> parts = List.of(cell.split("[;,|\\t]", -1));
    return LIKE_A_TIME.matcher(parts.get(0).strip()).matches()
        && parts.stream().skip(1).anyMatch(part -> isReading(part.strip(), false));
  }

  void add(Row row, LogColumns columns) {
    String text = columns.timeText(row);
    if (!reads(row, columns)) {
      maybeHeading = isOfWords(row, columns) ? Optional.of(row) : maybeHeading;
      noReading(row, text);
    } else if (isLabel(text)) {
      labelled.add(new Labelled(row, text));
    } else {
      lost(row, text);
    }
  }

  /** Words in the place of a time, as a logger writes them above its rows and below. */
  boolean isLabel(String time) {
    boolean isOfWords = cell(time).kind() == LogCell.Kind.WORDS && !time.contains("#");
    return isOfWords || FIGURE.matcher(time).matches();
  }

  /** Whether a cell says that something was read; beside a label only a plain number does. */
  boolean isReading(String cell, boolean besideLabel) {
    LogCell.Kind kind = cell(cell).kind();
    return kind == LogCell.Kind.NUMBER || (kind == LogCell.Kind.LOST && !besideLabel);
  }

  private LogCell cell(String text) {
    return LogCell.of(text, layout.log().decimal());
  }

  /** Words under every word of the heading, none of them a unit. */
  private boolean isOfWords(Row row, LogColumns columns) {
    return row.cells().size() >= columns.width()
        && row.cells().stream().limit(columns.width()).allMatch(this::isLabel)
        && row.cells().stream().noneMatch(cell -> UnitWord.behind(" " + cell).unit().isPresent());
  }

  /** The heading again: what stands above it the logger said about itself. */
  void headingFollows() {
    labelled.forEach(each -> noReading(each.row, each.label));
    labelled.clear();
    maybeHeading = Optional.empty();
  }

  /**
   * A row with a time, so that what went before was neither above a heading nor at the end.
   *
   * @param heading the one by which it is read
   */
  void timeFollows(Row heading) {
    labelled.forEach(each -> lost(each.row, each.label));
    labelled.clear();
    maybeHeading.ifPresent(row -> askAbout(row, heading));
    maybeHeading = Optional.empty();
  }

  private void askAbout(Row row, Row heading) {
    faults.add(
        "heading again",
        Severity.ASK,
        row.line(),
        "",
        Message.of(String.join(", ", row.cells())),
        say(
            "reading.log.same-heading",
            "the words of line {0} where another part begins; its rows were read by those",
            heading.line()));
  }

  /** The last row is through. */
  void end() {
    for (Labelled each : labelled) {
      if (FIGURE.matcher(each.label).matches()) {
        noReading(each.row, each.label);
      } else {
        lost(each.row, each.label);
      }
    }
  }

  private void noReading(Row row, String text) {
    told("no reading", Severity.NOTE, row, text, layout.clock().expected());
  }

  private void lost(Row row, String text) {
    LogClock clock = layout.clock();
    Message expected = OddCells.hinted(clock.expected(), OddCells.hint(text, clock.hint(text)));
    told("time", Severity.STOP, row, text, expected);
  }

  private void told(String rule, Severity severity, Row row, String text, Message expected) {
    Message found = text.isEmpty() ? say("reading.time.none", "no time") : Message.of(text);
    faults.add(rule, severity, row.line(), layout.time().column(), found, expected);
  }
}

package org.flitchbook.reading;

import static org.flitchbook.message.Message.say;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.flitchbook.input.Severity;
import org.flitchbook.measure.Level;
import org.flitchbook.measure.Unit;
import org.flitchbook.message.Message;

/**
 * The cells of a log's columns that give no reading. What becomes of them shows once the rows have
 * their times, since a column may hold for some of them alone.
 */
final class OddCells {

  /** What is wrong with a cell. */
  record Oddity(String rule, Severity severity, Message found, Message expected) {

    private static final Message NUMBER = say("reading.log.number", "a number");

    /** The same but for what was found. */
    private boolean isLike(Oddity other) {
      return rule.equals(other.rule)
          && severity == other.severity
          && expected.equals(other.expected);
    }

    /** What is wrong with a cell that holds no number. */
    static Oddity noNumber(LogCell.Kind kind, String text, Optional<Message> hint) {
      Message found = Message.of(text);
      return switch (kind) {
        case LOST ->
            new Oddity(
                "value",
                Severity.STOP,
                found,
                hinted(say("reading.cell.lost", "a number, alone or with its unit"), hint));
        case WORDS ->
            new Oddity(
                "no value",
                Severity.ASK,
                found,
                hinted(
                    say("reading.cell.words", "a number, or a usual word for no reading"), hint));
        default -> new Oddity("no value", Severity.NOTE, found, hinted(NUMBER, hint));
      };
    }

    static Oddity tooLong(String text) {
      return new Oddity(
          "value",
          Severity.STOP,
          Message.of(text),
          say("reading.cell.digits", "at most eight digits before the decimal mark"));
    }

    static Oddity otherUnit(Unit named, String text, Unit stated) {
      return new Oddity(
          "unit",
          Severity.STOP,
          say("reading.log.unit-in", "{0} in \"{1}\"", named, text),
          say("reading.log.unit-stated", "{0} as logs.json says", stated));
    }
  }

  /** Rows that follow each other with the same oddity in one column. */
  private record Run(Oddity oddity, int first, int last) {

    boolean goesOn(Oddity other, int row) {
      return row == last + 1 && oddity.isLike(other);
    }
  }

  private final List<LogsFile.ValueColumn> stated;
  private final char decimalMark;
  private final List<List<Run>> columns;

  OddCells(List<LogsFile.ValueColumn> stated, char decimalMark) {
    this.stated = stated;
    this.decimalMark = decimalMark;
    this.columns =
        Stream.generate(() -> (List<Run>) new ArrayList<Run>()).limit(stated.size()).toList();
  }

  /** What often lies behind a cell. */
  static Optional<Message> hint(String text, Optional<Message> hint) {
    return text.contains("##")
        ? Optional.of(
            say(
                "reading.hint.damaged",
                "a spreadsheet wrote this over what was there: export the log again"))
        : hint;
  }

  /**
   * The level that a cell gives; none where it gives no reading.
   *
   * @param row the place of its row in the file's order
   */
  long level(int row, int index, String text) {
    if (text.isEmpty()) {
      return LogRows.NONE;
    }
    Unit unit = stated.get(index).series().unit();
    LogCell cell = LogCell.of(text, decimalMark);
    OptionalLong level = cell.number().map(n -> Level.near(n, unit)).orElse(OptionalLong.empty());
    Optional<Unit> other = cell.unit().filter(each -> each != unit);
    if (cell.kind() != LogCell.Kind.NUMBER) {
      Optional<Message> hint = hint(text, Numbers.hint(text, decimalMark));
      add(row, index, Oddity.noNumber(cell.kind(), text, hint));
    } else if (other.isPresent()) {
      add(row, index, Oddity.otherUnit(other.get(), text, unit));
      return LogRows.NONE;
    } else if (level.isEmpty()) {
      add(row, index, Oddity.tooLong(text));
    }
    return level.orElse(LogRows.NONE);
  }

  /** What is expected, with what often lies behind such a cell. */
  static Message hinted(Message expected, Optional<Message> hint) {
    return hint.map(each -> say("reading.log.hinted", "{0}; {1}", expected, each)).orElse(expected);
  }

  private void add(int row, int column, Oddity oddity) {
    List<Run> runs = columns.get(column);
    int last = runs.size() - 1;
    if (last >= 0 && runs.get(last).goesOn(oddity, row)) {
      runs.set(last, new Run(runs.get(last).oddity, runs.get(last).first, row));
    } else {
      runs.add(new Run(oddity, row, row));
    }
  }

  /** Tells those of the rows for which their column holds, or may. */
  void tell(ReadLog log) {
    for (int index = 0; index < columns.size(); index++) {
      LogsFile.ValueColumn column = log.layout().columns().get(index);
      for (Run run : columns.get(index)) {
        IntStream.rangeClosed(run.first, run.last)
            .map(log.rows()::place)
            .filter(row -> !log.rows().isUsable(row) || column.holdsAt(log.at(row)))
            .forEach(row -> tell(log, row, column.column(), run.oddity));
      }
    }
  }

  private static void tell(ReadLog log, int row, String column, Oddity odd) {
    log.faults().add(odd.rule, odd.severity, log.rows().line(row), column, odd.found, odd.expected);
  }
}

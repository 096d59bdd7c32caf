package org.flitchbook.reading;

import static org.flitchbook.message.Message.say;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.flitchbook.input.Fault;
import org.flitchbook.input.Place;
import org.flitchbook.message.Argument;
import org.flitchbook.message.Listing;
import org.flitchbook.message.Message;
import org.flitchbook.table.Row;

/**
 * Where in the rows under one heading the columns stand that {@code logs.json} names.
 *
 * @param width the cells that stand under a word
 */
record LogColumns(List<Integer> time, List<Integer> values, int width) {

  /**
   * Finds the columns in a heading; what is wrong with it goes to the faults.
   *
   * @return empty where a column is missing or stands twice
   */
  static Optional<LogColumns> of(String file, Row heading, LogLayout layout, List<Fault> faults) {
    Search search = new Search(file, heading, faults);
    List<Integer> time = search.all(layout.time().columns());
    List<Integer> values =
        search.all(layout.columns().stream().map(LogLayout.ValueColumn::column).toList());
    return search.complete
        ? Optional.of(new LogColumns(time, values, width(heading)))
        : Optional.empty();
  }

  private static int width(Row heading) {
    int width = 0;
    for (int index = 0; index < heading.cells().size(); index++) {
      width = heading.cell(index).isEmpty() ? width : index + 1;
    }
    return width;
  }

  /** The texts of the time's columns, joined by a space. */
  String timeText(Row row) {
    return time.size() == 1
        ? row.cell(time.get(0))
        : time.stream().map(row::cell).collect(Collectors.joining(" ")).strip();
  }

  String value(Row row, int column) {
    return row.cell(values.get(column));
  }

  /** Whether a filled cell stands under no word, as behind a bare decimal comma. */
  boolean isTooNarrowFor(Row row) {
    return row.cells().size() > width && !row.cellsUnder(index -> index >= width).isEmpty();
  }

  private static final class Search {

    private final String file;
    private final Row heading;
    private final List<Fault> faults;
    private boolean complete = true;

    Search(String file, Row heading, List<Fault> faults) {
      this.file = file;
      this.heading = heading;
      this.faults = faults;
    }

    List<Integer> all(List<String> columns) {
      List<Integer> found = new ArrayList<>();
      for (String column : columns) {
        found.add(index(column));
      }
      return found;
    }

    private int index(String column) {
      int index = heading.cells().indexOf(column);
      if (index < 0) {
        missing(column);
      } else if (heading.cells().lastIndexOf(column) != index) {
        broken(
            "column twice",
            column,
            say("reading.column.twice", "the column \"{0}\" twice", column),
            say("reading.column.once", "each column once"));
      }
      return index;
    }

    private void missing(String column) {
      Optional<String> alike =
          heading.cells().stream().filter(word -> bare(word).equals(bare(column))).findFirst();
      Argument words =
          alike
              .<Argument>map(word -> say("json.text", "\"{0}\"", word))
              .orElse(Listing.commas(heading.cells()));
      broken(
          "missing column",
          column,
          say("reading.column.missing", "no column \"{0}\" in {1}", column, words),
          alike.isPresent()
              ? say(
                  "reading.column.letter-by-letter",
                  "in logs.json the word letter by letter as the file has it, or the \"encoding\""
                      + " that gives its letters")
              : say("reading.column.named", "the columns that logs.json names"));
    }

    private void broken(String rule, String column, Message found, Message expected) {
      complete = false;
      Place place = Place.of(file, heading.line()).column(column);
      faults.add(Fault.broken(rule, place, found, expected));
    }

    /** Without what a wrong encoding or another program does to a word: its spaces and signs. */
    private static String bare(String word) {
      return word.replaceAll("[^\\p{ASCII}]|[\\s?]", "").toLowerCase(java.util.Locale.ROOT);
    }
  }
}

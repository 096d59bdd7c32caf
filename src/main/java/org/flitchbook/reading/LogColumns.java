package org.flitchbook.reading;

import static org.flitchbook.message.Message.say;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.flitchbook.input.Fault;
import org.flitchbook.input.Place;
import org.flitchbook.message.Argument;
import org.flitchbook.message.Listing;
import org.flitchbook.message.Message;
import org.flitchbook.table.Row;

/**
 * Where in the rows under one heading the columns stand that {@code logs.json} names.
 *
 * @param values the places of the columns of values; below 0 where this heading lacks one
 * @param others the words under which nothing is read, each by its place
 * @param width the cells that stand under a word
 * @param lacking the columns of values that are missing, by their words: another part may have them
 * @param faults why no row under this heading can be read; none where they can
 */
record LogColumns(
    List<Integer> time,
    List<Integer> values,
    SortedMap<Integer, String> others,
    int width,
    Map<String, Fault> lacking,
    List<Fault> faults) {

  static final String MISSING = "missing column";

  static final LogColumns NONE =
      new LogColumns(List.of(), List.of(), Collections.emptySortedMap(), 0, Map.of(), List.of());

  static LogColumns of(String file, Row heading, LogsFile.LogLayout layout) {
    Place place = Place.of(file, heading.line());
    Search search = new Search(place, heading.cells(), new LinkedHashMap<>(), new ArrayList<>());
    List<Integer> time = layout.time().columns().all().stream().map(search::index).toList();
    List<Integer> values =
        layout.columns().stream().map(column -> search.index(column.column())).toList();
    int width =
        IntStream.range(0, heading.cells().size())
            .filter(index -> !heading.cell(index).isEmpty())
            .reduce(0, (before, index) -> index + 1);
    SortedMap<Integer, String> others = others(heading, width, time, values);
    boolean isRead =
        time.stream().allMatch(index -> index >= 0)
            && (values.stream().anyMatch(index -> index >= 0)
                || layout.log().leftOut().keySet().containsAll(others.values()));
    List<Fault> faults =
        isRead
            ? search.twice
            : Stream.concat(search.lacking.values().stream(), search.twice.stream()).toList();
    return new LogColumns(time, values, others, width, search.lacking, faults);
  }

  /** The numbers of the columns, in the place of words; a first row may lack its last cells. */
  static Row numbers(Row first, LogsFile.Log log) {
    int width =
        log.named()
            .filter(word -> word.matches("[1-9]\\d{0,2}"))
            .mapToInt(Integer::parseInt)
            .reduce(first.cells().size(), Math::max);
    return new Row(
        first.line(), IntStream.rangeClosed(1, width).mapToObj(String::valueOf).toList());
  }

  private static SortedMap<Integer, String> others(
      Row heading, int width, List<Integer> time, List<Integer> values) {
    SortedMap<Integer, String> others = new TreeMap<>();
    for (int index = 0; index < width; index++) {
      if (!time.contains(index) && !values.contains(index)) {
        others.put(index, heading.cell(index));
      }
    }
    return others;
  }

  /** A word that stands twice in a heading. */
  static Fault twice(String word, Place heading) {
    return Fault.broken(
        "column twice",
        heading.column(word),
        say("reading.column.twice", "the column \"{0}\" twice", word),
        say("reading.column.once", "each column once"));
  }

  /** The texts of the time's columns, joined by a space. */
  String timeText(Row row) {
    return time.size() == 1
        ? row.cell(time.get(0))
        : time.stream().map(row::cell).collect(Collectors.joining(" ")).strip();
  }

  /** Empty where this heading lacks the column. */
  String value(Row row, int column) {
    return values.get(column) < 0 ? "" : row.cell(values.get(column));
  }

  /** The cells of all columns of values. */
  Stream<String> valuesOf(Row row) {
    return IntStream.range(0, values.size()).mapToObj(column -> value(row, column));
  }

  /** Whether a filled cell stands under no word, as behind a bare decimal comma. */
  boolean isTooNarrowFor(Row row) {
    return row.cells().size() > width && !row.cellsUnder(index -> index >= width).isEmpty();
  }

  private record Search(
      Place heading, List<String> words, Map<String, Fault> lacking, List<Fault> twice) {

    int index(String column) {
      int index = words.indexOf(column);
      if (index < 0) {
        lacking.put(column, missing(column));
      } else if (words.lastIndexOf(column) != index) {
        twice.add(LogColumns.twice(column, heading));
      }
      return index;
    }

    private Fault missing(String column) {
      Optional<String> alike =
          words.stream().filter(word -> bare(word).equals(bare(column))).findFirst();
      Argument there =
          alike
              .<Argument>map(word -> say("json.text", "\"{0}\"", word))
              .orElse(Listing.commas(words));
      Message expected =
          alike.isPresent()
              ? say(
                  "reading.column.letter-by-letter",
                  "in logs.json the word letter by letter as the file has it, or the \"encoding\""
                      + " that gives its letters")
              : say("reading.column.named", "the columns that logs.json names");
      return Fault.broken(
          MISSING,
          heading.column(column),
          say("reading.column.missing", "no column \"{0}\" in {1}", column, there),
          expected);
    }

    /** Without what a wrong encoding or another program does to a word: its spaces and signs. */
    private static String bare(String word) {
      return word.replaceAll("[^\\p{ASCII}]|[\\s?]", "").toLowerCase(Locale.ROOT);
    }
  }
}

package org.flitchbook.reading;

import static org.flitchbook.message.Message.say;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.flitchbook.input.Fault;
import org.flitchbook.input.Place;
import org.flitchbook.message.Listing;
import org.flitchbook.table.Row;

/**
 * The columns of a log that its entry in {@code logs.json} does not read. One that may hold
 * readings is asked about, since they may be those of a probe or a place that a limit needs; the
 * entry may say that it is left out, and why. The others are named.
 */
final class OtherColumns {

  /** Headings of what a logger says about itself, or about its time. */
  private static final Pattern OF_THE_LOGGER =
      Pattern.compile(
          "(?iU)(?<!\\pL)v?(batter(y|ies)|batt?|bater[ií]a|akku|volt(s|age|aje)?|rssi|signal|señal"
              + "|elapsed|epoch|unix|timestamp)(?!\\pL)");

  /** Headings of a count of the rows, which may go on from the file before. */
  private static final Pattern OF_ROWS =
      Pattern.compile("(?iU)^(#|no\\b|n[rº]\\b|index\\b|row\\b|record\\b|sample\\b|count\\b)");

  private final Map<String, String> leftOut;
  private final Map<String, Column> columns = new LinkedHashMap<>();

  /**
   * @param leftOut why a column is left out, by its word in the heading
   */
  OtherColumns(Map<String, String> leftOut) {
    this.leftOut = leftOut;
  }

  void take(Row row, Map<Integer, String> others) {
    others.forEach(
        (index, word) -> {
          if (!row.cell(index).isEmpty()) {
            columns.computeIfAbsent(word, Column::new).take(row.cell(index));
          }
        });
  }

  List<Fault> faults(Place heading) {
    List<Fault> faults = new ArrayList<>();
    List<Column> asked = those(column -> !isStated(column) && column.mayHoldReadings());
    List<Column> named = those(column -> isStated(column) || !column.mayHoldReadings());
    if (!asked.isEmpty()) {
      faults.add(
          Fault.ask(
              "column not read",
              "",
              heading.column(asked.get(0).word),
              say("reading.other.numbers", "numbers under {0}", words(asked)),
              say(
                  "reading.other.entry",
                  "what they are, as a column in logs.json, or \"leftOut\" there with the"
                      + " reason")));
    }
    if (!named.isEmpty()) {
      faults.add(
          Fault.note(
              "column left out",
              "",
              heading.column(named.get(0).word),
              say("reading.other.left-out", "more columns: {0}", words(named)),
              say(
                  "reading.other.named",
                  "those that logs.json names; the rest counts for nothing")));
    }
    return faults;
  }

  private List<Column> those(Predicate<Column> wanted) {
    return columns.values().stream().filter(wanted).toList();
  }

  private boolean isStated(Column column) {
    return leftOut.containsKey(column.word);
  }

  private Listing words(List<Column> listed) {
    return Listing.semicolons(
        listed.stream()
            .map(
                column ->
                    Optional.ofNullable(leftOut.get(column.word))
                        .map(why -> say("reading.other.why", "\"{0}\": {1}", column.word, why))
                        .orElseGet(() -> say("json.text", "\"{0}\"", column.word)))
            .toList());
  }

  /** What stands under one word of the heading. */
  private static final class Column {

    /** With a point or a comma, whatever the log's mark is, and with a unit behind it. */
    private static final Pattern NUMBER =
        Pattern.compile("([-+]?\\d+(?:[.,]\\d+)?) *[°º]? *[CF%]?");

    private final String word;
    private boolean hasNumbers;
    private boolean isSwitch = true;
    private boolean counts = true;
    private boolean startsCounting;
    private Optional<BigDecimal> before = Optional.empty();
    private Optional<BigDecimal> step = Optional.empty();

    Column(String word) {
      this.word = word;
    }

    void take(String cell) {
      Stream.of(cell)
          .map(NUMBER::matcher)
          .filter(number -> number.matches())
          .map(number -> new BigDecimal(number.group(1).replace(',', '.')))
          .forEach(this::take);
    }

    private void take(BigDecimal number) {
      boolean isFlag = number.signum() == 0 || number.compareTo(BigDecimal.ONE) == 0;
      startsCounting = before.isEmpty() ? isFlag : startsCounting;
      hasNumbers = true;
      isSwitch &= isFlag;
      counts &=
          number.scale() == 0 && before.map(last -> isNext(number.subtract(last))).orElse(true);
      before = Optional.of(number);
    }

    /** By the same step each time, and upwards. */
    private boolean isNext(BigDecimal by) {
      step = step.or(() -> Optional.of(by));
      return by.signum() > 0 && by.compareTo(step.get()) == 0;
    }

    /** Whether it is more than words, a switch, a count of the rows or what the logger says. */
    boolean mayHoldReadings() {
      boolean isCount = counts && (startsCounting || OF_ROWS.matcher(word).find());
      return hasNumbers && !isSwitch && !isCount && !OF_THE_LOGGER.matcher(word).find();
    }
  }
}

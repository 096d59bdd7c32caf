package org.flitchbook.table;

import java.io.IOException;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.nio.charset.Charset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.flitchbook.input.Fault;
import org.flitchbook.input.Place;
import org.flitchbook.input.Severity;

/**
 * Reads delimited text (RFC 4180, with comma, semicolon or tab) and gives each row its physical
 * line.
 */
public final class Tables {

  private static final List<Character> DELIMITERS = List.of(',', ';', '\t');
  private static final Pattern LINE = Pattern.compile("(?i)line:? (\\d+)");

  private Tables() {}

  /**
   * Reads one file to its end, or to the place where it can't be read further.
   *
   * @return what is wrong with the file as a table; the rows before a fault have been handed over
   */
  public static List<Fault> read(String name, byte[] bytes, Layout layout, Rows rows) {
    Text text = Text.decode(name, bytes, layout.charset());
    List<Fault> faults = new ArrayList<>(text.faults());
    if (faults.stream().noneMatch(fault -> fault.is(Severity.BROKEN))) {
      parse(name, text.content(), layout, rows).ifPresent(faults::add);
    }
    return faults;
  }

  /** The charsets that a layout may name, by their names in {@code logs.json}. */
  public static Optional<Charset> charset(String name) {
    return Text.charset(name);
  }

  private static Optional<Fault> parse(String name, String content, Layout layout, Rows rows) {
    int start = Lines.skip(content, layout.skip());
    if (content.substring(start).lines().findFirst().orElse("").isBlank()) {
      return Optional.of(
          Fault.broken(
              "empty file", Place.of(name, layout.skip() + 1), "no heading", "a line of columns"));
    }
    char delimiter =
        layout.delimiter().orElseGet(() -> delimiterOf(Lines.bareHeading(content, start)));
    CSVFormat format =
        CSVFormat.DEFAULT.builder().setDelimiter(delimiter).setIgnoreEmptyLines(false).get();
    try (CSVParser parser =
        CSVParser.builder()
            .setReader(new StringReader(content.substring(start)))
            .setFormat(format)
            .get()) {
      handOver(parser, layout.skip(), delimiter, rows);
      return Optional.empty();
    } catch (UncheckedIOException unreadable) {
      return Optional.of(quoteFault(name, layout.skip(), unreadable));
    } catch (IOException impossible) {
      throw new UncheckedIOException("reading text in memory", impossible);
    }
  }

  private static void handOver(CSVParser parser, int skipped, char delimiter, Rows rows) {
    boolean headed = false;
    int line = skipped + 1;
    for (CSVRecord written : parser) {
      Row row = new Row(line, written.stream().map(String::strip).toList());
      line = skipped + Math.toIntExact(parser.getCurrentLineNumber()) + 1;
      if (!headed) {
        rows.heading(row, delimiter);
        headed = true;
      } else if (!row.isBlank()) {
        rows.row(row);
      }
    }
  }

  private static Fault quoteFault(String name, int skipped, UncheckedIOException unreadable) {
    String message = String.valueOf(unreadable.getMessage());
    Matcher place = LINE.matcher(message);
    Place at = Place.of(name, place.find() ? Integer.parseInt(place.group(1)) + skipped : 0);
    return message.contains("EOF")
        ? Fault.broken("quote", at, "a quote that never closes", "\" at the end of the cell")
        : Fault.broken("quote", at, "text behind a closing quote", "a delimiter, or \"\" inside");
  }

  /** The delimiter that parts the heading into most words; a heading of one word has a comma. */
  private static char delimiterOf(String bareHeading) {
    char best = ',';
    for (char delimiter : DELIMITERS) {
      if (count(bareHeading, delimiter) > count(bareHeading, best)) {
        best = delimiter;
      }
    }
    return best;
  }

  private static long count(String heading, char wanted) {
    return heading.chars().filter(letter -> letter == wanted).count();
  }
}

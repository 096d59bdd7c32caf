package org.flitchbook.table;

import static org.flitchbook.message.Message.say;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.Charset;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.flitchbook.input.Fault;
import org.flitchbook.input.Place;
import org.flitchbook.input.SourceFile;
import org.flitchbook.message.Message;

/**
 * Reads delimited text (RFC 4180, with comma, semicolon or tab) and gives each row its physical
 * line.
 */
public final class Tables {

  /** The names of the charsets that a layout may state. */
  public static final List<String> CHARSETS =
      List.of("utf-8", "utf-16", "utf-16le", "utf-16be", "windows-1252", "iso-8859-1");

  /** So many letters may one row have. A row of a log has some hundred. */
  private static final int LONGEST_ROW = 4_000_000;

  private static final Pattern LINE = Pattern.compile("(?i)line:? (\\d+)");

  private final String name;
  private final FileText text;
  private final Layout layout;
  private final Rows rows;
  private int line;

  private Tables(String name, FileText text, Layout layout, Rows rows) {
    this.name = name;
    this.text = text;
    this.layout = layout;
    this.rows = rows;
    this.line = layout.skip() + 1;
  }

  /**
   * Reads one file to its end, or to the place where it can't be read further. Neither its text nor
   * its rows are held: only what is made of a row as it is handed over.
   *
   * @return what is wrong with the file as a table; the rows before a fault have been handed over
   */
  public static List<Fault> read(SourceFile file, Layout layout, Rows rows) {
    return read(file.name(), text(file, layout.charset()), layout, rows);
  }

  /** The same of a text that was looked at before, for those who read it again and again. */
  public static List<Fault> read(String name, FileText text, Layout layout, Rows rows) {
    List<Fault> faults = new ArrayList<>(text.faults());
    if (!text.isBroken()) {
      new Tables(name, text, layout, rows).read().ifPresent(faults::add);
    }
    return faults;
  }

  /** A file as text; a charset that isn't stated is found. */
  public static FileText text(SourceFile file, Optional<Charset> charset) {
    return FileText.of(file, charset);
  }

  /** In what encoding a file seems to be, for one about which nothing is stated. */
  public static FileText encoding(SourceFile file) {
    return FileText.guessed(file);
  }

  /**
   * What a file is that is no table, as far as its bytes and its lines show it.
   *
   * @param isLikeTable whether rows of several cells were found in it; then only what is never a
   *     table is refused
   */
  public static Optional<Fault> otherFormat(SourceFile file, boolean isLikeTable) {
    FileText text = encoding(file);
    return OtherFormat.ofBytes(file, text).or(() -> OtherFormat.ofText(file, text, isLikeTable));
  }

  /** Why a file is no text. */
  public static Optional<Fault> noText(SourceFile file, FileText text) {
    return OtherFormat.ofBytes(file, text);
  }

  /** The charset of one of the {@link #CHARSETS}, case ignored. */
  public static Optional<Charset> charset(String name) {
    String lower = name.toLowerCase(Locale.ROOT);
    return Optional.of(lower.equals("utf-16") ? "utf-16le" : lower)
        .filter(CHARSETS::contains)
        .map(Charset::forName);
  }

  private Optional<Fault> read() {
    try {
      FirstRow heading = FirstRow.of(behindSkipped());
      if (!heading.isBlank()) {
        parse(layout.delimiter().orElseGet(heading::delimiter));
        return Optional.empty();
      }
      return Optional.of(
          broken(
              "empty file",
              line,
              say("table.no-heading", "no heading"),
              say("table.heading", "a line of columns")));
    } catch (UncheckedIOException unreadable) {
      return Optional.of(fault(Objects.requireNonNull(unreadable.getCause())));
    } catch (IOException unreadable) {
      return Optional.of(fault(unreadable));
    }
  }

  private TextReader behindSkipped() throws IOException {
    TextReader reader = text.reader();
    for (int skipped = 0; skipped < layout.skip(); skipped++) {
      reader.skipLine();
    }
    reader.allow(LONGEST_ROW);
    return reader;
  }

  private void parse(char delimiter) throws IOException {
    CSVFormat format =
        CSVFormat.DEFAULT.builder().setDelimiter(delimiter).setIgnoreEmptyLines(false).get();
    TextReader reader = behindSkipped();
    try (CSVParser parser = CSVParser.builder().setReader(reader).setFormat(format).get()) {
      boolean headed = false;
      for (CSVRecord written : parser) {
        Row row = new Row(line, written.stream().map(String::strip).toList());
        line = layout.skip() + Math.toIntExact(parser.getCurrentLineNumber()) + 1;
        reader.allow(LONGEST_ROW);
        if (!headed) {
          rows.heading(row, delimiter);
          skipped(delimiter);
          headed = true;
        } else if (!row.isBlank()) {
          rows.row(row);
        }
        if (rows.haveEnough()) {
          return;
        }
      }
    }
  }

  private void skipped(char delimiter) throws IOException {
    TextReader reader = text.reader();
    for (int before = 1; before <= layout.skip(); before++) {
      reader.allow(LONGEST_ROW);
      rows.skipped(Row.ofLine(before, reader.line(), delimiter));
    }
  }

  private Fault fault(IOException unreadable) {
    if (unreadable instanceof TextReader.RowTooLong) {
      return broken(
          "row too long",
          line,
          say(
              "table.long-row",
              "more than {0} million letters in one row",
              LONGEST_ROW / 1_000_000),
          say("table.row-ends", "a row that ends, and quotes that close"));
    }
    String message = String.valueOf(unreadable.getMessage());
    Matcher place = LINE.matcher(message);
    int at = place.find() ? Integer.parseInt(place.group(1)) + layout.skip() : 0;
    boolean open = message.contains("EOF");
    return broken(
        "quote",
        at,
        open
            ? say("table.open-quote", "a quote that never closes")
            : say("table.behind-quote", "text behind a closing quote"),
        open
            ? say("table.closing-quote", "\" at the end of the cell")
            : say("table.delimiter", "a delimiter, or \"\" inside"));
  }

  private Fault broken(String rule, int at, Message found, Message expected) {
    return Fault.broken(rule, Place.of(name, at), found, expected);
  }

  /**
   * What the first row shows about the rest: whether it is there at all, and what parts its words.
   * A quote opens only at the beginning of a cell: the one in {@code 5" slab} is a letter. What
   * stands in quotes does not count, and a line end in it does not end the row.
   */
  private static final class FirstRow {

    static final List<Character> DELIMITERS = List.of(',', ';', '\t');

    private final int[] counts = new int[DELIMITERS.size()];
    private boolean blank = true;

    private FirstRow() {}

    static FirstRow of(TextReader reader) throws IOException {
      FirstRow row = new FirstRow();
      boolean cellBegins = true;
      for (int letter = reader.read(); !isEnd(letter); letter = reader.read()) {
        row.blank &= Character.isWhitespace(letter);
        if (letter == '"' && cellBegins) {
          skipQuoted(reader);
          cellBegins = false;
        } else {
          int delimiter = DELIMITERS.indexOf((char) letter);
          cellBegins = delimiter >= 0;
          row.counts[Math.max(0, delimiter)] += cellBegins ? 1 : 0;
        }
      }
      return row;
    }

    private static void skipQuoted(TextReader reader) throws IOException {
      for (int letter = reader.read(); letter >= 0; letter = reader.read()) {
        if (letter == '"' && reader.peek() != '"') {
          return;
        }
        if (letter == '"') {
          reader.read();
        }
      }
    }

    private static boolean isEnd(int letter) {
      return letter < 0 || letter == '\n' || letter == '\r';
    }

    boolean isBlank() {
      return blank;
    }

    /** The delimiter that parts the row into most words; a row of one word has a comma. */
    char delimiter() {
      int best = 0;
      for (int each = 1; each < counts.length; each++) {
        best = counts[each] > counts[best] ? each : best;
      }
      return DELIMITERS.get(best);
    }
  }
}

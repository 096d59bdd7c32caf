package org.flitchbook.look;

import static java.nio.charset.StandardCharsets.ISO_8859_1;
import static org.flitchbook.message.Message.say;

import java.nio.ByteBuffer;
import java.nio.charset.Charset;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.flitchbook.input.Fault;
import org.flitchbook.input.Place;
import org.flitchbook.input.SourceFile;
import org.flitchbook.message.Message;
import org.flitchbook.table.FileText;
import org.flitchbook.table.Row;

/** Refuses a file that is no table by what it is, with the first line that shows it. */
final class NoTable {

  /** So many bytes, and so many lines of them, show what a file is. */
  private static final int BYTES = 16_384;

  private static final int LINES = 40;

  /** So many letters of a line are shown. */
  private static final int SHOWN = 60;

  private static final String LINE_END = "\r\n|\n|\r";

  private static final byte[] ARCHIVE = {'P', 'K', 3, 4};

  private static final Message AS_CSV =
      say(
          "look.no.as-csv",
          "rows of cells parted by comma, semicolon or tab: choose CSV where the log is exported");

  /** What else a text may be; the first that fits most of its lines counts. */
  private enum Kind {
    MARKUP("(?i)<[?!/]?[a-z][^<]*>.*", say("look.no.markup", "a web page or XML")),
    JSON_LINES("\\{.*\"\\s*:.*\\},?", say("look.no.json-lines", "JSON, one object a line")),
    JSON("[\\[\\]{}][,\\[\\]{}]*|\"[^\"]*\"\\s*:.*|\\[\\s*[\\[{\"].*", say("look.no.json", "JSON")),
    KEYS(
        "(?:[\\pL_][\\w.-]*[=:] ?[^\\s,;]+[,;\\s]*){2,}|\\S+(,\\S+=\\S+)* [\\pL_]\\w*=\\S+.*",
        say("look.no.keys", "a key and its value in each cell")),
    LINES_BETWEEN("[^|,;\\t]*\\d[^|,;\\t]*(\\|[^|]*)+", say("look.no.pipes", "cells between |")),
    SPACES(
        "\\d[-+\\d./:TZ]*( +[-+]?\\d[\\d.:]*){2,}|\\d{10,13} +[-+]?\\d[\\d.]*",
        say("look.no.spaces", "cells parted by spaces")),
    SENTENCES(".*\\pL+[ ,:]+\\pL+ .*", say("look.no.sentences", "sentences"));

    final Pattern line;
    final Message found;

    Kind(String line, Message found) {
      this.line = Pattern.compile(line);
      this.found = found;
    }

    boolean fits(String text) {
      return line.matcher(text).matches();
    }
  }

  /** Those that are no table even where some of their lines look like one. */
  private static final Set<Kind> NEVER_ROWS =
      EnumSet.of(Kind.MARKUP, Kind.JSON_LINES, Kind.JSON, Kind.KEYS);

  private record Line(int number, String text) {}

  private NoTable() {}

  /** Why a file is no text, empty where it is one. */
  static Optional<Fault> ofBytes(SourceFile file, FileText text) {
    byte[] begin = new byte[ARCHIVE.length];
    ByteBuffer content = file.content().duplicate();
    if (content.remaining() > begin.length && isArchive(content, begin)) {
      return refused(
          Place.of(file.name(), 1),
          say("look.no.archive", "a spreadsheet or another archive, packed"),
          say("look.no.unpack", "text: open it, and save the sheet of the log as CSV"));
    }
    return text.isBroken()
        ? Optional.of(binary(file).orElse(text.faults().get(0)))
        : Optional.empty();
  }

  /** By a byte that no text has, whatever else in it is none. */
  private static Optional<Fault> binary(SourceFile file) {
    String bytes = ISO_8859_1.decode(file.content().duplicate()).toString();
    int nul = bytes.indexOf(0);
    return nul < 0
        ? Optional.empty()
        : refused(
            Place.of(file.name(), bytes.substring(0, nul).split(LINE_END, -1).length),
            say("look.no.binary", "a NUL byte, as in a file of the logger's own"),
            say("look.no.export", "text: choose CSV where the log is exported"));
  }

  private static boolean isArchive(ByteBuffer content, byte[] begin) {
    content.get(begin);
    return Arrays.equals(begin, ARCHIVE);
  }

  /** Why a text is no table, by its lines and by the table that seems to be in it. */
  static Optional<Fault> ofText(SourceFile file, FileText text, Optional<LogTable> table) {
    List<Line> lines = lines(text.content().duplicate(), text.charset());
    return Stream.of(Kind.values())
        .filter(kind -> table.isEmpty() || NEVER_ROWS.contains(kind))
        .flatMap(kind -> refused(file.name(), kind, lines).stream())
        .findFirst()
        .or(() -> table.filter(LogTable::hasBareCommas).flatMap(wide -> bareCommas(file, wide)))
        .or(() -> table.isEmpty() ? nothing(file) : Optional.empty());
  }

  private static List<Line> lines(ByteBuffer content, Charset charset) {
    content.limit(content.position() + Math.min(content.remaining(), BYTES));
    String[] texts = charset.decode(content).toString().split(LINE_END, -1);
    return IntStream.range(0, texts.length)
        .mapToObj(index -> new Line(index + 1, texts[index].strip()))
        .filter(line -> !line.text().isEmpty())
        .limit(LINES)
        .toList();
  }

  private static Optional<Fault> refused(String file, Kind kind, List<Line> lines) {
    List<Line> fitting = lines.stream().filter(line -> kind.fits(line.text())).toList();
    if (fitting.size() * 2 <= lines.size()) {
      return Optional.empty();
    }
    Line first = fitting.get(0);
    return refused(
        Place.of(file, first.number()),
        say("look.no.shown", "{0}: {1}", kind.found, cut(first.text())),
        AS_CSV);
  }

  private static String cut(String text) {
    return text.length() <= SHOWN ? text : text.substring(0, SHOWN).strip() + " …";
  }

  private static Optional<Fault> bareCommas(SourceFile file, LogTable table) {
    Row row = table.sample().get(0);
    return refused(
        Place.of(file.name(), row.line()),
        say(
            "look.no.bare-commas",
            "more cells than the heading has words, as of decimal commas in a file parted by"
                + " commas: {0}",
            cut(String.join(",", row.cells()))),
        say("look.no.with-points", "decimal points, or cells parted by semicolons: export it so"));
  }

  private static Optional<Fault> nothing(SourceFile file) {
    return refused(
        Place.of(file.name()),
        say("look.no-table.found", "no rows of times and numbers"),
        say(
            "look.no-table.expected",
            "a log as the logger exports it, parted by comma, semicolon or tab"));
  }

  /** A table in whose time column nothing can be a time. */
  static Fault withoutTimes(SourceFile file, TimeColumn time) {
    return fault(
        Place.of(file.name()),
        say("look.no.times", "no times, but {0}", Oddities.counted(time.strange)),
        say(
            "look.no.some-times",
            "dates and times, Unix time in seconds or milliseconds, or a count from a start"));
  }

  /** A table in which nothing but the time holds digits. */
  static Fault withoutReadings(SourceFile file) {
    return fault(
        Place.of(file.name()),
        say("look.no.readings", "no column that holds digits, the time and a count of rows aside"),
        say("look.no.some-readings", "a column of readings"));
  }

  private static Optional<Fault> refused(Place place, Message found, Message expected) {
    return Optional.of(fault(place, found, expected));
  }

  private static Fault fault(Place place, Message found, Message expected) {
    return Fault.broken("no table", place, found, expected);
  }
}
